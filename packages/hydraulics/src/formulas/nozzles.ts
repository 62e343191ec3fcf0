import { requirePositive, requireZeroOrMore } from '../quantity-check.ts';
import { QuantityError } from '../quantity-error.ts';

/**
 * Smooth-bore constants in use [gpm per in²·√psi]: one for each source that prints one.
 * `trade` is what Plugside uses for nozzles, `theory` what NFPA 291 uses with a coefficient.
 */
export const SMOOTH_BORE_CONSTANTS = {
  /** Ch 6 Hose, Nozzles and Flow Rates study cards; Formulas study cards. */
  trade: 29.7,
  /** A nozzle maker's master-stream manual; coefficient of about 0.996 of the theory. */
  maker: 29.71,
  /** Water-supply analysis, slide 1. */
  analysis: 29.83,
  /** NFPA 291, with an outlet coefficient of 1. */
  theory: 29.84,
  /** Formulas study cards: the field's round value. */
  field: 30,
} as const;

/** Metric smooth-bore constant [L/min per mm²·√bar]. Source: a nozzle maker's master-stream manual. */
export const METRIC_SMOOTH_BORE_CONSTANT = 0.667;

/**
 * Nozzle factor of a smooth-bore tip.
 *   K = 29.7·d²
 * @param tipIn tip diameter [in]
 * @param constant smooth-bore constant; 29.7 where left out [gpm per in²·√psi]
 * @returns nozzle factor K [gpm/√psi]
 * Valid: tips in good order, whose own coefficient of about 0.995 is inside the constant.
 * Outside: throws QuantityError.
 * @example smoothBoreK(1) // 29.7
 * Source: Ch 6 Hose, Nozzles and Flow Rates study cards; Formulas study cards.
 */
export function smoothBoreK(tipIn: number, constant: number = SMOOTH_BORE_CONSTANTS.trade): number {
  requirePositive('tipIn', tipIn, 'in');
  requirePositive('constant', constant, 'gpm per in²·√psi');
  return constant * tipIn ** 2;
}

/**
 * Nozzle factor of a fixed fog nozzle, or of one setting of a selectable one, from its rating.
 *   K = Q/√P
 * @param ratedGpm rated flow [gpm]
 * @param ratedPsi nozzle pressure that gives it [psi]
 * @returns nozzle factor K [gpm/√psi]
 * Valid: nozzles with a fixed opening; not automatic ones.
 * Outside: throws QuantityError.
 * @example fogK(150, 100) // 15
 * Source: the orifice law; fog nozzles are rated at 100, 75 or 50 psi (Pump Ops ch 7 study cards).
 */
export function fogK(ratedGpm: number, ratedPsi: number): number {
  requirePositive('ratedGpm', ratedGpm, 'gpm');
  requirePositive('ratedPsi', ratedPsi, 'psi');
  return ratedGpm / Math.sqrt(ratedPsi);
}

/**
 * Flow of a fixed opening.
 *   Q = K·√NP
 * @param k nozzle factor [gpm/√psi]
 * @param nozzlePsi nozzle pressure [psi]
 * @returns flow [gpm]
 * Valid: fixed openings.
 * Outside: throws QuantityError.
 * @example nozzleFlowGpm(15, 100) // 150
 * Source: the orifice law.
 */
export function nozzleFlowGpm(k: number, nozzlePsi: number): number {
  requirePositive('k', k, 'gpm/√psi');
  requireZeroOrMore('nozzlePsi', nozzlePsi, 'psi');
  return k * Math.sqrt(nozzlePsi);
}

/**
 * Nozzle pressure at which a fixed opening passes a flow.
 *   NP = (Q/K)²
 * @param k nozzle factor [gpm/√psi]
 * @param flowGpm flow [gpm]
 * @returns nozzle pressure [psi]
 * Valid: fixed openings.
 * Outside: throws QuantityError.
 * @example nozzlePressurePsi(15, 150) // 100
 * Source: the orifice law.
 */
export function nozzlePressurePsi(k: number, flowGpm: number): number {
  requirePositive('k', k, 'gpm/√psi');
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  return (flowGpm / k) ** 2;
}

/**
 * Flow of a smooth-bore tip.
 *   Q = 29.7·d²·√NP
 * @param tipIn tip diameter [in]
 * @param nozzlePsi nozzle pressure [psi]
 * @param constant smooth-bore constant; 29.7 where left out [gpm per in²·√psi]
 * @returns flow [gpm]
 * Valid: tips in good order at nozzle pressures; 50 psi on a hand line and 80 psi on a master
 * stream are usual.
 * Accuracy: agrees with a maker's tip flow table within 1.5 gpm.
 * Outside: throws QuantityError.
 * @example smoothBoreFlowGpm(1, 50) // 210.01
 * Source: Ch 6 Hose, Nozzles and Flow Rates study cards.
 */
export function smoothBoreFlowGpm(
  tipIn: number,
  nozzlePsi: number,
  constant: number = SMOOTH_BORE_CONSTANTS.trade,
): number {
  return nozzleFlowGpm(smoothBoreK(tipIn, constant), nozzlePsi);
}

