/** What the databases refuse with, told apart by code: their words differ. */

/** Another row has the value that must be unique. */
export function isUniqueViolation(error: unknown): boolean {
  return hasCode(error, 'SQLITE_CONSTRAINT_UNIQUE', 'SQLITE_CONSTRAINT_PRIMARYKEY', '23505');
}

/** A row refers to one that is not there, or one that is referred to was to go. */
export function isForeignKeyViolation(error: unknown): boolean {
  return hasCode(error, 'SQLITE_CONSTRAINT_FOREIGNKEY', '23503');
}

/** Another process holds what is needed, for longer than we wait. */
export function isBusy(error: unknown): boolean {
  return hasCode(error, 'SQLITE_BUSY', 'SQLITE_BUSY_SNAPSHOT', '40P01', '40001', '55P03');
}

function hasCode(error: unknown, ...codes: readonly string[]): boolean {
  return codes.includes((error as { code?: string } | undefined)?.code ?? '');
}
