import { defaultCapability, RATED_CAPACITIES_GPM } from '@plugside/hydraulics';
import type { Origin, Rig } from '../plan/plan.ts';
import { measured, standard } from './origins.ts';

/** Rated capacities that pumps come in [gpm], portable pumps included. */
export const pumpRatingsGpm: readonly number[] = [250, 500, ...RATED_CAPACITIES_GPM];

/** The usual attack engine and booster [gpm]. */
export const usualRating = 1500;

export const usualIntakes = 3;
export const usualDischarges = 6;

/**
 * What a rig's pump can add, net pressure [psi] against flow [gpm], and where it comes from:
 * its own test, else the default for its rating. Throws QuantityError for a rating that is
 * not above 0.
 */
export function capabilityFor(rig: Pick<Rig, 'ratedGpm' | 'capability'>): {
  points: readonly (readonly [flowGpm: number, netPsi: number])[];
  origin: Origin;
} {
  if (rig.capability)
    return { points: rig.capability, origin: measured("The rig's own pump test") };
  return {
    points: defaultCapability(rig.ratedGpm),
    origin: standard(
      'Rating: 100 % at 150 psi net, 70 % at 200, 50 % at 250; past it, prove it by test',
    ),
  };
}

/**
 * Net pressure [psi] a rig can add at a flow [gpm] and full speed: straight lines between the points of
 * its capability; 0 past the wall.
 */
export function capabilityAt(rig: Pick<Rig, 'ratedGpm' | 'capability'>, flowGpm: number): number {
  const { points } = capabilityFor(rig);
  if (flowGpm > points[points.length - 1]![0] + 1e-6) return 0;
  let at = 1;
  while (at < points.length - 1 && flowGpm > points[at]![0]) at++;
  const [lowGpm, highPsi] = points[at - 1]!;
  const [highGpm, lowPsi] = points[at]!;
  return highPsi + ((lowPsi - highPsi) * (Math.max(0, flowGpm) - lowGpm)) / (highGpm - lowGpm);
}
