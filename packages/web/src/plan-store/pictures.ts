/** The further pictures of a plan: each is asked apart, so that one failing leaves the others. */
import {
  type BoostComparison,
  compareBoost,
  fiveInchSpread,
  type Improvement,
  improvements,
  isBoosted,
  type MostWater,
  mainLay,
  mostWater,
  type Plan,
  type SupplyCurve,
  supplyCurves,
  type UnitSystem,
  unassistedPlan,
} from '@plugside/fireground';
import { type Answered, ask, problemIn } from './ask.ts';
import { patchLine } from './edits/pieces.ts';
import type { Question } from './view.ts';

export type Picture<T> = { ok: true; found: T } | { ok: false; problem: string };

function picture<T>(make: () => T): Picture<T> {
  try {
    return { ok: true, found: make() };
  } catch (error) {
    return { ok: false, problem: problemIn(error) };
  }
}

/**
 * The greatest flow on hydrant pressure alone, beside a plan that boosts it; null where nothing is
 * boosted or no hydrant is there.
 */
export function aloneOf(plan: Plan): Picture<MostWater | null> {
  return picture(() =>
    isBoosted(plan) && plan.hydrants.length > 0 ? mostWater(unassistedPlan(plan)) : null,
  );
}

export const comparisonOf = (plan: Plan): Picture<BoostComparison> =>
  picture(() => compareBoost(plan));

export const curvesOf = (plan: Plan): Picture<SupplyCurve[]> => picture(() => supplyCurves(plan));

export const improvementsOf = (plan: Plan): Picture<Improvement[]> =>
  picture(() => improvements(plan));

export interface CoefficientBand {
  line: string;
  /** The same answer with the hose at either end of its coefficient's range. */
  low: Answered;
  high: Answered;
}

/**
 * The same question with the lay's 5 in hose at both ends of its coefficient's range; null where
 * the lay has none, or has a measured value of its own.
 */
export function bandOf(
  plan: Plan,
  question: Question,
  units: UnitSystem,
): Picture<CoefficientBand | null> {
  const line = mainLay(plan);
  if (line?.hose !== '5' || line.coefficient !== undefined) return { ok: true, found: null };
  if (line.lengthFt <= 0 || plan.department.coefficients?.['5']) return { ok: true, found: null };
  const at = (coefficient: number) =>
    ask(patchLine(plan, line.id, { coefficient }), question, units);
  const [low, high] = [at(fiveInchSpread.low), at(fiveInchSpread.high)];
  if (!low.ok) return low;
  if (!high.ok) return high;
  return { ok: true, found: { line: line.id, low: low.answered, high: high.answered } };
}
