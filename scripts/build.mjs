/** Builds every package and the browser app, when the source is not what the last build was of. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root, runTool } from './tools.mjs';

/** What the build reads. */
const SOURCES = [
  'packages',
  'examples',
  'package-lock.json',
  'tsconfig.json',
  'tsconfig.base.json',
];
/** What it must have left, for its stamp to count. */
const RESULTS = ['packages/web/dist/index.html', 'packages/server/dist/index.js'];

const stamp = join(root, '.cache', 'build.json');

/** @returns {Promise<boolean>} false when the build failed; its own lines say why */
export async function buildStale() {
  const source = sourceHash();
  const built = RESULTS.every((file) => existsSync(join(root, file)));
  if (built && stampedSource() === source) return true;
  console.log('Building ...');
  const failed =
    (await runTool('tsc', ['-b'])) ||
    (await runTool('vite', ['build', 'packages/web', '--logLevel', 'warn']));
  if (failed) return false;
  mkdirSync(join(root, '.cache'), { recursive: true });
  writeFileSync(stamp, `${JSON.stringify({ source })}\n`);
  return true;
}

function stampedSource() {
  try {
    return JSON.parse(readFileSync(stamp, 'utf8')).source;
  } catch {
    return null;
  }
}

function sourceHash() {
  const hash = createHash('sha256');
  for (const file of SOURCES.flatMap((name) => filesAt(join(root, name)))) {
    hash
      .update(`${relative(root, file)}\0`)
      .update(readFileSync(file))
      .update('\0');
  }
  return hash.digest('hex');
}

/**
 * Files at or under a path, in a fixed order, without what the build itself writes and
 * without tests, which do not reach the app.
 *
 * @param {string} path
 * @returns {string[]}
 */
function filesAt(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return /\.test\.tsx?$/.test(path) ? [] : [path];
  return readdirSync(path)
    .filter((name) => name !== 'node_modules' && name !== 'dist')
    .sort()
    .flatMap((name) => filesAt(join(path, name)));
}
