/** The file is no archive of records, a damaged one, or of a newer version. Nothing was restored. */
export class ArchiveError extends Error {
  constructor(message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'ArchiveError';
  }
}

/** The database that was to be restored into holds records already. Nothing was restored. */
export class NotEmptyError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'NotEmptyError';
  }
}
