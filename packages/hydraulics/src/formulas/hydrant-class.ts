import { requireZeroOrMore } from '../quantity-check.ts';

/** A hydrant class of NFPA 291. */
export interface HydrantClass {
  /** Name in the standard: AA, A, B or C. */
  name: 'AA' | 'A' | 'B' | 'C';
  /** Colour of bonnet and caps. */
  colour: 'light blue' | 'green' | 'orange' | 'red';
  /** Least flow at the rating residual [gpm]. */
  leastGpm: number;
}

/** The classes, greatest first. Source: Rural pressurized fire hydrant part 2, Firehouse; NFPA 291. */
export const HYDRANT_CLASSES: readonly HydrantClass[] = [
  { name: 'AA', colour: 'light blue', leastGpm: 1500 },
  { name: 'A', colour: 'green', leastGpm: 1000 },
  { name: 'B', colour: 'orange', leastGpm: 500 },
  { name: 'C', colour: 'red', leastGpm: 0 },
];

/**
 * Class of a hydrant by the flow it gives at 20 psi.
 *   AA from 1,500 gpm, A from 1,000, B from 500, C below
 * @param availableGpm flow at the rating residual [gpm]
 * @returns name, colour and lower bound [HydrantClass]
 * Valid: any flow; 1,499 gpm is class A.
 * Outside: throws QuantityError.
 * @example hydrantClass(1499).name // 'A'
 * Source: Rural pressurized fire hydrant part 2, Firehouse; NFPA 291.
 */
export function hydrantClass(availableGpm: number): HydrantClass {
  requireZeroOrMore('availableGpm', availableGpm, 'gpm');
  return HYDRANT_CLASSES.find((each) => availableGpm >= each.leastGpm)!;
}
