import { requirePositive, requireZeroOrMore } from '../quantity-check.ts';
import { pitotPressurePsi } from './pitot.ts';

/** "x psi at y gpm": a loss that grows as the square of flow. */
export interface SquareLoss {
  /** Loss at `atGpm` [psi]. */
  lossPsi: number;
  /** Flow at which it was measured [gpm]. */
  atGpm: number;
}

/**
 * Loss factor of a piece from one measured loss.
 *   k = ΔP/Q²
 * @param loss the measured loss and its flow [SquareLoss]
 * @returns loss factor k [psi/gpm²]
 * Valid: turbulent flow through a fixed passage.
 * Outside: throws QuantityError for no flow.
 * @example lossFactor({ lossPsi: 23, atGpm: 1000 }) // 0.000023
 * Source: the orifice law.
 */
export function lossFactor({ lossPsi, atGpm }: SquareLoss): number {
  requireZeroOrMore('lossPsi', lossPsi, 'psi');
  requirePositive('atGpm', atGpm, 'gpm', 'A loss factor needs a loss measured with flow.');
  return lossPsi / atGpm ** 2;
}

/**
 * Loss of a piece at a flow.
 *   ΔP = x·(Q/y)², from "x psi at y gpm"
 * @param loss the measured loss and its flow [SquareLoss]
 * @param flowGpm flow now [gpm]
 * @returns loss [psi]
 * Valid: as lossFactor.
 * Outside: throws QuantityError.
 * @example applianceLossPsi({ lossPsi: 23, atGpm: 1000 }, 1300) // 39
 * Source: the orifice law; a four-way hydrant valve maker's flow test prints 23 psi at 1,000 gpm
 * and 36 at 1,300 (39 by the square).
 */
export function applianceLossPsi(loss: SquareLoss, flowGpm: number): number {
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  return lossFactor(loss) * flowGpm ** 2;
}

/**
 * Flow that a pressure difference drives through a piece.
 *   Q = y·√(ΔP/x), from "x psi at y gpm"
 * @param loss the measured loss and its flow [SquareLoss]
 * @param differencePsi pressure to spend [psi]
 * @returns flow [gpm]
 * Valid: as lossFactor.
 * Outside: throws QuantityError for a piece that loses nothing.
 * @example applianceFlowGpm({ lossPsi: 10, atGpm: 1000 }, 40) // 2000
 * Source: the orifice law turned round.
 */
export function applianceFlowGpm(loss: SquareLoss, differencePsi: number): number {
  requirePositive('lossPsi', loss.lossPsi, 'psi', 'A piece without loss passes any flow.');
  requireZeroOrMore('differencePsi', differencePsi, 'psi');
  return Math.sqrt(differencePsi / lossFactor(loss));
}

/**
 * Loss of an open outlet as "x psi at y gpm", from its discharge coefficient.
 *   ΔP = (Q/(29.84·c·d²))²
 * @param outletIn inside diameter of the outlet [in]
 * @param coefficient discharge coefficient of the outlet, up to 1 [-]
 * @param atGpm flow to state the loss at [gpm]
 * @returns the loss at that flow [SquareLoss]
 * Valid: an upper bound where hose follows, since hose wins back some of the velocity.
 * Outside: throws QuantityError.
 * @example outletLoss(2.5, 0.9, 1061).lossPsi // 40.0
 * Source: NFPA 291, pitot formula.
 */
export function outletLoss(outletIn: number, coefficient: number, atGpm: number): SquareLoss {
  return { lossPsi: pitotPressurePsi(outletIn, coefficient, atGpm), atGpm };
}

/** Appliances that the departments' rules speak of. */
export type RuledAppliance =
  | 'wye'
  | 'siamese'
  | 'manifold'
  | 'master stream'
  | 'standpipe'
  | 'aerial waterway';

/** A department's rule of thumb for the loss of an appliance. */
export interface ApplianceRule {
  /** Name to choose it by. */
  name: string;
  /** Where it is printed. */
  source: string;
  /** Loss at the total flow through it [psi]. */
  lossPsi: (appliance: RuledAppliance, totalGpm: number) => number;
}

const fixed = (appliance: RuledAppliance): number | undefined =>
  appliance === 'master stream' || appliance === 'standpipe' || appliance === 'aerial waterway'
    ? 25
    : undefined;

/**
 * The departments' rules [psi], which disagree. Master stream, standpipe system and aerial
 * waterway are 25 psi at any flow in all (Engineer's Test 2014 study cards; Florida
 * pump-operations exam answers; Pump Ops ch 7 study cards).
 */
export const APPLIANCE_RULES = {
  from350: {
    name: '10 psi from 350 gpm',
    source: 'Pump Ops ch 7 study cards; Math Formulas driver/operator study cards',
    lossPsi: (appliance, totalGpm) => fixed(appliance) ?? (totalGpm >= 350 ? 10 : 0),
  },
  always10: {
    name: '10 psi at any flow',
    source: "Engineer's Test 2014 study cards",
    lossPsi: (appliance) => fixed(appliance) ?? 10,
  },
  wildland5: {
    name: '5 psi each',
    source: 'NWCG 3.4 Calculating Engine Pump Pressures',
    lossPsi: (appliance) => fixed(appliance) ?? 5,
  },
  stateExam: {
    name: 'wye 25 psi, siamese 10 psi',
    source: 'Florida pump-operations exam answers',
    lossPsi: (appliance) => fixed(appliance) ?? (appliance === 'wye' ? 25 : 10),
  },
} as const satisfies Record<string, ApplianceRule>;

/**
 * Loss of an appliance by a department's rule.
 *   see APPLIANCE_RULES
 * @param appliance what it is [name]
 * @param totalGpm flow of all its lines together [gpm]
 * @param rule which rule; 10 psi from 350 gpm where left out [name]
 * @returns loss [psi]
 * Valid: planning by rule; a measured "x psi at y gpm" replaces it.
 * Outside: throws QuantityError for a negative flow.
 * @example ruledApplianceLossPsi('wye', 349) // 0
 * Source: as each rule names.
 */
export function ruledApplianceLossPsi(
  appliance: RuledAppliance,
  totalGpm: number,
  rule: keyof typeof APPLIANCE_RULES = 'from350',
): number {
  requireZeroOrMore('totalGpm', totalGpm, 'gpm');
  return APPLIANCE_RULES[rule].lossPsi(appliance, totalGpm);
}
