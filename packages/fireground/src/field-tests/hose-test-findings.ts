import { finding, psi, type TestFinding } from './finding.ts';

interface Reading {
  flowGpm: number;
  lossPsi: number;
  lengthFt: number;
}

/** A loss under this is hard to read off two gauges. Ours, no source. */
const LEAST_LOSS_PSI = 5;
/** Power of flow that a hose's loss follows: 2 by the law. Outside, something else is in the readings. Ours. */
const POWER = { least: 1.6, greatest: 2.4 } as const;
/** Deleted residual, in its own standard deviations, from which a reading stands apart. Ours. */
const APART_FROM = 4;

/** What is wrong with the readings themselves; an `error` refuses the fit. */
export function readingFindings(points: readonly Reading[]): TestFinding[] {
  const refuse = (text: string) => finding('error', 'reading')`${text}`;
  if (points.length === 0) {
    return [refuse('No readings. Enter flow, loss and length of one reading or more.')];
  }
  for (const [index, { flowGpm, lossPsi, lengthFt }] of points.entries()) {
    const at = `Reading ${index + 1}`;
    if (!(Number.isFinite(flowGpm) && flowGpm > 0)) {
      return [refuse(`${at}: the flow must be above 0.`)];
    }
    if (!(Number.isFinite(lengthFt) && lengthFt > 0)) {
      return [refuse(`${at}: the length must be above 0.`)];
    }
    if (!(Number.isFinite(lossPsi) && lossPsi >= 0)) {
      return [
        refuse(
          `${at}: the loss cannot be below 0. Upstream less downstream pressure, height taken off.`,
        ),
      ];
    }
  }
  if (points.every(({ lossPsi }) => lossPsi === 0)) {
    return [refuse('No reading shows a loss. Flow more water, or measure over more hose.')];
  }
  return [];
}

/** What a fit leaves to doubt. */
export function fitFindings<R extends Reading & { residualPsi: number }>(
  residuals: readonly R[],
  turn: (reading: R) => number,
  coefficient: number,
  plusMinus: number | null,
): TestFinding[] {
  const found: TestFinding[] = [];
  const flows = residuals.map(({ flowGpm }) => flowGpm);
  const widest = Math.max(...flows) / Math.min(...flows);
  if (residuals.length < 3) {
    found.push(
      finding(
        'caution',
        'few-readings',
      )`${residuals.length === 1 ? 'One reading tells no range' : 'Two readings tell little of the range'}. Take three or more, at different flows.`,
    );
  } else if (widest < 1.25) {
    found.push(
      finding(
        'caution',
        'one-flow',
      )`All readings are at about one flow: a gauge that is off stays hidden. Take some at half of it.`,
    );
  }
  if (Math.max(...residuals.map(({ lossPsi }) => lossPsi)) < LEAST_LOSS_PSI) {
    found.push(
      finding(
        'caution',
        'small-loss',
      )`No loss reaches ${psi(LEAST_LOSS_PSI)}: the gauges' own error is as large. Measure over more hose or at more flow.`,
    );
  }
  if (plusMinus !== null && residuals.length >= 3 && plusMinus > coefficient * 0.25) {
    found.push(
      finding(
        'caution',
        'wide-range',
      )`The readings scatter by ${String(Math.round((100 * plusMinus) / coefficient))} % of C. Measure again before it is used.`,
    );
  }
  const power = widest >= 1.4 && residuals.length >= 3 ? powerOfFlow(residuals) : null;
  if (power !== null && (power < POWER.least || power > POWER.greatest)) {
    found.push(
      finding(
        'caution',
        'not-square',
      )`The loss grows with the ${power.toFixed(1)} power of flow, not the square: look for a height that was not taken off, a gauge that is off, or an appliance between the gauges.`,
    );
  }
  const apart = standsApart(residuals, turn);
  if (apart !== null) {
    found.push(
      finding(
        'caution',
        'stands-apart',
      )`Reading ${String(apart + 1)} stands apart from the others. Repeat it.`,
    );
  }
  return found;
}

/** Slope of log loss per 100 ft on log flow, least squares; null with a loss of 0. */
function powerOfFlow(readings: readonly Reading[]): number | null {
  if (readings.some(({ lossPsi }) => lossPsi === 0)) return null;
  const xs = readings.map(({ flowGpm }) => Math.log(flowGpm));
  const ys = readings.map(({ lossPsi, lengthFt }) => Math.log(lossPsi / lengthFt));
  const meanX = xs.reduce((a, b) => a + b, 0) / xs.length;
  const meanY = ys.reduce((a, b) => a + b, 0) / ys.length;
  const across = xs.reduce((sum, x, at) => sum + (x - meanX) * (ys[at]! - meanY), 0);
  return across / xs.reduce((sum, x) => sum + (x - meanX) ** 2, 0);
}

/** The reading furthest from a fit of the others, in its standard deviations, if far; its index. */
function standsApart<R extends Reading & { residualPsi: number }>(
  readings: readonly R[],
  turn: (reading: R) => number,
): number | null {
  const count = readings.length;
  if (count < 5) return null;
  const sumSquares = readings.reduce((sum, one) => sum + turn(one) ** 2, 0);
  const scatter = readings.reduce((sum, one) => sum + one.residualPsi ** 2, 0);
  let worst: number | null = null;
  let furthest = APART_FROM;
  for (const [index, one] of readings.entries()) {
    const room = 1 - turn(one) ** 2 / sumSquares;
    const without = (scatter - one.residualPsi ** 2 / room) / (count - 2);
    if (room <= 0 || without <= 0) continue;
    const deleted = Math.abs(one.residualPsi) / Math.sqrt(without * room);
    if (deleted > furthest && Math.abs(one.residualPsi) > 1) [worst, furthest] = [index, deleted];
  }
  return worst;
}
