import {
  requireFinite,
  requirePositive,
  requireWithin,
  requireZeroOrMore,
} from '../quantity-check.ts';
import { QuantityError } from '../quantity-error.ts';

/** Net pressure [psi] that a pump can add, against flow [gpm]; straight lines between, a wall at the last flow. */
export type CapabilityPoints = readonly (readonly [flowGpm: number, netPsi: number])[];

/**
 * Default capability as shares of rated capacity [-] and net pressure [psi].
 * 50 % at 250, 70 % at 200 and 100 % at 150 are the rating standard's (Relay Pumping Operations
 * lesson p3, Firehouse; History Brings Us To The 1,500-gpm Pump, Fire Apparatus; a pump maker's
 * performance test table). Shut-off at 375 is common practice, no source. Past 100 % the points
 * keep the water horsepower of the rating: a convention, to be proved by test.
 */
export const DEFAULT_CAPABILITY_SHARES: CapabilityPoints = [
  [0, 375],
  [0.5, 250],
  [0.7, 200],
  [1, 150],
  [1.25, 120],
  [1.5, 100],
];

/** Rated capacities made [gpm]. From memory of the apparatus standard; 750 is the least for a pumper. */
export const RATED_CAPACITIES_GPM: readonly number[] = [
  750, 1000, 1250, 1500, 1750, 2000, 2250, 2500, 3000,
];

/** Annual test of pumps of 750 gpm and more: share of rating [-], net pressure [psi], time [min]. From memory of NFPA 1911. */
export const SERVICE_TEST_STAGES: readonly {
  ratedShare: number;
  netPsi: number;
  minutes: number;
}[] = [
  { ratedShare: 1, netPsi: 150, minutes: 20 },
  { ratedShare: 1, netPsi: 165, minutes: 5 },
  { ratedShare: 0.7, netPsi: 200, minutes: 10 },
  { ratedShare: 0.5, netPsi: 250, minutes: 10 },
];

/** Throws a QuantityError unless the points start at flow 0, rise in flow and never rise in pressure. */
export function requireCapability(points: CapabilityPoints): void {
  const refuse = (value: unknown, allowed: string, remedy: string) => {
    throw new QuantityError({ field: 'capability', value, allowed, remedy });
  };
  if (points.length < 2 || points[0]![0] !== 0) {
    refuse(
      JSON.stringify(points),
      'two points or more, the first at 0 gpm',
      'Add the shut-off pressure as the point at 0 gpm.',
    );
  }
  for (const [index, [flowGpm, netPsi]] of points.entries()) {
    requireZeroOrMore(`capability[${index}] flow`, flowGpm, 'gpm');
    requireZeroOrMore(`capability[${index}] net pressure`, netPsi, 'psi');
    const before = points[index - 1];
    if (before && (flowGpm <= before[0] || netPsi > before[1])) {
      refuse(
        `${before[0]} gpm at ${before[1]} psi, then ${flowGpm} gpm at ${netPsi} psi`,
        'flow rising from point to point, net pressure never rising',
        'Sort the test by flow, and repeat a reading that rises.',
      );
    }
  }
}

/**
 * Capability of a pump known only by its rating.
 *   375 psi at 0; 250 at 50 %; 200 at 70 %; 150 at 100 %; 120 at 125 %; 100 at 150 %; then a wall
 * @param ratedGpm rated capacity at 150 psi net [gpm]
 * @returns flow against net pressure [CapabilityPoints]
 * Valid: up to the rating by the standard. Past it a pump fed by a strong hydrant gives more than
 * its rating (up to about twice has been published), how much only its own test tells.
 * Outside: throws QuantityError.
 * @example defaultCapability(1500)[3] // [1500, 150]
 * Source: see DEFAULT_CAPABILITY_SHARES; Engine Company Operations: Did You Know?, Fire Engineering.
 */
export function defaultCapability(ratedGpm: number): [flowGpm: number, netPsi: number][] {
  requirePositive('ratedGpm', ratedGpm, 'gpm');
  return DEFAULT_CAPABILITY_SHARES.map(([share, netPsi]) => [share * ratedGpm, netPsi]);
}

/**
 * Net pressure that a pump can add at a flow.
 *   straight line between the two points around the flow; 0 past the last one
 * @param points capability at full speed [CapabilityPoints]
 * @param flowGpm flow through the pump [gpm]
 * @returns net pressure; 0 past the wall [psi]
 * Valid: within the points.
 * Outside: throws QuantityError for points out of order.
 * @example capabilityPsi(defaultCapability(1500), 1050) // 200
 * Source: piecewise-linear reading of the rating; see DEFAULT_CAPABILITY_SHARES.
 */
export function capabilityPsi(points: CapabilityPoints, flowGpm: number): number {
  requireCapability(points);
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  for (let index = 1; index < points.length; index++) {
    const [highFlow, lowPsi] = points[index]!;
    if (flowGpm <= highFlow) {
      const [lowFlow, highPsi] = points[index - 1]!;
      return highPsi + ((flowGpm - lowFlow) / (highFlow - lowFlow)) * (lowPsi - highPsi);
    }
  }
  return 0;
}

/**
 * Greatest flow at which a pump can still add a net pressure.
 *   the capability turned round
 * @param points capability at full speed [CapabilityPoints]
 * @param netPsi net pressure to add [psi]
 * @returns flow; 0 where even shut-off falls short; the wall where pressure is left over [gpm]
 * Valid: within the points.
 * Outside: throws QuantityError for points out of order.
 * @example capabilityFlowGpm(defaultCapability(1500), 200) // 1050
 * Source: as capabilityPsi.
 */
