import type { HoseSize, Plan } from '../plan/plan.ts';
import type { AttackLineOptions } from './attack-lines.ts';
import { forwardLay } from './forward-lay.ts';
import { fillLay, type LayOptions } from './lay.ts';
import { type HydrantTest, newLine } from './pieces.ts';

export interface DualLinesOptions {
  title?: string;
  hydrant?: HydrantTest;
  /** The line from the steamer. */
  lay?: LayOptions;
  /** The line beside it, from a side outlet. */
  secondHose?: HoseSize;
  attack?: { ratedGpm?: number; pdpPsi?: number };
  attackLines?: readonly AttackLineOptions[];
}

/**
 * Two lines side by side from one hydrant, one from the steamer and one from a side outlet,
 * into two intakes. Ids as in `boostedAtHydrant`, the second line `lay2`.
 */
export function dualLines({ secondHose = '3', ...options }: DualLinesOptions = {}): Plan {
  const lay = fillLay(options.lay);
  const plan = forwardLay({ title: 'Dual lines', ...options, lay });
  const second = newLine('lay2', 'H1.side1', 'A1.intake2', secondHose, lay.lengthFt);
  return { ...plan, lines: [...plan.lines, second] };
}
