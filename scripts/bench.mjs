/** `npm run bench`: runs each `bench/*.bench.ts` by itself, one after the other, and says on what. */
import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { cpus, platform, release, totalmem } from 'node:os';
import { join } from 'node:path';
import { buildStale } from './build.mjs';
import { findChromium } from './chromium.mjs';
import { installMissing, requireNode } from './install.mjs';
import { root, run, runTool } from './tools.mjs';

requireNode();
await installMissing();

const wanted = process.argv.slice(2);
const files = readdirSync(join(root, 'bench'))
  .filter((name) => name.endsWith('.bench.ts'))
  .filter((name) => wanted.length === 0 || wanted.some((word) => name.includes(word)))
  .sort();
if (files.length === 0) {
  console.error(
    `No bench/*.bench.ts ${wanted.length > 0 ? `has ${wanted.join(' or ')} in its name` : 'found'}.`,
  );
  process.exit(1);
}

const [processor] = cpus();
console.log(`commit   ${commit()}`);
console.log(
  `machine  ${processor?.model.trim() ?? 'unknown'}, ${cpus().length} threads, ${Math.round(totalmem() / 2 ** 30)} GB`,
);
console.log(`system   ${platform()} ${release()}, Node ${process.versions.node}`);

// Built code, as people run it: tools that run TypeScript as it stands slow tight loops many times over.
const out = join(root, '.cache', 'bench');
const failed =
  !(await buildStale()) ||
  (await runTool('tsc', ['-p', 'bench', '--noEmit', 'false', '--rootDir', root, '--outDir', out]));
if (failed) process.exit(1);

/** Benches of the app in a browser. */
const inBrowser = new Set(['map.bench.ts', 'lay-drag.bench.ts']);
const chromium = files.some((file) => inBrowser.has(file)) ? await findChromium() : null;

for (const file of files) {
  console.log(`\n== ${file}`);
  if (inBrowser.has(file) && !chromium) {
    console.error('Not measured: there is no browser.');
    process.exitCode = 1;
    continue;
  }
  const code = await run(process.execPath, [join(out, 'bench', file.replace(/ts$/, 'js'))], {
    env: { ...process.env, ...(chromium && { PLUGSIDE_CHROMIUM: chromium }) },
  });
  if (code !== 0) process.exitCode = 1;
}

function commit() {
  const git = (/** @type {string[]} */ ...args) =>
    execFileSync('git', args, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
  try {
    const changed = git('status', '--porcelain').trim() !== '';
    return git('rev-parse', '--short', 'HEAD').trim() + (changed ? ' with changes on top' : '');
  } catch {
    return 'unknown (no git)';
  }
}
