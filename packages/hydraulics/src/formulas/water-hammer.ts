import { requirePositive, requireZeroOrMore } from '../quantity-check.ts';

/** Pressure for each (ft/s)² of wave speed times velocity [psi·s²/ft²]: 1.94 slug/ft³ ÷ 144 in²/ft². */
export const JOUKOWSKY_CONSTANT = 0.01347;

/** Slow-closure constant [psi·s²/ft²]. Source: Water-hammer equations. About 5 times the rigid column's, which allows for a valve that does most of its work at the end. */
export const SLOW_CLOSURE_CONSTANT = 0.07;

/**
 * Pressure rise of water stopped at once.
 *   ΔP = 0.01347·a·Δv
 * @param deltaVFtS change in velocity [ft/s]
 * @param waveFtS wave speed in this hose or pipe [ft/s]
 * @returns rise above the pressure before [psi]
 * Valid: closure faster than 2L/a. No wave speed for fire hose was found in print: soft hose slows
 * the wave, so pipe values give an upper bound only.
 * Outside: throws QuantityError.
 * @example joukowskyRisePsi(10, 1000) // 134.7
 * Source: Joukowsky (1898), ΔP = ρ·a·Δv, in any text (from memory), units folded.
 */
export function joukowskyRisePsi(deltaVFtS: number, waveFtS: number): number {
  requireZeroOrMore('deltaVFtS', deltaVFtS, 'ft/s');
  requirePositive('waveFtS', waveFtS, 'ft/s');
  return JOUKOWSKY_CONSTANT * waveFtS * deltaVFtS;
}

/**
 * Pressure rise of a slow closure.
 *   ΔP = 0.070·Δv·L/t
 * @param deltaVFtS change in velocity [ft/s]
 * @param lengthFt length of hose or pipe upstream of the valve [ft]
 * @param closeS time to close [s]
 * @returns rise above the pressure before [psi]
 * Valid: closure slower than 2L/a.
 * Outside: throws QuantityError for no time: use joukowskyRisePsi.
 * @example slowClosureRisePsi(16.34, 500, 5) // 114.4
 * Source: Water-hammer equations.
 */
export function slowClosureRisePsi(deltaVFtS: number, lengthFt: number, closeS: number): number {
  requireZeroOrMore('deltaVFtS', deltaVFtS, 'ft/s');
  requireZeroOrMore('lengthFt', lengthFt, 'ft');
  requirePositive('closeS', closeS, 's', 'For a valve slammed shut use joukowskyRisePsi.');
  return (SLOW_CLOSURE_CONSTANT * deltaVFtS * lengthFt) / closeS;
}

/**
 * Pressure rise of a column slowed evenly: the least that a slow closure can do.
 *   ΔP = 0.01347·L·Δv/t
 * @param deltaVFtS change in velocity [ft/s]
 * @param lengthFt length of hose or pipe upstream of the valve [ft]
 * @param closeS time to close [s]
 * @returns rise above the pressure before [psi]
 * Valid: velocity falling evenly, which no valve does.
 * Outside: throws QuantityError for no time.
 * @example rigidColumnRisePsi(10, 100, 1) // 13.47
 * Source: Newton's second law on the column, units folded.
 */
export function rigidColumnRisePsi(deltaVFtS: number, lengthFt: number, closeS: number): number {
  requireZeroOrMore('deltaVFtS', deltaVFtS, 'ft/s');
  requireZeroOrMore('lengthFt', lengthFt, 'ft');
  requirePositive('closeS', closeS, 's', 'For a valve slammed shut use joukowskyRisePsi.');
  return (JOUKOWSKY_CONSTANT * lengthFt * deltaVFtS) / closeS;
}

/** A closing valve's effect. */
export interface HammerRise {
  /** Rise above the pressure before [psi]. */
  risePsi: number;
  /** Fast: the wave comes back to a valve already shut. */
  closure: 'fast' | 'slow';
  /** Time that divides the two: 2L/a [s]. */
  waveReturnS: number;
}

/**
 * Pressure rise of a closing valve, fast or slow as the wave decides; never above the sudden one.
 *   fast: t ≤ 2L/a
 * @param deltaVFtS change in velocity [ft/s]
 * @param lengthFt length of hose or pipe upstream of the valve [ft]
 * @param closeS time to close; 0 for at once [s]
 * @param waveFtS wave speed in this hose or pipe [ft/s]
 * @returns rise and kind of closure [HammerRise]
 * Valid: one line from a place of steady pressure.
 * Outside: throws QuantityError.
 * @example hammerRise(10, 500, 0, 1000).risePsi // 134.7
 * Source: the 2L/a test is from memory of any text.
 */
export function hammerRise(
  deltaVFtS: number,
  lengthFt: number,
  closeS: number,
  waveFtS: number,
): HammerRise {
  requireZeroOrMore('closeS', closeS, 's');
  requirePositive('lengthFt', lengthFt, 'ft');
  const suddenPsi = joukowskyRisePsi(deltaVFtS, waveFtS);
  const waveReturnS = (2 * lengthFt) / waveFtS;
  if (closeS <= waveReturnS) return { risePsi: suddenPsi, closure: 'fast', waveReturnS };
  const slowPsi = slowClosureRisePsi(deltaVFtS, lengthFt, closeS);
  return { risePsi: Math.min(slowPsi, suddenPsi), closure: 'slow', waveReturnS };
}
