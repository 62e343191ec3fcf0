/** The real command as a process of its own, from source, put together once for a test file. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

export const root = fileURLToPath(new URL('../../..', import.meta.url));
const cli = join(root, 'packages', 'cli');

export interface Run {
  status: number | null;
  stdout: string;
  stderr: string;
}

/** JSON of a shape that the tests themselves look into. */
type Json = ReturnType<typeof JSON.parse>;

export interface Plugside {
  /** A folder to write in, with the examples in it; the command runs there. */
  folder: string;
  run: (args: readonly string[], input?: string | Buffer) => Run;
  /** The JSON that the command answers with. */
  json: (args: readonly string[]) => Json;
  /** The command as words for a shell. */
  shellWords: string;
  remove: () => void;
}

/** Puts the command's own starter and its source together in a folder. */
export async function preparePlugside(): Promise<Plugside> {
  const made = mkdtempSync(join(tmpdir(), 'plugside-'));
  const conditions = ['plugside-source', 'module', 'node', 'import', 'default'];
  await build({
    configFile: false,
    root: cli,
    logLevel: 'error',
    resolve: { conditions },
    // Compiled parts cannot be put together; they are found through node_modules below.
    ssr: {
      noExternal: true,
      external: ['better-sqlite3', 'pg', 'pdfkit'],
      resolve: { conditions },
    },
    build: {
      ssr: join(cli, 'src', 'index.ts'),
      outDir: join(made, 'dist'),
      target: 'node20',
      minify: false,
    },
  });
  mkdirSync(join(made, 'bin'));
  copyFileSync(join(cli, 'bin', 'plugside.mjs'), join(made, 'bin', 'plugside.mjs'));
  copyFileSync(join(cli, 'package.json'), join(made, 'package.json'));
  // Fonts are found from where the code that prints lies, two folders down.
  cpSync(join(root, 'packages', 'paper', 'fonts'), join(made, 'fonts'), { recursive: true });
  const folder = join(made, 'here');
  mkdirSync(folder);
  symlinkSync(join(root, 'examples'), join(folder, 'examples'));
  symlinkSync(join(root, 'node_modules'), join(made, 'node_modules'));
  const starter = join(made, 'bin', 'plugside.mjs');
  const run: Plugside['run'] = (args, input) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [starter, ...args], {
      cwd: folder,
      encoding: 'utf8',
      input: input ?? '',
      env: { PATH: process.env.PATH },
      maxBuffer: 1 << 26,
    });
    return { status, stdout, stderr };
  };
  return {
    folder,
    run,
    json: (args) => JSON.parse(run([...args, '--json']).stdout),
    shellWords: `'${process.execPath}' '${starter}'`,
    remove: () => rmSync(made, { recursive: true, force: true }),
  };
}
