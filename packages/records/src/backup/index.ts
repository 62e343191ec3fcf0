/** All records in one file, and back, onto either kind of database. */
export { backUp } from './back-up.ts';
export { ArchiveError, NotEmptyError } from './errors.ts';
export type { Manifest } from './manifest.ts';
export { restore } from './restore.ts';
