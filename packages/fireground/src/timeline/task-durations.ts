import { requirePositive, requireWithin } from '@plugside/hydraulics';
import { hoseVolumeGal } from '../catalogue/hose.ts';
import type { HoseSize } from '../plan/plan.ts';

/**
 * Time to lay hose.
 *   minutes = length/(60·speed), or length/100·seconds/60
 * @param lengthFt length [ft], 0 to 20,000
 * @param pace speed of the rig [ft/s], or drilled time for 100 ft [s]
 * @returns time [min]
 * Outside: throws QuantityError.
 * Source: speed is distance over time.
 */
export function layingMin(
  lengthFt: number,
  pace: { speedFtS: number } | { secondsPer100Ft: number },
): number {
  requireWithin('lengthFt', lengthFt, [0, 20_000], 'ft');
  if ('speedFtS' in pace) {
    requirePositive('speedFtS', pace.speedFtS, 'ft/s');
    return lengthFt / pace.speedFtS / 60;
  }
  requirePositive('secondsPer100Ft', pace.secondsPer100Ft, 's');
  return ((lengthFt / 100) * pace.secondsPer100Ft) / 60;
}

/**
 * Time to fill a lay.
 *   minutes = lines·water in the hose/fill flow
 * @param hose size of the hose
 * @param lengthFt length of each line [ft]
 * @param fillGpm what fills them all together [gpm]
 * @param count like lines side by side; 1 where left out
 * @returns time [min]
 * Valid: hose laid empty; it swells under pressure and takes somewhat more.
 * Outside: throws QuantityError.
 * Source: hoseVolumeGal.
 */
export function chargingMin(hose: HoseSize, lengthFt: number, fillGpm: number, count = 1): number {
  requirePositive('fillGpm', fillGpm, 'gpm');
  requireWithin('count', count, [1, 6], 'lines');
  return (count * hoseVolumeGal(hose, lengthFt)) / fillGpm;
}
