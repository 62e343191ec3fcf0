import { CommandFailure } from '../failure.ts';

type Records = typeof import('@plugside/records');

/**
 * Work on records. Their package is loaded only here: it brings a database along, and most
 * commands need none. What the user can mend is told as the command's failure.
 */
export async function withRecords<T>(work: (records: Records) => Promise<T>): Promise<T> {
  const records = await import('@plugside/records');
  try {
    return await work(records);
  } catch (error) {
    const { ArchiveError, NotEmptyError, RecordIssuesError, SourceRefusedError } = records;
    const { StoreBusyError, StoreOpenError } = records;
    const told = [
      ArchiveError,
      NotEmptyError,
      RecordIssuesError,
      SourceRefusedError,
      StoreBusyError,
      StoreOpenError,
    ];
    if (error instanceof Error && (told.some((one) => error instanceof one) || isOfSystem(error))) {
      throw new CommandFailure(error.message);
    }
    throw error;
  }
}

/** A full disk, a folder that may not be written to: the system's own words say it. */
function isOfSystem(error: Error): boolean {
  return 'syscall' in error && 'code' in error;
}
