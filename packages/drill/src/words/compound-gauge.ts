/** An intake's gauge: pressure above zero, vacuum below it, each on a scale of its own. */
import type { WordUnits } from './in-units.ts';

/** 1 psi of vacuum [inHg]: 29.92 inHg and 14.696 psi are the same air. */
const INHG_PER_PSI = 29.92 / 14.696;
/** Where the scale of the vacuum ends [inHg]; common practice, no source. */
export const fullVacuumInHg = 30;
/** The same in SI, which is lettered in round numbers too [kPa]. */
export const fullVacuumKpa = 100;

/** Vacuum that a gauge reads [inHg]; 0 for a pressure. @param psi gauge pressure [psi] */
export function vacuumInHg(psi: number): number {
  return Math.max(0, -psi * INHG_PER_PSI);
}

/** Whether a reading is told as a vacuum: it comes to 1 inHg when rounded. */
export function isVacuum(psi: number): boolean {
  return Math.round(vacuumInHg(psi)) >= 1;
}

/**
 * A pressure as it is read: `46 psi`, `12 inHg vacuum`; in SI `3.2 bar`, `41 kPa vacuum`.
 * @param psi gauge pressure [psi]
 */
export function pressureWords(psi: number, units: WordUnits): string {
  return isVacuum(psi)
    ? `${units.text(vacuumInHg(psi), 'vacuum')} vacuum`
    : units.text(Math.max(0, psi), 'pressure');
}

/** Share of a compound scale that is the vacuum's: more than its share of the pressure, as on gauges. Ours. */
export const zeroShare = 0.22;

/**
 * Where a reading stands on a compound scale.
 * @param psi gauge pressure [psi]
 * @param topPsi where the scale ends [psi > 0]
 * @returns 0 at full vacuum, `zeroShare` at no pressure, 1 at the top; not past its ends
 */
export function compoundShare(psi: number, topPsi: number): number {
  return psi < 0
    ? zeroShare * (1 - Math.min(1, vacuumInHg(psi) / fullVacuumInHg))
    : zeroShare + (1 - zeroShare) * Math.min(1, psi / topPsi);
}
