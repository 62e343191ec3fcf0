import {
  requireFinite,
  requirePositive,
  requireWithin,
  requireZeroOrMore,
} from '../quantity-check.ts';
import { QuantityError } from '../quantity-error.ts';
import { PSI_PER_FT } from './elevation.ts';

/** Inches of mercury to a psi [inHg/psi]. Source: NIST SP 811, appendix B (3.386389 kPa to the inch at 0 °C). */
export const IN_HG_PER_PSI = 6.894757 / 3.386389;

/** Share of the theoretical lift that a pump in order reaches [-]. Source: NWCG 3.5 Drafting Guidelines. */
export const PRACTICAL_LIFT_SHARE = 2 / 3;

/** Lift that every pump in order is depended on for [ft]. Source: Chapter 11 Static Water Supply Sources study cards. */
export const DEPENDABLE_LIFT_FT = 14.7;

/** Vacuum that a pump in order must pull, dry [inHg]. Source: a pump maker's manual, vacuum test. */
export const LEAST_DRY_VACUUM_IN_HG = 22;

/**
 * Height to which the air can push water.
 *   h = (air − vapour)/psiPerFt
 * @param airPsi air pressure, absolute [psi]
 * @param vapourPsi vapour pressure of the water; 0 where left out [psi]
 * @param psiPerFt pressure of a foot of water; 0.434 where left out [psi/ft]
 * @returns theoretical lift [ft]
 * Valid: still water, no flow.
 * Outside: throws QuantityError for water that boils at this pressure.
 * @example theoreticalLiftFt(14.7, 0, 0.4332) // 33.93
 * Source: Dry Hydrants and Static Water Supplies, Fire Engineering 2000, whose own division
 * (14.7/0.4332) is printed as 33.2 by a slip.
 */
export function theoreticalLiftFt(
  airPsi: number,
  vapourPsi = 0,
  psiPerFt: number = PSI_PER_FT,
): number {
  requirePositive('airPsi', airPsi, 'psi');
  requireZeroOrMore('vapourPsi', vapourPsi, 'psi');
  requirePositive('psiPerFt', psiPerFt, 'psi/ft');
  if (vapourPsi >= airPsi) {
    throw new QuantityError({
      field: 'vapourPsi',
      value: vapourPsi,
      allowed: `less than airPsi (${airPsi} psi)`,
      remedy: 'Water this warm boils at this altitude and cannot be drafted.',
    });
  }
  return (airPsi - vapourPsi) / psiPerFt;
}

/**
 * Height to which a vacuum lifts water.
 *   h = inHg/(2.036·0.434), 1.13 ft to the inch
 * @param vacuumInHg vacuum at the pump [inHg]
 * @returns lift, suction loss included [ft]
 * Valid: up to the air's own pressure, 29.9 inHg at sea level.
 * Outside: throws QuantityError above 29.93 inHg.
 * @example liftForVacuumFt(22) // 24.9
 * Source: Ch 11 Static Water Supply Sources study cards, second set (1.13 ft to the inch, printed
 * as 24.8 ft at 22 inHg).
 */
export function liftForVacuumFt(vacuumInHg: number): number {
  requireWithin('vacuumInHg', vacuumInHg, [0, 29.93], 'inHg', 'No vacuum is deeper than this.');
  return vacuumInHg / IN_HG_PER_PSI / PSI_PER_FT;
}

/**
 * Vacuum that a lift and its suction loss show on the gauge.
 *   inHg = 2.036·0.434·(lift + loss), 0.883 inHg to the foot
 * @param liftFt height of the pump above the water [ft]
 * @param suctionLossFt friction in suction hose and strainer, as head [ft]
 * @returns vacuum [inHg]
 * Valid: what the air can push up; a deeper answer means the pump will not draft.
 * Outside: throws QuantityError.
 * @example draftVacuumInHg(10, 6) // 14.1
 * Source: the units' definitions with 0.434 psi/ft.
 */
export function draftVacuumInHg(liftFt: number, suctionLossFt: number): number {
  requireZeroOrMore('liftFt', liftFt, 'ft');
  requireZeroOrMore('suctionLossFt', suctionLossFt, 'ft');
  return (liftFt + suctionLossFt) * PSI_PER_FT * IN_HG_PER_PSI;
}

