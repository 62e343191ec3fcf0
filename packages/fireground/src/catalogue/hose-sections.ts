/** Hose comes in sections, and is laid in whole ones. */
import type { HoseSize } from '../plan/plan.ts';
import { hoseCatalogue } from './hose.ts';

export interface HoseSections {
  count: number;
  /** Of each [ft]. */
  sectionFt: number;
}

/** Room for rounding in a number of sections. */
const NO_SECTION = 1e-9;

/** A length as whole sections of its hose [ft]. */
export function wholeSectionsFt(size: HoseSize, lengthFt: number): number {
  const { sectionFt } = hoseCatalogue[size];
  return Math.ceil(lengthFt / sectionFt - NO_SECTION) * sectionFt;
}

/**
 * Sections in hose laid end to end [ft]; undefined where a length is no whole number of them, or the
 * sizes come in sections of different lengths.
 */
export function sectionsOf(
  laid: readonly { hose: HoseSize; lengthFt: number }[],
): HoseSections | undefined {
  const [first] = laid;
  if (!first) return undefined;
  const { sectionFt } = hoseCatalogue[first.hose];
  const whole = laid.every(
    ({ hose, lengthFt }) =>
      hoseCatalogue[hose].sectionFt === sectionFt &&
      Math.abs(wholeSectionsFt(hose, lengthFt) - lengthFt) < NO_SECTION * sectionFt,
  );
  if (!whole) return undefined;
  const lengthFt = laid.reduce((sum, one) => sum + one.lengthFt, 0);
  return { count: Math.round(lengthFt / sectionFt), sectionFt };
}
