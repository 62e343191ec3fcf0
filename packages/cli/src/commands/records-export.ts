import { existsSync } from 'node:fs';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { withRecords } from '../input/records.ts';
import type { Outcome } from '../outcome.ts';
import { checkWritable } from '../output/write-file.ts';
import type { CommonOptions } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import {
  type DatabaseOptions,
  databaseInWords,
  databaseNamed,
  withDatabase,
} from './database-option.ts';
import { goesToFile, type OutputOptions, withOutput, writeOutput } from './output-option.ts';
import { importableKinds } from './records-import.ts';

interface ExportOptions extends CommonOptions, DatabaseOptions, OutputOptions {
  kind?: (typeof importableKinds)[number];
  format: 'csv' | 'geojson';
}

/** `records export`: tables and maps for other programs. */
export function addRecordsExport(records: Command, answer: Answer): void {
  const command = records
    .command('export')
    .description(
      'Writes the records of a kind as a table or a map, or every kind as one archive (zip) of both. They can be imported again.',
    )
    .addOption(
      new Option('--kind <kind>', 'which records; all of them where left out').choices(
        importableKinds,
      ),
    )
    .addOption(
      new Option('--format <format>', 'for one kind').choices(['csv', 'geojson']).default('csv'),
    );
  withCommonOptions(withDatabase(withOutput(command, 'file to write')))
    .addHelpText(
      'after',
      examples(
        [
          'plugside records export --kind hydrants --db district.db -o hydrants.csv',
          'A table for a spreadsheet.',
        ],
        ['plugside records export --db district.db -o district.zip', 'Everything, for people.'],
      ),
    )
    .action((options: ExportOptions) =>
      answer('records export', options, () => askExport(options)),
    );
}

async function askExport(options: ExportOptions): Promise<Outcome> {
  const target = databaseNamed(options);
  if ('file' in target && !existsSync(target.file)) {
    throw new CommandFailure(`There is no file ${target.file}. Name the records' file with --db.`);
  }
  const { kind, output } = options;
  const toFile = goesToFile(options);
  if (kind === undefined && !toFile) {
    throw new CommandFailure(
      'Every kind goes into an archive: name it with -o FILE, or one kind with --kind.',
    );
  }
  if (output !== undefined) checkWritable(output, options);
  const made = await withRecords(async (records) => {
    const store = await records.openStore(target);
    try {
      if (kind === undefined) return { counts: await records.exportAll(store, output!) };
      const write = options.format === 'csv' ? records.exportCsv : records.exportGeoJson;
      const pieces: string[] = [];
      for await (const piece of write(store, kind)) pieces.push(piece);
      return { text: pieces.join(''), counts: { [kind]: await store.count(kind) } };
    } finally {
      await store.close();
    }
  });
  const said =
    made.text === undefined
      ? `Wrote ${output}.`
      : toFile
        ? writeOutput(options, made.text)
        : undefined;
  const all = Object.values(made.counts).reduce((sum, count) => sum + count, 0);
  return {
    exitCode: exitCodes.answered,
    text: () =>
      said === undefined
        ? made.text!
        : `${said} It holds ${all.toLocaleString('en-US')} records of ${databaseInWords(target)}.`,
    data: () => ({
      answer: {
        question: 'records export',
        counts: made.counts,
        ...(toFile ? { file: output } : { text: made.text }),
      },
    }),
  };
}
