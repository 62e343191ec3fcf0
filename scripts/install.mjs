/**
 * A Node that is new enough, and the packages that package-lock.json names.
 * Plain Node: it runs before anything is installed.
 */
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { canInstallSystemPackages, installSystemPackages } from './apt.mjs';
import { root, run } from './tools.mjs';

/** Names of programs and of the packages that hold them alike. */
const COMPILER = ['python3', 'make', 'g++'];

const LEAST_NODE = /** @type {const} */ ([20, 19]);

/** Stops with a plain message when Node is older than package.json asks for. */
export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const [leastMajor, leastMinor] = LEAST_NODE;
  if (major > leastMajor || (major === leastMajor && minor >= leastMinor)) return;
  console.error(
    `Plugside needs Node ${LEAST_NODE.join('.')} or newer; this is ${process.versions.node}. ` +
      'Get a newer one from https://nodejs.org/ and run the command again.',
  );
  process.exit(1);
}

/** Installs with `npm ci`, unless what is installed is what package-lock.json names; stops when that fails. */
export async function installMissing() {
  if (installedMatchesLock()) return;
  console.log('Installing packages (npm ci) ...');
  if (await npmCi()) return;
  // The database is compiled where no ready-made one can be fetched.
  if (canInstallSystemPackages() && !COMPILER.every(isOnPath)) {
    console.log('Installing a compiler (apt-get), then trying again ...');
    await installSystemPackages(COMPILER);
    if (await npmCi()) return;
  }
  console.error(
    'Installing failed; the lines above say why. It needs the npm registry, and a compiler ' +
      '(python3, make, g++) where no ready-made part fits this machine. Later runs need neither.',
  );
  process.exit(1);
}

async function npmCi() {
  const npm = process.env.npm_execpath;
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  const code = npm?.endsWith('npm-cli.js')
    ? await run(process.execPath, [npm, ...args])
    : await run('npm', args, { shell: process.platform === 'win32' });
  return code === 0 && installedMatchesLock();
}

/** @param {string} program */
function isOnPath(program) {
  return (process.env.PATH ?? '')
    .split(delimiter)
    .some((folder) => existsSync(join(folder, program)));
}

/**
 * Compares package-lock.json with the record that npm leaves in node_modules at the end of an
 * install, so that an install by hand counts and one that was cut short does not.
 */
function installedMatchesLock() {
  const wanted = readPackages(join(root, 'package-lock.json'));
  const installed = readPackages(join(root, 'node_modules', '.package-lock.json'));
  if (!wanted || !installed) return false;
  return Object.entries(wanted).every(([path, { version, link, optional }]) => {
    if (!path.includes('node_modules/')) return true;
    const found = installed[path];
    // Optional packages are for other machines' processors and systems.
    if (!found) return optional === true;
    return found.version === version && found.link === link;
  });
}

/**
 * @param {string} file
 * @returns {Record<string, { version?: string, link?: boolean, optional?: boolean }> | null} null where there is none
 */
function readPackages(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages;
  } catch {
    return null;
  }
}
