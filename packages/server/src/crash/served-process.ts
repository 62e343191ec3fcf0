/** The server in a process of its own, to be killed by tests. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
// biome-ignore lint/correctness/noUndeclaredDependencies: for tests alone, which have it from the workspace.
import { build } from 'vite';

export interface Served {
  url: string;
  kill(): Promise<void>;
}

/**
 * Makes one file of the server, since a process that reads hundreds takes long to begin.
 * @returns its folder, to be removed at the end
 */
export async function buildServed(): Promise<string> {
  const root = fileURLToPath(new URL('../../../..', import.meta.url));
  // Inside the checkout: what is not put into the file is looked for upwards from it.
  const outDir = mkdtempSync(join(root, 'node_modules', '.plugside-served-'));
  const conditions = ['plugside-source', 'node'];
  await build({
    configFile: false,
    logLevel: 'error',
    root,
    resolve: { conditions },
    ssr: { noExternal: true, external: ['better-sqlite3', 'pg'], resolve: { conditions } },
    build: { ssr: fileURLToPath(new URL('served.ts', import.meta.url)), outDir, minify: false },
  });
  return outDir;
}

/** @param built what `buildServed` gave @param file the database's */
export async function serve(built: string, file: string): Promise<Served> {
  const child = spawn(process.execPath, [join(built, 'served.js'), file], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const url = await firstLine(child);
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  return {
    url,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}

function firstLine(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    child.stdout?.setEncoding('utf8').on('data', (part: string) => {
      text += part;
      if (text.includes('\n')) resolve(text.split('\n')[0] ?? '');
    });
    child.once('exit', (code) => reject(new Error(`The server ended at once with ${code}.`)));
  });
}