/**
 * Lift to count on from the theoretical one.
 *   h = 2/3·theoretical
 * @param theoreticalFt theoretical lift [ft]
 * @returns practical lift [ft]
 * Valid: pump in order. Another source lets 22 inHg count: 24.9 ft at sea level.
 * Outside: throws QuantityError.
 * @example practicalLiftFt(33.9) // 22.6
 * Source: NWCG 3.5 Drafting Guidelines.
 */
export function practicalLiftFt(theoreticalFt: number): number {
  requirePositive('theoreticalFt', theoreticalFt, 'ft');
  return PRACTICAL_LIFT_SHARE * theoreticalFt;
}

/**
 * Gauge pressure at a drafting intake.
 *   P = −0.434·lift − suction loss
 * @param liftFt height of the pump above the water [ft]
 * @param suctionLossPsi friction in suction hose and strainer [psi]
 * @returns intake pressure against the air outside; negative: vacuum [psi]
 * Valid: while it stays above the vapour pressure: see cavitationMarginPsi.
 * Outside: throws QuantityError.
 * @example draftIntakePsi(10, 2) // -6.34
 * Source: hydrostatics with 0.434 psi/ft.
 */
export function draftIntakePsi(liftFt: number, suctionLossPsi: number): number {
  requireFinite('liftFt', liftFt, 'ft');
  requireZeroOrMore('suctionLossPsi', suctionLossPsi, 'psi');
  return -PSI_PER_FT * liftFt - suctionLossPsi;
}

/**
 * Room left before water at an intake boils.
 *   air + intake − vapour
 * @param airPsi air pressure, absolute [psi]
 * @param intakePsi intake pressure against the air [psi]
 * @param vapourPsi vapour pressure of the water [psi]
 * @returns pressure above boiling; 0 or less: the pump cavitates [psi]
 * Valid: pressure at the intake; the eye of the impeller sees less still.
 * Outside: throws QuantityError.
 * @example cavitationMarginPsi(14.7, -10, 0.26) // 4.44
 * Source: definition of net positive suction head.
 */
export function cavitationMarginPsi(airPsi: number, intakePsi: number, vapourPsi: number): number {
  requirePositive('airPsi', airPsi, 'psi');
  requireFinite('intakePsi', intakePsi, 'psi');
  requireZeroOrMore('vapourPsi', vapourPsi, 'psi');
  return airPsi + intakePsi - vapourPsi;
}

/** Share of rated capacity by lift [ft, -]. Source: NWCG glossary, suction lift; Chapter 11 Static Water Supply Sources study cards. */
export const CAPACITY_BY_LIFT: readonly (readonly [liftFt: number, share: number])[] = [
  [10, 1],
  [15, 0.7],
  [20, 0.6],
];

/**
 * Share of its rated capacity that a pump gives at a lift.
 *   1 to 10 ft, 0.7 at 15, 0.6 at 20; straight lines between
 * @param liftFt height of the pump above the water [ft]
 * @returns share of rated capacity [-]
 * Valid: 0 to 20 ft; straight lines between the printed points are ours.
 * Outside: throws QuantityError above 20 ft, where nothing is published.
 * @example capacityShareAtLift(15) // 0.7
 * Source: NWCG glossary, suction lift; Chapter 11 Static Water Supply Sources study cards. One card
 * set prints 3 ft for 10: a slip for 3 m.
 */
export function capacityShareAtLift(liftFt: number): number {
  requireWithin('liftFt', liftFt, [0, 20], 'ft', 'Bring the pump nearer to the water.');
  let [lowFt, lowShare] = CAPACITY_BY_LIFT[0]!;
  for (const [ft, share] of CAPACITY_BY_LIFT) {
    if (liftFt <= ft) {
      return ft === lowFt
        ? lowShare
        : lowShare + ((liftFt - lowFt) / (ft - lowFt)) * (share - lowShare);
    }
    [lowFt, lowShare] = [ft, share];
  }
  return lowShare;
}
