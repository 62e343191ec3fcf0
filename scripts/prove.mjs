/** `npm run prove [count] [first seed]`: the full count of random networks, on built code. */
import { join } from 'node:path';
import { installMissing, requireNode } from './install.mjs';
import { root, run, runTool } from './tools.mjs';

requireNode();
await installMissing();

const out = join(root, '.cache', 'proof');
const built =
  (await runTool('tsc', ['-b', 'packages/hydraulics'])) ||
  (await runTool('tsc', ['-p', 'packages/hydraulics/proof', '--noEmit', 'false', '--outDir', out]));
process.exitCode =
  built || (await run(process.execPath, [join(out, 'run-proof.js'), ...process.argv.slice(2)]));
