/** Runs programs, and the tools that package-lock.json pins, from the checkout's own folder. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The checkout's folder. */
export const root = fileURLToPath(new URL('..', import.meta.url));

const TOOLS = {
  biome: '@biomejs/biome/bin/biome',
  tsc: 'typescript/bin/tsc',
  tsx: 'tsx/dist/cli.mjs',
  vite: 'vite/bin/vite.js',
  vitest: 'vitest/vitest.mjs',
};

/**
 * Runs a program with its output on ours and nothing to read.
 *
 * @param {string} command
 * @param {readonly string[]} args
 * @param {import('node:child_process').SpawnOptions} [options]
 * @returns {Promise<number>} its exit code; 1 when it was ended by a signal, 127 when it did not start
 */
export function run(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: ['ignore', 'inherit', 'inherit'],
      ...options,
    });
    child.on('error', (error) => {
      console.error(`Cannot run ${command}: ${error.message}`);
      resolve(127);
    });
    child.on('exit', (code) => resolve(code ?? 1));
  });
}

/**
 * Runs one of the project's own tools, without a shell or a look at the path.
 *
 * @param {keyof typeof TOOLS} tool
 * @param {readonly string[]} args
 * @param {import('node:child_process').SpawnOptions} [options]
 */
export function runTool(tool, args, options) {
  return run(process.execPath, [toolFile(tool), ...args], options);
}

/**
 * The file that Node runs for a tool.
 *
 * @param {keyof typeof TOOLS} tool
 */
export function toolFile(tool) {
  return join(root, 'node_modules', TOOLS[tool]);
}
