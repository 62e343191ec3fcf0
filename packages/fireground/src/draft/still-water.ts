import { requirePositive, requireWithin } from '@plugside/hydraulics';

/** Gallons in a cubic foot: 1,728 in³ over 231. */
export const GAL_PER_FT3 = 1728 / 231;

/** Square feet in an acre. Source: NIST SP 811. */
export const FT2_PER_ACRE = 43_560;

/**
 * Water that a pond or tank gives before the strainer is bare.
 *   gal = area·depth·7.48
 * @param areaFt2 surface [ft²], up to 100,000,000
 * @param usableDepthFt surface to the least cover over the strainer [ft], 0 to 100
 * @returns usable water [gal]
 * Valid: banks as steep as walls; where they slope, take the area at half of the depth. Drought and ice take
 * their share first.
 * Outside: throws QuantityError.
 * Source: Calculating Available Water Supply From a Dry Hydrant, Carolina Fire Journal (a layer above
 * the strainer); an acre-foot is 325,851 gal, Acre Feet, Mace Water and Land.
 */
export function pondGal(areaFt2: number, usableDepthFt: number): number {
  requirePositive('areaFt2', areaFt2, 'ft²');
  requireWithin('areaFt2', areaFt2, [0, 100_000_000], 'ft²');
  requireWithin('usableDepthFt', usableDepthFt, [0, 100], 'ft');
  return areaFt2 * usableDepthFt * GAL_PER_FT3;
}

/**
 * How long a body of water lasts.
 *   minutes = gal/(flow − inflow)
 * @param usableGal what can be drawn [gal]
 * @param flowGpm drawn [gpm]
 * @param inflowGpm running in meanwhile [gpm]; 0 where left out
 * @returns time [min]; null where the inflow keeps up
 * Outside: throws QuantityError.
 * Source: Highway Hydraulics part 3, Fire Apparatus (250 gpm for 2 h: 30,000 gal).
 */
export function stillWaterMin(usableGal: number, flowGpm: number, inflowGpm = 0): number | null {
  requireWithin('usableGal', usableGal, [0, 1e12], 'gal');
  requirePositive('flowGpm', flowGpm, 'gpm');
  requireWithin('inflowGpm', inflowGpm, [0, 1e7], 'gpm');
  return inflowGpm >= flowGpm ? null : usableGal / (flowGpm - inflowGpm);
}

/**
 * Water that a flow takes in a time.
 *   gal = flow·minutes
 * @param flowGpm flow [gpm]
 * @param minutes time [min]
 * @returns water [gal]
 * Outside: throws QuantityError.
 * Source: Highway Hydraulics part 3, Fire Apparatus.
 */
export function waterForGal(flowGpm: number, minutes: number): number {
  requireWithin('flowGpm', flowGpm, [0, 1e7], 'gpm');
  requireWithin('minutes', minutes, [0, 1e6], 'min');
  return flowGpm * minutes;
}
