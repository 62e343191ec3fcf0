import { createReadStream, existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { CommandFailure } from '../failure.ts';

/** The most that is read of a plan: more is no plan. */
const MOST_BYTES = 1_048_576;

/** How a file is named in messages. */
export function nameOfInput(path: string): string {
  return path === '-' ? 'standard input' : path;
}

/** The text of a file, or of standard input for `-`. */
export async function readText(path: string): Promise<string> {
  if (path === '-') return decode(await readBytes(process.stdin, path), path);
  if (!existsSync(path)) {
    throw new CommandFailure(
      `There is no file ${path}. Check the name, or write a first plan with: plugside new`,
    );
  }
  const found = statSync(path);
  if (found.isDirectory()) throw new CommandFailure(folderMessage(path));
  if (found.size > MOST_BYTES) throw tooLarge(path);
  try {
    return decode(await readBytes(createReadStream(path), path), path);
  } catch (error) {
    if (error instanceof CommandFailure) throw error;
    const why = error instanceof Error ? error.message : String(error);
    throw new CommandFailure(`${path} cannot be read: ${why}.`);
  }
}

function folderMessage(path: string): string {
  const plans = readdirSync(path)
    .filter((name) => /\.(ya?ml|json)$/.test(name))
    .slice(0, 5)
    .map((name) => join(path, name));
  const there = plans.length > 0 ? ` There are: ${plans.join(', ')}.` : '';
  return `${path} is a folder. Name a plan file.${there}`;
}

/** Reads no further than a plan can be long, whatever stands behind the name. */
async function readBytes(stream: Readable, path: string): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of stream) {
    const bytes = Buffer.from(chunk);
    length += bytes.length;
    if (length > MOST_BYTES) {
      stream.destroy();
      throw tooLarge(path);
    }
    chunks.push(bytes);
  }
  return Buffer.concat(chunks);
}

function tooLarge(path: string): CommandFailure {
  return new CommandFailure(
    `${nameOfInput(path)} is over 1 MB; allowed: 1 MB at most. A plan is a few kilobytes: is this the right file?`,
  );
}

function decode(bytes: Buffer, path: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new CommandFailure(
      `${nameOfInput(path)} is not UTF-8 text. A plan is YAML or JSON; save it as UTF-8.`,
    );
  }
}
