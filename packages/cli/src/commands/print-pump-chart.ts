import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { withDistrict } from '../input/district-records.ts';
import { recordNamed } from '../input/find-record.ts';
import { loadPaper } from '../input/paper.ts';
import type { Outcome } from '../outcome.ts';
import { type DatabaseOptions, databaseNamed, withDatabase } from './database-option.ts';
import {
  checkPrintable,
  type PrintOptions,
  printedWith,
  withPaperOptions,
  writePrinted,
} from './paper-options.ts';

interface ChartOptions extends PrintOptions, DatabaseOptions {
  rig: string;
}

/** `print pump-chart`: a rig's discharge pressures. */
export function addPrintPumpChart(print: Command, answer: Answer): void {
  const command = print
    .command('pump-chart')
    .description(
      'Discharge pressures of a rig by line and length, by floor, for standpipes and sprinklers, and for supplying another pump.',
    )
    .requiredOption('--rig <name>', "the rig's name or id");
  withPaperOptions(withDatabase(command))
    .addHelpText(
      'after',
      examples(
        [
          'plugside print pump-chart --rig "Engine 1" --db district.db -o engine-1.pdf',
          'On letter paper.',
        ],
        [
          'plugside print pump-chart --rig "Engine 1" --db district.db -o engine-1.pdf --paper a4 --units si',
          'On A4, in bar, L/min and m.',
        ],
      ),
    )
    .action((options: ChartOptions) => answer('print pump-chart', options, () => ask(options)));
}

async function ask(options: ChartOptions): Promise<Outcome> {
  const target = databaseNamed(options);
  checkPrintable(options);
  const { pickedRig, pumpChartFor, readDepartment, renderPumpChart } = await loadPaper();
  const chart = await withDistrict(target, async (store, { invented, name }) => {
    const records = await readDepartment(store);
    const rig = recordNamed(records.rigs, options.rig, 'rig');
    const made = pumpChartFor({
      ...pickedRig(records, rig),
      nozzles: records.nozzles,
      receivers: records.rigs,
      notices: records.notices ?? [],
      department: records.department,
      invented,
      units: options.units,
    });
    await writePrinted(options, () => renderPumpChart(made, printedWith(options, name)));
    return made;
  });
  return {
    exitCode: exitCodes.answered,
    text: () => `Wrote the pump chart of ${chart.rigName} to ${options.output}.`,
    data: () => ({ answer: { question: 'print pump-chart', file: options.output, chart } }),
  };
}
