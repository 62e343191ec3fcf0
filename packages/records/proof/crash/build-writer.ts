import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../../../..', import.meta.url));
const conditions = ['plugside-source', 'node'];

/** Makes one file of the writer, since a process that reads hundreds takes seconds to begin. */
export async function buildWriter(): Promise<string> {
  // Inside the checkout: what is not put into the file is looked for upwards from it.
  const outDir = mkdtempSync(join(root, 'node_modules', '.plugside-writer-'));
  await build({
    configFile: false,
    logLevel: 'error',
    root,
    resolve: { conditions },
    ssr: { noExternal: true, external: ['better-sqlite3', 'pg'], resolve: { conditions } },
    build: {
      ssr: fileURLToPath(new URL('writer.ts', import.meta.url)),
      outDir,
      minify: false,
    },
  });
  return outDir;
}
