/** Where a falling function of one variable crosses zero. */

export interface Bracket {
  low: number;
  high: number;
  lowValue: number;
  highValue: number;
}

/**
 * Root of a function that falls from `lowValue` ≥ 0 to `highValue` < 0, by false position that never
 * keeps one end for ever (Illinois), halving where that stalls.
 * @param within stop when the bracket is this narrow
 * @param near stop where the value is above 0 by no more than this
 * @returns the largest argument found with a value of 0 or more
 */
export function fallingRoot(
  value: (x: number) => number,
  bracket: Bracket,
  within: number,
  near = 0,
): number {
  let { low, high, lowValue, highValue } = bracket;
  let held = 0;
  let weightLow = lowValue;
  let weightHigh = highValue;
  for (let step = 0; step < 200 && high - low > within; step++) {
    let x = low + ((high - low) * weightLow) / (weightLow - weightHigh);
    const inset = Math.min(within / 3, (high - low) / 4);
    if (!(x > low + inset)) x = low + inset;
    if (!(x < high - inset)) x = high - inset;
    if (step % 8 === 7) x = (low + high) / 2;
    const y = value(x);
    if (y >= 0) {
      if (y <= near) return x;
      low = x;
      lowValue = y;
      weightLow = y;
      if (held === 1) weightHigh /= 2;
      else weightHigh = highValue;
      held = 1;
    } else {
      high = x;
      highValue = y;
      weightHigh = y;
      if (held === -1) weightLow /= 2;
      else weightLow = lowValue;
      held = -1;
    }
  }
  return low;
}

export interface Near {
  guess: number;
  /** How far from the guess to look first. */
  reach: number;
  least: number;
  most: number;
}

/**
 * Where a falling function crosses zero, looked for around a guess.
 * @param within stop when the bracket is this narrow
 * @param isRoot a value that is near enough to zero to stop at
 * @returns the largest argument found with a value of 0 or more; an end of the range where it does not cross
 */
export function fallingRootNear(
  value: (x: number) => number,
  { guess, reach, least, most }: Near,
  within: number,
  isRoot: (y: number) => boolean = () => false,
): number {
  const start = Math.min(most, Math.max(least, guess));
  const startValue = value(start);
  if (isRoot(startValue)) return start;
  const up = startValue >= 0;
  let [near, nearValue] = [start, startValue];
  for (let step = reach; ; step *= 4) {
    const end = up ? most : least;
    if (near === end) return end;
    const far = up ? Math.min(most, near + step) : Math.max(least, near - step);
    const farValue = value(far);
    if (isRoot(farValue)) return far;
    if (farValue >= 0 !== up) {
      const bracket = up
        ? { low: near, lowValue: nearValue, high: far, highValue: farValue }
        : { low: far, lowValue: farValue, high: near, highValue: nearValue };
      return fallingRoot(value, bracket, within);
    }
    [near, nearValue] = [far, farValue];
  }
}
