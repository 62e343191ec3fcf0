/** Which of two legs cannot bring less than the other. */
import { coefficientFor, hoseCatalogue } from '../catalogue/hose.ts';
import { wholeSectionsFt } from '../catalogue/hose-sections.ts';
import { hosePressureLimit } from '../catalogue/limits.ts';
import type { DepartmentValues, HoseSize } from '../plan/plan.ts';
import type { Leg } from './leg.ts';

/**
 * Whether a leg has at least everything that another has, so that where it falls short the other
 * does too: the same source, pump and valve; as many lines, each no rougher and bearing no less;
 * as many suction lines, each no rougher as a section. Only legs of one stretch are compared.
 */
export function covers(one: Leg, two: Leg, department: DepartmentValues): boolean {
  if (one.source !== two.source || one.valve !== two.valve) return false;
  if (one.pumps.length > 1 || two.pumps.length > 1 || one.pumps[0] !== two.pumps[0]) return false;
  if (one.suction.length < two.suction.length) return false;
  if (
    !two.suction.every(
      (size, at) => ofSection(one.suction[at]!, department) <= ofSection(size, department),
    )
  )
    return false;
  const [stretch, other] = [one.stretches[0]!, two.stretches[0]!];
  if (stretch.change || other.change) return false;
  const [lines, others] = [stretch.lines, other.lines];
  const { lengthFt } = one.source.at;
  const asLaid = (size: HoseSize) =>
    coefficientOf(size, department) * wholeSectionsFt(size, lengthFt);
  return (
    lines.length >= others.length &&
    others.every((size, at) => asLaid(lines[at]!) <= asLaid(size)) &&
    bearsPsi(lines, department) >= bearsPsi(others, department)
  );
}

/** Friction coefficient [psi per 100 ft at 100 gpm]. */
export function coefficientOf(hose: HoseSize, department: DepartmentValues): number {
  return coefficientFor({ department }, { hose }).coefficient;
}

/** The same for a whole section, which suction lines are. */
function ofSection(hose: HoseSize, department: DepartmentValues): number {
  return coefficientOf(hose, department) * hoseCatalogue[hose].sectionFt;
}

/** What the weakest of some lines bears [psi]. */
export function bearsPsi(lines: readonly HoseSize[], department: DepartmentValues): number {
  return Math.min(...lines.map((hose) => hosePressureLimit({ department }, { hose }).limitPsi));
}
