import { BAND_SLOPE, LINEAR_BELOW_GPM, MAIN_EXPONENT } from './constants.ts';

const BELOW = LINEAR_BELOW_GPM;
const POWER = MAIN_EXPONENT - 1;
const BELOW_POWER = BELOW ** POWER;

/**
 * Pressure lost [psi] by a flow [gpm] through `a·Q² + b·Q^(1/0.54)`, odd in the flow,
 * linear under a tenth of a gpm.
 */
export function passiveDropPsi(a: number, b: number, flowGpm: number): number {
  const size = Math.abs(flowGpm);
  let factor = 0;
  if (a !== 0) factor = a * Math.max(size, BELOW);
  if (b !== 0) factor += b * (size > BELOW ? size ** POWER : BELOW_POWER);
  return factor * flowGpm;
}

/** The same without the straight part: the law itself. */
export function lossPsi(a: number, b: number, flowGpm: number): number {
  const size = Math.abs(flowGpm);
  return (a * size + (b === 0 ? 0 : b * size ** POWER)) * flowGpm;
}

/** Flow [gpm] that loses `dropPsi` ≥ 0 through `a·Q² + b·Q^(1/0.54)`; a start for Newton, not an answer, where both act. */
export function roughFlowGpm(a: number, b: number, dropPsi: number): number {
  if (dropPsi <= 0) return 0;
  const byA = a > 0 ? Math.sqrt(dropPsi / a) : Number.POSITIVE_INFINITY;
  const byB = b > 0 ? (dropPsi / b) ** (1 / MAIN_EXPONENT) : Number.POSITIVE_INFINITY;
  return Math.min(byA, byB, 1e5);
}

/** Pressure at an automatic nozzle [psi] against flow [gpm]: rated inside its band, a fixed opening at either end. */
export function bandDropPsi(
  ratedPsi: number,
  leastGpm: number,
  greatestGpm: number,
  flowGpm: number,
): number {
  if (flowGpm <= leastGpm) {
    const part = flowGpm / leastGpm;
    const below = LINEAR_BELOW_GPM / leastGpm;
    return ratedPsi * part * Math.max(part, below);
  }
  if (flowGpm <= greatestGpm) return ratedPsi + BAND_SLOPE * (flowGpm - leastGpm);
  const part = flowGpm / greatestGpm;
  return ratedPsi * part * part + BAND_SLOPE * (greatestGpm - leastGpm);
}

/** Slope of `bandDropPsi` [psi/gpm]. */
export function bandSlope(
  ratedPsi: number,
  leastGpm: number,
  greatestGpm: number,
  flowGpm: number,
): number {
  if (flowGpm <= leastGpm) {
    const size = flowGpm > LINEAR_BELOW_GPM ? 2 * flowGpm : LINEAR_BELOW_GPM;
    return (ratedPsi * size) / (leastGpm * leastGpm);
  }
  if (flowGpm <= greatestGpm) return BAND_SLOPE;
  return (2 * ratedPsi * flowGpm) / (greatestGpm * greatestGpm);
}
