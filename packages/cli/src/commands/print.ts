import type { Command } from 'commander';
import type { Answer } from '../answer.ts';
import { addPrintBuildingPlan } from './print-building-plan.ts';
import { addPrintDrillSheet } from './print-drill-sheet.ts';
import { addPrintHydrantCard, addPrintHydrantCards } from './print-hydrant-cards.ts';
import { addPrintPumpChart } from './print-pump-chart.ts';

/** `print`: documents that crews carry. */
export function addPrint(program: Command, answer: Answer): void {
  const print = program
    .command('print')
    .description(
      'Documents that crews carry, as PDF: pump charts, hydrant cards, building water plans, drill sheets.',
    )
    .helpOption('-h, --help', 'print this help');
  addPrintPumpChart(print, answer);
  addPrintHydrantCard(print, answer);
  addPrintHydrantCards(print, answer);
  addPrintBuildingPlan(print, answer);
  addPrintDrillSheet(print, answer);
}
