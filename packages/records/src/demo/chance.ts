/** Chance that is the same on every run and machine. */
export interface Chance {
  /** From 0 up to 1. */
  next(): number;
  between(least: number, greatest: number): number;
  /** Whole number, both ends included. */
  whole(least: number, greatest: number): number;
  pick<T>(from: readonly T[]): T;
  /** True in this share of the draws. */
  happens(share: number): boolean;
  /** Normal with mean 0. */
  error(deviation: number): number;
  shuffled<T>(list: readonly T[]): T[];
}

/** The 32-bit "mulberry32" generator (public domain). */
export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (least: number, greatest: number) =>
    least + Math.floor(next() * (greatest - least + 1));
  return {
    next,
    between: (least, greatest) => least + next() * (greatest - least),
    whole,
    pick: (from) => from[Math.floor(next() * from.length)]!,
    happens: (share) => next() < share,
    // Twelve draws of variance 1/12 each.
    error: (deviation) => {
      let sum = -6;
      for (let i = 0; i < 12; i += 1) sum += next();
      return sum * deviation;
    },
    shuffled: (list) => {
      const mixed = [...list];
      for (let i = mixed.length - 1; i > 0; i -= 1) {
        const j = whole(0, i);
        [mixed[i], mixed[j]] = [mixed[j]!, mixed[i]!];
      }
      return mixed;
    },
  };
}
