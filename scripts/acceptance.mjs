/** `npm run acceptance -- <file.json …>`: compares answers with cases worked elsewhere. */
import { join } from 'node:path';
import { installMissing, requireNode } from './install.mjs';
import { root, runTool } from './tools.mjs';

requireNode();
await installMissing();

// Paths on the command line are meant from where it was typed.
process.exitCode = await runTool(
  'tsx',
  ['--conditions=plugside-source', join(root, 'acceptance', 'run.ts'), ...process.argv.slice(2)],
  { cwd: process.env.INIT_CWD ?? process.cwd() },
);
