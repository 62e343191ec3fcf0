/** Of a way that meets the demand by a trifle. */
import type { Notice } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';

/**
 * "Only 9 gpm to spare …" for a way that meets the demand with less than is wanted.
 * @param marginGpm what it has to spare [gpm, 0 or more]
 * @param wantedGpm what it should have [gpm]
 */
export function littleToSpareNotice(
  marginGpm: number,
  wantedGpm: number,
  units: UnitSystem,
): Notice {
  const say = sayIn(units);
  const [only, wanted] = [Math.max(0, marginGpm), wantedGpm].map((gpm) => say.full(gpm, 'flow'));
  return {
    level: 'caution',
    text: `Only ${only} to spare; ${wanted} is wanted. A main or hose a little worse than on record leaves it short: have the next supply ready.`,
  };
}
