/** Finds the Chromium that the browser tests run in; on Debian as root, installs it. */
import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { canInstallSystemPackages, installSystemPackages } from './apt.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];
const PLACES = ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'];

/** @returns {Promise<string | null>} its path; null when there is none, after saying what to do */
export async function findChromium() {
  const named = process.env.PLUGSIDE_CHROMIUM;
  if (named) {
    if (starts(named)) return named;
    console.error(
      `PLUGSIDE_CHROMIUM is ${named}, which does not start. Leave it out to look for one.`,
    );
    return null;
  }
  const found = installed();
  if (found) return found;
  if (canInstallSystemPackages()) {
    console.log('Installing Chromium for the browser tests (apt-get) ...');
    await installSystemPackages(['chromium', 'fonts-liberation']);
    const fresh = installed();
    if (fresh) return fresh;
  }
  console.error(
    'The browser tests need Chromium or Chrome and found neither. Install one ' +
      '(Debian: apt-get install chromium fonts-liberation), or name it: ' +
      'PLUGSIDE_CHROMIUM=/path/to/chromium npm test',
  );
  return null;
}

/** The first one that starts: on some systems the name is there and the browser is not. */
function installed() {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const candidates = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...candidates, ...PLACES].filter(isProgram).find(starts) ?? null;
}

/** @param {string} path */
function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** @param {string} path */
function starts(path) {
  return spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 20_000 }).status === 0;
}
