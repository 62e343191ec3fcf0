#!/usr/bin/env node
/** Runs the built command; builds it first in a checkout that has its tools. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const built = new URL('../dist/index.js', import.meta.url);
const root = fileURLToPath(new URL('../../..', import.meta.url));
const compiler = new URL('../../../node_modules/typescript/bin/tsc', import.meta.url);

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  stop(`Plugside needs Node 20.19 or newer; this is ${process.versions.node}.`);
}
if (!existsSync(built) && existsSync(compiler)) {
  // Its output goes where messages go, so that an answer can still be piped on.
  spawnSync(process.execPath, [fileURLToPath(compiler), '-b', 'packages/cli'], {
    cwd: root,
    stdio: ['ignore', process.stderr, process.stderr],
  });
}
if (!existsSync(built)) {
  stop(`Plugside is not built yet. In ${root} run: npm ci && npm run build`);
}
const { runCommand } = await import(built.href);
await runCommand(process.argv.slice(2));

/** @param {string} message */
function stop(message) {
  process.stderr.write(`${message}\n`);
  process.exit(4);
}
