import { existsSync } from 'node:fs';
import type { ImportReport, Mapping, StoreTarget } from '@plugside/records';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { type MappingOptions, withMappingOptions } from '../input/mapping-options.ts';
import { withRecords } from '../input/records.ts';
import type { Outcome } from '../outcome.ts';
import { checkWritable, type WriteOptions } from '../output/write-file.ts';
import { importReport } from '../report/import-report.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import {
  type DatabaseOptions,
  databaseInWords,
  databaseNamed,
  withDatabase,
} from './database-option.ts';

/** As @plugside/records has them; named here so that help needs no database. */
export const importableKinds = [
  'stations',
  'hydrants',
  'water-sources',
  'flow-tests',
  'rigs',
  'streets',
  'buildings',
] as const;

interface ImportOptions extends CommonOptions, DatabaseOptions, WriteOptions, MappingOptions {
  kind: (typeof importableKinds)[number];
  source?: string;
  layer?: string;
  dryRun?: boolean;
  refused?: string;
}

/** `records import`: a list from elsewhere. */
export function addRecordsImport(records: Command, answer: Answer): void {
  const command = records
    .command('import')
    .argument('<file>', 'CSV, GeoJSON or shapefile (zipped, or .shp with its parts beside it)')
    .description(
      'Brings in a list: all rows that can be understood, or on any fault of the database none. Importing the same list again changes what it changed and doubles nothing.',
    )
    .addOption(
      new Option('--kind <kind>', 'what its rows are')
        .choices(importableKinds)
        .makeOptionMandatory(),
    )
    .option(
      '--map <field=column[@unit]>',
      'take a field from a column, in a unit; may be given again for others',
      (value: string, before: string[] = []) => [...before, value],
    )
    .option(
      '--word <field=said=means>',
      'what a word or code of the list means; may be given again for others',
      (value: string, before: string[] = []) => [...before, value],
    )
    .option('--crs <code>', 'coordinate system of the places, such as EPSG:26917')
    .addOption(
      new Option('--dates <order>', 'how to read dates such as 03/04/2024').choices([
        'day-first',
        'month-first',
      ]),
    )
    .option('--exchange', 'exchange longitude and latitude where they are the wrong way round')
    .option('--source <name>', "name of the list; the file's name where left out")
    .option('--layer <path>', 'which of several files in an archive')
    .option('--dry-run', 'say what would happen, and write nothing')
    .option('--refused <file>', 'write the refused rows to a CSV, to be mended and imported')
    .option('--force', 'write over a file of refused rows that is there');
  withCommonOptions(withDatabase(command))
    .addHelpText(
      'after',
      examples(
        [
          'plugside records import hydrants.csv --kind hydrants --db district.db --dry-run',
          'How its columns are read, and which rows would be refused.',
        ],
        [
          'plugside records import tests.csv --kind flow-tests --db district.db --map staticPsi=Static@kPa',
          'With a unit that its heads do not tell.',
        ],
        [
          'plugside records import hydrants.csv --kind hydrants --db district.db --map status=STAT --word "status=A=in service" --word "status=R=out of service"',
          'With codes of its own.',
        ],
      ),
    )
    .action((file: string, options: ImportOptions) =>
      answer('records import', options, (terminal) => askImport(terminal, file, options)),
    );
}

async function askImport(
  terminal: Terminal,
  file: string,
  options: ImportOptions,
): Promise<Outcome> {
  const target = databaseNamed(options);
  if (options.refused !== undefined) checkWritable(options.refused, options);
  const { report, mapping } = await bring(file, target, options);
  const nothing = report.added + report.changed + report.same === 0 && report.refusedCount > 0;
  return {
    exitCode: nothing ? exitCodes.badInput : exitCodes.answered,
    text: () => importReport(terminal, report, mapping, databaseInWords(target), options.refused),
    data: () => ({ answer: { question: 'records import', file, mapping, report } }),
  };
}

async function bring(
  file: string,
  target: StoreTarget,
  options: ImportOptions,
): Promise<{ report: ImportReport; mapping: Mapping }> {
  const stop = new AbortController();
  const onInterrupt = () => stop.abort(new CommandFailure('Stopped. Nothing was written.'));
  process.once('SIGINT', onInterrupt);
  try {
    return await withRecords(async (records) => {
      const source = await records.readSource(file, undefined, { layer: options.layer });
      const mappingIn = (district: [number, number] | undefined) => {
        const guess = records.guessMapping(options.kind, source, {
          sourceName: options.source,
          ...(district && { district }),
        });
        return withMappingOptions(records, guess, source, options);
      };
      // What is wrong in the options is refused before a database is made.
      mappingIn(undefined);
      const store = await records.openStore(placeFor(target, options));
      try {
        const district = await records.districtMiddle(store);
        const mapping = mappingIn(district);
        const away = records.awayNotice(mapping, district);
        if (away) mapping.notices.push(away);
        const report = await records.runImport(store, source, mapping, {
          signal: stop.signal,
          dryRun: options.dryRun === true,
          refusedFile: options.refused,
        });
        return { report, mapping };
      } finally {
        await store.close();
        await source.close();
      }
    });
  } finally {
    process.off('SIGINT', onInterrupt);
  }
}

/** A dry run must not make the file that it would write to. */
function placeFor(target: StoreTarget, { dryRun }: ImportOptions): StoreTarget {
  if (!dryRun || !('file' in target)) return target;
  return existsSync(target.file) ? target : { memory: true };
}
