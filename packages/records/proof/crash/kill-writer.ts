import { spawn } from 'node:child_process';
import { join } from 'node:path';
import type { StoreTarget } from '@plugside/records';
import type { Acknowledged } from './acknowledged.ts';

/**
 * Starts a writer, ends it after its first acknowledgement, and gives back all of them.
 * @param built folder that `buildWriter` made
 * @param afterMs how long to let it write
 * @param end what to do then; left out, the writer is killed with SIGKILL
 */
export async function killWriter(
  built: string,
  target: StoreTarget,
  round: number,
  afterMs: number,
  end?: () => Promise<void>,
): Promise<Acknowledged[]> {
  const args = [join(built, 'writer.js'), JSON.stringify(target), String(round)];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  let complaint = '';
  child.stderr.on('data', (data) => {
    complaint += data;
  });
  const gone = new Promise<NodeJS.Signals | null>((resolve) => {
    child.once('close', (_, signal) => resolve(signal));
  });
  const begun = new Promise<void>((resolve) => {
    child.stdout.on('data', (data) => {
      said += data;
      resolve();
    });
  });
  await Promise.race([begun, gone]);
  await new Promise((resolve) => setTimeout(resolve, afterMs));
  await end?.();
  child.kill('SIGKILL');
  const signal = await gone;
  if (!end && signal !== 'SIGKILL') throw new Error(`The writer ended by itself: ${complaint}`);
  return said
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Acknowledged);
}
