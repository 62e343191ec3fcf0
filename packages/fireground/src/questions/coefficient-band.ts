import type { Plan } from '../plan/plan.ts';
import type { MostWater } from './answers.ts';
import { withLine } from './main-lay.ts';
import { type MostWaterOptions, mostWater } from './most-water.ts';

/** What measured and published coefficients of 5 in hose spread over: 0.06 in "Working With Large-Diameter Hose Part 1" (Fire Engineering), 0.08 in textbooks. */
export const fiveInchSpread = { low: 0.06, high: 0.08 } as const;

/**
 * What an assumption about one line's hose costs: the greatest flow at both ends of a coefficient's spread.
 * @param spread lowest and highest coefficient; that of 5 in hose where left out
 * @throws NetworkError
 */
export function coefficientBand(
  plan: Plan,
  lineId: string,
  spread: { low: number; high: number } = fiveInchSpread,
  options: MostWaterOptions = {},
): { low: MostWater; high: MostWater } {
  return {
    low: mostWater(withLine(plan, lineId, { coefficient: spread.low }), options),
    high: mostWater(withLine(plan, lineId, { coefficient: spread.high }), options),
  };
}
