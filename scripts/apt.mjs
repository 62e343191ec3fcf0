/** System packages, where they can be had without asking: on Debian and its kin, as root. */
import { existsSync } from 'node:fs';
import { run } from './tools.mjs';

export function canInstallSystemPackages() {
  return existsSync('/usr/bin/apt-get') && process.getuid?.() === 0;
}

/**
 * Installs system packages; whether it worked shows in what is there afterwards.
 *
 * @param {readonly string[]} packages
 */
export async function installSystemPackages(packages) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  // One list that cannot be fetched need not matter: the install says whether it does.
  await run('apt-get', ['update', '-q'], { env });
  await run('apt-get', ['install', '-y', '-q', '--no-install-recommends', ...packages], { env });
}
