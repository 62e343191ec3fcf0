/**
 * Rounding to a fixed grid. Every number that physics writes into a state is rounded, so that a last
 * digit that one engine computes otherwise than another does not grow into another drill. The grids are
 * powers of two: dividing and multiplying by them is exact.
 */
const PRESSURES = 2 ** 10;
const VOLUMES = 2 ** 20;

/** A pressure [psi], a flow [gpm] or a share on the grid: thousandths. Infinity and NaN become 0. */
export function onGrid(value: number): number {
  const rounded = Math.round(value * PRESSURES) / PRESSURES;
  // Adding 0 turns −0, which JSON cannot keep, into 0.
  return Number.isFinite(rounded) ? rounded + 0 : 0;
}

/** A volume [gal], or a share that grows in small steps, on the grid: millionths. */
export function onFineGrid(value: number): number {
  const rounded = Math.round(value * VOLUMES) / VOLUMES;
  return Number.isFinite(rounded) ? rounded + 0 : 0;
}
