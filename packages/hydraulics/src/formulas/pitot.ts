import { requirePositive, requireWithin, requireZeroOrMore } from '../quantity-check.ts';
import { QuantityError } from '../quantity-error.ts';
import { SMOOTH_BORE_CONSTANTS } from './nozzles.ts';

/** Discharge coefficients of a hydrant outlet by its inside edge [-], from NFPA 291; the last two are from memory. */
export const OUTLET_COEFFICIENTS = {
  /** Smooth and rounded. Fire hydrant flow test and modifiers, engineers' forum quoting NFPA 291. */
  rounded: 0.9,
  /** Square and sharp. Used in Water-supply analysis, slide 15. */
  square: 0.8,
  /** Square and projecting into the barrel. From memory of NFPA 291. */
  projecting: 0.7,
  /** With a flow tube attached. From memory of NFPA 291. */
  flowTube: 0.95,
} as const;

/**
 * Multiplier for a large pumper outlet, whose stream does not fill the opening: pitot pressure
 * [psi] and multiplier [-]. 7 psi from engineers' forum quoting NFPA 291; the rest from memory of it.
 */
export const PUMPER_OUTLET_MULTIPLIERS: readonly (readonly [pitotPsi: number, factor: number])[] = [
  [2, 0.97],
  [3, 0.92],
  [4, 0.89],
  [5, 0.86],
  [6, 0.84],
  [7, 0.83],
];

/**
 * Flow of an open outlet from a pitot reading.
 *   Q = 29.84·c·d²·√p
 * @param outletIn inside diameter of the outlet, measured [in]
 * @param coefficient discharge coefficient of the outlet, up to 1 [-]
 * @param pitotPsi velocity pressure in the middle of the stream [psi]
 * @param constant 29.84 where left out; 29.83 in some sources [gpm per in²·√psi]
 * @returns flow [gpm]
 * Valid: 2½ in outlets that flow full, best between 10 and 30 psi at the pitot.
 * Outside: throws QuantityError; a coefficient above 1 does not exist.
 * @example pitotFlowGpm(2.5, 0.9, 40, 29.83) // 1061
 * Source: NFPA 291 as quoted in Fire hydrant flow test and modifiers, engineers' forum.
 */
export function pitotFlowGpm(
  outletIn: number,
  coefficient: number,
  pitotPsi: number,
  constant: number = SMOOTH_BORE_CONSTANTS.theory,
): number {
  requirePositive('outletIn', outletIn, 'in');
  requirePositive('coefficient', coefficient, '');
  requireWithin(
    'coefficient',
    coefficient,
    [0, 1],
    '',
    'Use 0.9 for a rounded outlet, 0.8 for a square one, 0.7 for one projecting into the barrel.',
  );
  requireZeroOrMore('pitotPsi', pitotPsi, 'psi');
  requirePositive('constant', constant, 'gpm per in²·√psi');
  return constant * coefficient * outletIn ** 2 * Math.sqrt(pitotPsi);
}

/**
 * Pitot reading that a flow would give: what to look for when opening up to a flow.
 *   p = (Q/(29.84·c·d²))²
 * @param outletIn inside diameter of the outlet [in]
 * @param coefficient discharge coefficient of the outlet, up to 1 [-]
 * @param flowGpm flow [gpm]
 * @returns velocity pressure [psi]
 * Valid: as pitotFlowGpm. The same number is the pressure an outlet costs, `k·Q²`, when its
 * stream runs on into hose and none of the velocity is won back.
 * Outside: throws QuantityError.
 * @example pitotPressurePsi(2.5, 0.9, 1061) // 40.0
 * Source: the pitot formula turned round.
 */
export function pitotPressurePsi(outletIn: number, coefficient: number, flowGpm: number): number {
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  return (flowGpm / pitotFlowGpm(outletIn, coefficient, 1)) ** 2;
}

/**
 * Multiplier for an open pumper outlet, straight lines between the whole psi of the table.
 *   table of NFPA 291; 0.83 from 7 psi up
 * @param pitotPsi pitot reading [psi]
 * @returns factor on the ordinary pitot flow [-]
 * Valid: pumper outlets, 2 psi and more; 5 to 10 psi is best.
 * Outside: throws QuantityError below 2 psi, where the table ends.
 * @example pumperOutletMultiplier(10) // 0.83
 * Source: 0.83 from Fire hydrant flow test and modifiers, engineers' forum quoting NFPA 291; the
 * other rows from memory of NFPA 291.
 */
export function pumperOutletMultiplier(pitotPsi: number): number {
  if (!(Number.isFinite(pitotPsi) && pitotPsi >= 2)) {
    throw new QuantityError({
      field: 'pitotPsi',
      value: pitotPsi,
      allowed: '2 psi or more on a pumper outlet',
      remedy: 'Flow the 2½ in outlets instead, or open fewer outlets to raise the reading.',
    });
  }
  let [lowPsi, lowFactor] = PUMPER_OUTLET_MULTIPLIERS[0]!;
  for (const [psi, factor] of PUMPER_OUTLET_MULTIPLIERS) {
    if (pitotPsi <= psi) {
      const share = psi === lowPsi ? 0 : (pitotPsi - lowPsi) / (psi - lowPsi);
      return lowFactor + share * (factor - lowFactor);
    }
    [lowPsi, lowFactor] = [psi, factor];
  }
  return lowFactor;
}

/**
 * Flow of an open pumper outlet from a pitot reading.
 *   Q = 29.84·c·d²·√p·multiplier(p)
 * @param outletIn inside diameter of the outlet, measured [in]
 * @param coefficient discharge coefficient of the outlet, up to 1 [-]
 * @param pitotPsi velocity pressure in the middle of the stream [psi]
 * @returns flow [gpm]
 * Valid: as pumperOutletMultiplier; 2½ in outlets give the better test.
 * Outside: throws QuantityError.
 * @example pumperOutletFlowGpm(4, 1, 9) // 1189
 * Source: NFPA 291 as quoted in Fire hydrant flow test and modifiers, engineers' forum.
 */
export function pumperOutletFlowGpm(
  outletIn: number,
  coefficient: number,
  pitotPsi: number,
): number {
  return pitotFlowGpm(outletIn, coefficient, pitotPsi) * pumperOutletMultiplier(pitotPsi);
}
