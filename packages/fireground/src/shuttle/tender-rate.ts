import { requirePositive, requireWithin } from '@plugside/hydraulics';
import { shuttleDefaults } from './shuttle-defaults.ts';

/**
 * Time on the road.
 *   T = 0.65 + 1.70·D
 * @param distanceMi distance of the leg [mi], 0 to 50
 * @param pace `startMin` lost to starting and stopping [min], `minPerMi` on the road [min/mi]; 60 over
 *   the speed in mph
 * @returns time [min]
 * Valid: 35 mph. Sources disagree about D: a lesson takes a whole route of 3 mi in one leg (5.75 min);
 * the rural standard, from memory, takes each way as a leg of its own.
 * Outside: throws QuantityError.
 * Source: Water Shuttle Operations lesson p. 12, Firehouse
 * (http://www.firehouse.com/article/10515648/water-shuttle-operations?page=12).
 */
export function shuttleTravelMin(
  distanceMi: number,
  pace: { startMin?: number; minPerMi?: number } = {},
): number {
  const { startMin = shuttleDefaults.startMin, minPerMi = shuttleDefaults.minPerMi } = pace;
  requireWithin('distanceMi', distanceMi, [0, 50], 'mi');
  requireWithin('startMin', startMin, [0, 10], 'min');
  requireWithin('minPerMi', minPerMi, [0.5, 20], 'min/mi');
  return startMin + minPerMi * distanceMi;
}

/**
 * Flow that one tender keeps up.
 *   gpm = 0.9·V/(travel + handling)
 * @param tankGal its tank [gal], 100 to 15,000
 * @param roundTripMin dump to dump [min]
 * @param usableShare share that reaches the portable tank [-]; 0.9 where left out
 * @returns flow [gpm]
 * Valid: no waiting at either site.
 * Outside: throws QuantityError.
 * Source: Water Shuttle Operations lesson pp. 12 and 13, Firehouse; water shuttle exam answers.
 */
export function tenderRateGpm(
  tankGal: number,
  roundTripMin: number,
  usableShare: number = shuttleDefaults.usableShare,
): number {
  requireWithin('tankGal', tankGal, [100, 15_000], 'gal');
  requirePositive('roundTripMin', roundTripMin, 'min');
  requireWithin('usableShare', usableShare, [0.1, 1], '', 'Give the share as 0.1 to 1.');
  return (usableShare * tankGal) / roundTripMin;
}
