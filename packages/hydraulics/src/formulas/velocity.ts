import { requirePositive, requireZeroOrMore } from '../quantity-check.ts';

/** Folds 231 in³/gal ÷ (60 s/min · 12 in/ft · π/4): 0.40850 [ft/s per gpm/in²]. Source: common handbook value, from memory; follows from the units' definitions. */
export const VELOCITY_CONSTANT = 0.4085;

/**
 * Speed of water in hose or pipe that runs full.
 *   v = 0.4085·Q/d²
 * @param flowGpm flow in this line [gpm]
 * @param diameterIn inside diameter [in]
 * @returns velocity [ft/s]
 * Valid: any full bore. Hose swells under pressure, so the nominal size reads a little high.
 * Outside: throws QuantityError.
 * @example velocityFtS(1000, 5) // 16.34
 * Source: common handbook formula, from memory; follows from the units' definitions.
 */
export function velocityFtS(flowGpm: number, diameterIn: number): number {
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  requirePositive('diameterIn', diameterIn, 'in');
  return (VELOCITY_CONSTANT * flowGpm) / diameterIn ** 2;
}
