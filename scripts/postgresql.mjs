/** PostgreSQL's server programs, for the tests that run on it; on Debian as root, installs them. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { canInstallSystemPackages, installSystemPackages } from './apt.mjs';

const INSTALLED = '/usr/lib/postgresql';

/** @returns {Promise<string | null>} null where they are there; else why PostgreSQL is not tested */
export async function preparePostgresql() {
  if (isThere()) return null;
  if (canInstallSystemPackages()) {
    console.log('Installing PostgreSQL for the tests that run on it (apt-get) ...');
    await installSystemPackages(['postgresql']);
    if (isThere()) return null;
  }
  return (
    `PostgreSQL was NOT tested: no server programs under ${INSTALLED}. ` +
    'To test it too: apt-get install postgresql'
  );
}

function isThere() {
  if (!existsSync(INSTALLED)) return false;
  return readdirSync(INSTALLED).some((version) =>
    existsSync(join(INSTALLED, version, 'bin', 'initdb')),
  );
}
