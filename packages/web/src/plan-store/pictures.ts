/** The further pictures of a plan: each is asked apart, so that one failing leaves the others. */
import {
  type BoostComparison,
  coefficientBand,
  compareBoost,
  fiveInchSpread,
  type Improvement,
  improvements,
  mainLay,
  type Plan,
  type PressureProfile,
  profileOf,
  type SupplyCurve,
  supplyCurves,
  whatNow,
} from '@plugside/fireground';
import { problemIn } from './ask.ts';
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

export const comparisonOf = (plan: Plan): Picture<BoostComparison> =>
  picture(() => compareBoost(plan));

export const curvesOf = (plan: Plan): Picture<SupplyCurve[]> => picture(() => supplyCurves(plan));

export const improvementsOf = (plan: Plan): Picture<Improvement[]> =>
  picture(() => improvements(plan));

export interface CoefficientBand {
  line: string;
  low: PressureProfile;
  high: PressureProfile;
  lowGpm: number;
  highGpm: number;
}

/** The same question with the lay's 5 in hose at both ends of its coefficient's range; null where the lay has none, or has its own measured value. */
export function bandOf(plan: Plan, question: Question): Picture<CoefficientBand | null> {
  return picture(() => {
    const line = mainLay(plan);
    if (line?.hose !== '5' || line.coefficient !== undefined) return null;
    if (line.lengthFt <= 0 || plan.department.coefficients?.['5']) return null;
    if (question === 'now') {
      const at = (coefficient: number) => whatNow(patchLine(plan, line.id, { coefficient }));
      const [low, high] = [at(fiveInchSpread.low), at(fiveInchSpread.high)];
      return {
        line: line.id,
        low: profileOf(low.plan, low.state),
        high: profileOf(high.plan, high.state),
        lowGpm: low.state.sceneGpm,
        highGpm: high.state.sceneGpm,
      };
    }
    const { low, high } = coefficientBand(plan, line.id);
    return {
      line: line.id,
      low: profileOf(low.plan, low.state),
      high: profileOf(high.plan, high.state),
      lowGpm: low.flowGpm,
      highGpm: high.flowGpm,
    };
  });
}
