/** A server of its own process, and the time until it answers. */
import { spawn } from 'node:child_process';
import { cpSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export interface Served {
  /** Ends in a slash. */
  url: string;
  /** From asking for the process to the end of its first answer [s]. */
  startedS: number;
  stop(): Promise<void>;
}

const HERE = fileURLToPath(new URL('.', import.meta.url));
/** Of the repository: the compiled benches lie in .cache/bench/bench. */
const ROOT = fileURLToPath(new URL('../../../', import.meta.url));

const BUILT_APP = `${ROOT}packages/web/dist`;

/** The built server over a database's file. @param app the built app; left out: where the build puts it */
export function serveDatabase(file: string, app: string = BUILT_APP): Promise<Served> {
  return serve([`${HERE}serve.js`, file, app], 'api/district');
}

/** The built app as it is now: a build meanwhile would take its files away. */
export function copyApp(to: string): void {
  cpSync(BUILT_APP, to, { recursive: true });
}

/** Node alone, with an empty server. */
export function serveNothing(): Promise<Served> {
  return serve([`${HERE}serve-nothing.js`], '');
}

async function serve(args: readonly string[], firstPath: string): Promise<Served> {
  const from = performance.now();
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const stop = async () => {
    child.kill();
    await gone;
  };
  const url = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stdout.on('data', (part) => {
      said += part;
      const line = /^http\S+$/m.exec(said);
      if (line && said.includes('\n')) resolve(line[0]);
    });
    child.once('exit', (code) => reject(new Error(`The server ended with ${code}: ${said}`)));
  });
  const answer = await fetch(new URL(firstPath, url));
  await answer.text();
  if (!answer.ok) throw new Error(`${answer.status} at ${answer.url}`);
  return { url, startedS: (performance.now() - from) / 1000, stop };
}
