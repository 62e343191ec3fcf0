import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { addRecordsBackup } from './records-backup.ts';
import { addRecordsExport } from './records-export.ts';
import { addRecordsImport } from './records-import.ts';
import { addRecordsRestore } from './records-restore.ts';

/** `records`: what a department keeps. */
export function addRecords(program: Command, answer: Answer): void {
  const records = program
    .command('records')
    .description(
      "A department's records: bring in lists, hand them on, back them up and restore them.",
    )
    .helpOption('-h, --help', 'print this help');
  addRecordsImport(records, answer);
  addRecordsExport(records, answer);
  addRecordsBackup(records, answer);
  addRecordsRestore(records, answer);
}
