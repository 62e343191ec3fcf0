/** Elements with a straight resistance in series: flow from pressure, without steps or corners that are too sharp. */
import { LEAST_SLOPE, MAIN_EXPONENT } from './constants.ts';
import { A, B, type Core } from './core.ts';
import { bandSlope, roughFlowGpm } from './drop.ts';

const POWER = MAIN_EXPONENT - 1;

/**
 * Flow [gpm] through an element with a straight resistance in series, from the pressure across it.
 * @param r row in the numbers' table @param band its automatic nozzle, or -1
 */
export function flowThrough(
  core: Core,
  r: number,
  band: number,
  excessPsi: number,
  resistance: number,
): number {
  const psi = excessPsi < 0 ? -excessPsi : excessPsi;
  const a = core.reals[r + A]!;
  const b = core.reals[r + B]!;
  const slope = LEAST_SLOPE + resistance;
  let q: number;
  if (band < 0) {
    q = flowLosing(a, b, slope, psi);
  } else {
    const rated = core.ratedPsi[band]!;
    const least = core.leastGpm[band]!;
    const greatest = core.greatestGpm[band]!;
    const across = psi - rated;
    if (across <= losing(a, b, slope, least)) {
      q = flowLosing(a + rated / (least * least), b, slope, psi);
    } else if (across <= losing(a, b, slope, greatest)) {
      q = flowLosing(a, b, slope, across);
    } else {
      q = flowLosing(a + rated / (greatest * greatest), b, slope, psi);
    }
  }
  return excessPsi < 0 ? -q : q;
}

function losing(a: number, b: number, slope: number, flow: number): number {
  return (a * flow + b * flow ** POWER + slope) * flow;
}

/** Flow ≥ 0 that loses `psi` ≥ 0 through a·Q² + b·Q^(1/0.54) + slope·Q. */
function flowLosing(a: number, b: number, slope: number, psi: number): number {
  let q = root(a, slope, psi);
  if (b === 0) return q;
  // The loss bends upward, so that Newton from above comes down on the answer without passing it.
  q = Math.min(q, roughFlowGpm(0, b, psi));
  for (let turn = 0; turn < 30; turn++) {
    const t = b * q ** POWER;
    const next = q - ((a * q + t + slope) * q - psi) / (2 * a * q + MAIN_EXPONENT * t + slope);
    if (!(next > 0) || Math.abs(next - q) <= 1e-13 * q) break;
    q = next;
  }
  return q;
}

/** Slope of an element's loss [psi/gpm] at a flow. */
export function slopeAt(core: Core, r: number, band: number, flowGpm: number): number {
  const size = flowGpm < 0 ? -flowGpm : flowGpm;
  const b = core.reals[r + B]!;
  let slope = LEAST_SLOPE + 2 * core.reals[r + A]! * size;
  if (b !== 0) slope += MAIN_EXPONENT * b * size ** POWER;
  if (band >= 0) {
    const rated = core.ratedPsi[band]!;
    slope += bandSlope(rated, core.leastGpm[band]!, core.greatestGpm[band]!, flowGpm);
  }
  return slope;
}

/** Positive root of a·Q² + slope·Q = psi, in the form that keeps its digits as a vanishes. */
function root(a: number, slope: number, psi: number): number {
  return (2 * psi) / (slope + Math.sqrt(slope * slope + 4 * a * psi));
}
