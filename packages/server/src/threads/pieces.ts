/**
 * Every piece of work that is done off the main thread, by the name it is asked for by. The main
 * thread knows this file as a type alone, so what the pieces are made with is loaded by threads only.
 */
import { printBuildingPlan } from '../paper/print-building-plan.ts';
import { printDrillReport } from '../paper/print-drill-report.ts';
import { printDrillSheet } from '../paper/print-drill-sheet.ts';
import { countCards, printCards, printHydrantCard } from '../paper/print-hydrant-cards.ts';
import { printPumpChart } from '../paper/print-pump-chart.ts';
import type { Pieces } from './piece.ts';

export const pieces = {
  'print a pump chart': printPumpChart,
  'print a hydrant card': printHydrantCard,
  'count hydrant cards': countCards,
  'print hydrant cards': printCards,
  'print a drill sheet': printDrillSheet,
  'print a building plan': printBuildingPlan,
  'print a drill report': printDrillReport,
} satisfies Pieces;
