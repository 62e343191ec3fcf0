import { requirePositive, requireZeroOrMore } from '../quantity-check.ts';

/** Volume of a foot of 1 in bore: 12·π/4 in³ ÷ 231 in³/gal [gal/ft·in²]. */
export const GAL_PER_FT_PER_SQUARE_IN = (12 * Math.PI) / 4 / 231;

/** Weight of water [lb/gal]. Sources print 8.33 to 8.36; 62.4 lb/ft³ ÷ 7.48 gal/ft³ = 8.34. Source: Water supply basics: hydraulics for pump operators, FireRescue1; Pump Ops ch 7 study cards. */
export const WATER_LB_PER_GAL = 8.34;

/**
 * Water that a hose holds.
 *   V = 0.0408·d²·L
 * @param diameterIn inside diameter [in]
 * @param lengthFt length [ft]
 * @returns volume [gal]
 * Valid: nominal bore; under pressure hose swells and holds somewhat more.
 * Outside: throws QuantityError.
 * @example hoseVolumeGal(1.5, 600) // 55
 * Source: NWCG 3.2 Volume of Water in Hose (9.2 gal in 100 ft of 1½ in).
 */
export function hoseVolumeGal(diameterIn: number, lengthFt: number): number {
  requirePositive('diameterIn', diameterIn, 'in');
  requireZeroOrMore('lengthFt', lengthFt, 'ft');
  return GAL_PER_FT_PER_SQUARE_IN * diameterIn ** 2 * lengthFt;
}

/**
 * Weight of water.
 *   W = 8.34·V
 * @param gallons volume; a flow in gpm gives lb in each minute [gal]
 * @param lbPerGal weight of a gallon; 8.34 where left out [lb/gal]
 * @returns weight [lb]
 * Valid: fresh water.
 * Outside: throws QuantityError.
 * @example waterWeightLb(200, 8.35) // 1670
 * Source: Water supply basics: hydraulics for pump operators, FireRescue1.
 */
export function waterWeightLb(gallons: number, lbPerGal: number = WATER_LB_PER_GAL): number {
  requireZeroOrMore('gallons', gallons, 'gal');
  requirePositive('lbPerGal', lbPerGal, 'lb/gal');
  return gallons * lbPerGal;
}
