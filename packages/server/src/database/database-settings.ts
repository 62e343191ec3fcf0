import { dirname, join } from 'node:path';
import type { StoreTarget } from '@plugside/records';

/** Which records are served. */
export interface DatabaseSettings {
  target: StoreTarget;
  /** Where earlier versions kept terrain, beside the records; now it is kept among them. */
  terrainFile: string;
  /** Nobody named a database: this one is made where it is missing, with the demo district in it. */
  isDefault: boolean;
  /** Fill a database that somebody named with the demo district, where it is empty. */
  demo: boolean;
}

/** The default database's file, in the folder that is given. */
export const DEFAULT_DATABASE = join('data', 'plugside.sqlite');

/**
 * Reads PLUGSIDE_DB (a file), DATABASE_URL (a PostgreSQL server) and PLUGSIDE_DEMO (1: fill it).
 * @param folder where the default database lies, absolute
 * @throws RangeError when both databases are named, or PLUGSIDE_DEMO is neither 0 nor 1
 */
export function readDatabaseSettings(
  env: Readonly<Record<string, string | undefined>>,
  folder: string,
): DatabaseSettings {
  const file = env.PLUGSIDE_DB?.trim();
  const url = env.DATABASE_URL?.trim();
  const demo = env.PLUGSIDE_DEMO?.trim() || '0';
  if (demo !== '0' && demo !== '1') {
    throw new RangeError(
      `PLUGSIDE_DEMO is "${demo}"; it must be 0 or 1. With 1 an empty database is filled with the demo district.`,
    );
  }
  if (file && url) {
    throw new RangeError(
      `PLUGSIDE_DB names the file ${file} and DATABASE_URL names a server; leave one of them out.`,
    );
  }
  const records = file || join(folder, DEFAULT_DATABASE);
  const terrainFile = url
    ? join(folder, dirname(DEFAULT_DATABASE), 'terrain.tif')
    : `${records}.terrain.tif`;
  const target = url ? { url } : { file: records };
  return { target, terrainFile, isDefault: !file && !url, demo: demo === '1' };
}