export function capabilityFlowGpm(points: CapabilityPoints, netPsi: number): number {
  requireCapability(points);
  requireZeroOrMore('netPsi', netPsi, 'psi');
  for (let index = points.length - 1; index > 0; index--) {
    const [highFlow, lowPsi] = points[index]!;
    if (netPsi <= lowPsi) return highFlow;
    const [lowFlow, highPsi] = points[index - 1]!;
    if (netPsi <= highPsi) {
      return lowFlow + ((highPsi - netPsi) / (highPsi - lowPsi)) * (highFlow - lowFlow);
    }
  }
  return 0;
}

/**
 * Capability at another speed, by the affinity laws.
 *   Q ∝ s, P ∝ s²
 * @param points capability at full speed [CapabilityPoints]
 * @param speedFraction speed as a share of full, above 0 to 1.2 [-]
 * @returns capability at that speed [CapabilityPoints]
 * Valid: centrifugal pumps, away from cavitation.
 * Outside: throws QuantityError.
 * @example capabilityAtSpeed([[0, 200], [1000, 150]], 0.5) // [[0, 50], [500, 37.5]]
 * Source: affinity laws, in any pump text (from memory).
 */
export function capabilityAtSpeed(
  points: CapabilityPoints,
  speedFraction: number,
): [flowGpm: number, netPsi: number][] {
  requireCapability(points);
  requirePositive('speedFraction', speedFraction, '');
  requireWithin('speedFraction', speedFraction, [0, 1.2], '');
  return points.map(([flowGpm, netPsi]) => [flowGpm * speedFraction, netPsi * speedFraction ** 2]);
}

/**
 * Smallest rating that gives a flow at a net pressure by the default capability.
 *   least R with capability(R) at netPsi ≥ Q
 * @param flowGpm flow wanted [gpm]
 * @param netPsi net pressure to add [psi]
 * @param ratings ratings to choose from; 750 to 3,000 where left out [gpm]
 * @returns rating, or undefined where none is large enough [gpm]
 * Valid: as defaultCapability.
 * Outside: throws QuantityError.
 * @example smallestRatingGpm(1000, 200) // 1500
 * Source: Relay Pumping Operations lesson p3, Firehouse, pairs 500 gpm with 750, 750 with 1,250 and
 * 1,000 with 1,500.
 */
export function smallestRatingGpm(
  flowGpm: number,
  netPsi: number,
  ratings: readonly number[] = RATED_CAPACITIES_GPM,
): number | undefined {
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  return [...ratings]
    .sort((a, b) => a - b)
    .find((rating) => capabilityFlowGpm(defaultCapability(rating), netPsi) >= flowGpm);
}

/**
 * Net pump pressure with water coming in under pressure.
 *   NPDP = PDP − intake
 * @param pdpPsi pump discharge pressure [psi]
 * @param intakePsi intake pressure; negative: vacuum [psi]
 * @returns net pressure that the pump adds [psi]
 * Valid: any.
 * Outside: throws QuantityError for an unreadable input.
 * @example netPumpPressurePsi(170, 45) // 125
 * Source: Pump Ops ch 7 study cards.
 */
export function netPumpPressurePsi(pdpPsi: number, intakePsi: number): number {
  requireFinite('pdpPsi', pdpPsi, 'psi');
  requireFinite('intakePsi', intakePsi, 'psi');
  return pdpPsi - intakePsi;
}

/** Feet of water to a psi in the draft formula [ft/psi]. Source: Chapter 11 Static Water Supply Sources study cards. */
export const DRAFT_FT_PER_PSI = 2.3;

/**
 * Net pump pressure at draft.
 *   NPDP = PDP + (lift + suction loss)/2.3
 * @param pdpPsi pump discharge pressure [psi]
 * @param liftFt height of the pump above the water [ft]
 * @param suctionLossFt friction in suction hose and strainer, as head [ft]
 * @returns net pressure that the pump adds [psi]
 * Valid: lift and loss within what the air can push up.
 * Outside: throws QuantityError.
 * @example draftNetPumpPressurePsi(150, 10, 6) // 156.96
 * Source: Chapter 11 Static Water Supply Sources study cards.
 */
export function draftNetPumpPressurePsi(
  pdpPsi: number,
  liftFt: number,
  suctionLossFt: number,
): number {
  requireZeroOrMore('pdpPsi', pdpPsi, 'psi');
  requireFinite('liftFt', liftFt, 'ft');
  requireZeroOrMore('suctionLossFt', suctionLossFt, 'ft');
  return pdpPsi + (liftFt + suctionLossFt) / DRAFT_FT_PER_PSI;
}

/**
 * Power that a pump gives to the water.
 *   WHP = Q·P/1714
 * @param flowGpm flow [gpm]
 * @param netPsi net pressure [psi]
 * @returns water horsepower [hp]
 * Valid: any.
 * Outside: throws QuantityError.
 * @example waterHorsepower(1714, 1) // 1
 * Source: any pump text (from memory); 1714 folds 33,000 ft·lb/min per hp, 144 in²/ft² and 7.48 gal/ft³.
 */
export function waterHorsepower(flowGpm: number, netPsi: number): number {
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  requireZeroOrMore('netPsi', netPsi, 'psi');
  return (flowGpm * netPsi) / 1714;
}