/**
 * Tip that passes a flow at a nozzle pressure.
 *   d = √(Q/(29.7·√NP))
 * @param flowGpm flow [gpm]
 * @param nozzlePsi nozzle pressure [psi]
 * @param constant smooth-bore constant; 29.7 where left out [gpm per in²·√psi]
 * @returns tip diameter, not rounded to a made size [in]
 * Valid: as smoothBoreFlowGpm.
 * Outside: throws QuantityError.
 * @example smoothBoreTipIn(210.01, 50) // 1.000
 * Source: the smooth-bore formula turned round.
 */
export function smoothBoreTipIn(
  flowGpm: number,
  nozzlePsi: number,
  constant: number = SMOOTH_BORE_CONSTANTS.trade,
): number {
  requirePositive('flowGpm', flowGpm, 'gpm');
  requirePositive('nozzlePsi', nozzlePsi, 'psi');
  requirePositive('constant', constant, 'gpm per in²·√psi');
  return Math.sqrt(flowGpm / (constant * Math.sqrt(nozzlePsi)));
}

/**
 * Flow of a smooth-bore tip in metric terms.
 *   Q = 0.667·d²·√p
 * @param tipMm tip diameter [mm]
 * @param nozzleBar nozzle pressure [bar]
 * @param constant metric constant; 0.667 where left out [L/min per mm²·√bar]
 * @returns flow [L/min]
 * Valid: as smoothBoreFlowGpm. 29.7 converts to 0.6635: the metric constant reads 0.5 % higher.
 * Outside: throws QuantityError.
 * @example smoothBoreFlowLpm(25.4, 3.44738) // 799.0
 * Source: a nozzle maker's master-stream manual, smooth-bore constants.
 */
export function smoothBoreFlowLpm(
  tipMm: number,
  nozzleBar: number,
  constant: number = METRIC_SMOOTH_BORE_CONSTANT,
): number {
  requirePositive('tipMm', tipMm, 'mm');
  requireZeroOrMore('nozzleBar', nozzleBar, 'bar');
  requirePositive('constant', constant, 'L/min per mm²·√bar');
  return constant * tipMm ** 2 * Math.sqrt(nozzleBar);
}

/** An automatic nozzle: a spring opens it so that it holds its rated pressure within a band of flow. */
export interface AutomaticNozzleRating {
  /** Pressure it holds [psi]. */
  ratedPsi: number;
  /** Least flow at which it holds it [gpm]. */
  leastGpm: number;
  /** Greatest flow at which it holds it [gpm]. */
  greatestGpm: number;
}

function requireAutomatic({ ratedPsi, leastGpm, greatestGpm }: AutomaticNozzleRating) {
  requirePositive('ratedPsi', ratedPsi, 'psi');
  requirePositive('leastGpm', leastGpm, 'gpm');
  if (!(Number.isFinite(greatestGpm) && greatestGpm > leastGpm)) {
    throw new QuantityError({
      field: 'greatestGpm',
      value: greatestGpm,
      allowed: `more than leastGpm (${leastGpm} gpm)`,
      remedy:
        'Give the band from the nozzle’s plate; a nozzle with one flow is a fixed fog nozzle.',
    });
  }
}

/**
 * Nozzle pressure of an automatic nozzle that is given a flow.
 *   NP = rated within the band; rated·(Q/Qend)² past either end
 * @param rating what the nozzle holds [AutomaticNozzleRating]
 * @param flowGpm flow [gpm]
 * @returns nozzle pressure [psi]
 * Valid: ideal spring; a real one lets the pressure wander some psi within the band.
 * Outside: throws QuantityError.
 * @example automaticNozzlePressurePsi({ ratedPsi: 100, leastGpm: 70, greatestGpm: 200 }, 150) // 100
 * Source: common practice; no formula found in print.
 */
export function automaticNozzlePressurePsi(rating: AutomaticNozzleRating, flowGpm: number): number {
  requireAutomatic(rating);
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  const held = Math.min(Math.max(flowGpm, rating.leastGpm), rating.greatestGpm);
  return rating.ratedPsi * (flowGpm / held) ** 2;
}

/**
 * Flows that an automatic nozzle can pass at a nozzle pressure: one flow, or the whole band at
 * exactly its rated pressure.
 *   Q = Qend·√(NP/rated)
 * @param rating what the nozzle holds [AutomaticNozzleRating]
 * @param nozzlePsi nozzle pressure [psi]
 * @returns least and greatest flow at that pressure [gpm]
 * Valid: as automaticNozzlePressurePsi.
 * Outside: throws QuantityError.
 * @example automaticNozzleFlowGpm({ ratedPsi: 100, leastGpm: 70, greatestGpm: 200 }, 25) // [35, 35]
 * Source: common practice; no formula found in print.
 */
export function automaticNozzleFlowGpm(
  rating: AutomaticNozzleRating,
  nozzlePsi: number,
): [leastGpm: number, greatestGpm: number] {
  requireAutomatic(rating);
  requireZeroOrMore('nozzlePsi', nozzlePsi, 'psi');
  const root = Math.sqrt(nozzlePsi / rating.ratedPsi);
  return [
    (nozzlePsi <= rating.ratedPsi ? rating.leastGpm : rating.greatestGpm) * root,
    (nozzlePsi < rating.ratedPsi ? rating.leastGpm : rating.greatestGpm) * root,
  ];
}
