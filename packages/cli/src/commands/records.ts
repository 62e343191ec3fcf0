import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { addRecordsBackup } from './records-backup.ts';
import { addRecordsRestore } from './records-restore.ts';

/** `records`: what a department keeps. */
export function addRecords(program: Command, answer: Answer): void {
  const records = program
    .command('records')
    .description("A department's records: back them up into one file, and restore them from it.")
    .helpOption('-h, --help', 'print this help');
  addRecordsBackup(records, answer);
  addRecordsRestore(records, answer);
}
