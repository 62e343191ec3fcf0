/** Random numbers that are the same for a seed on every run and machine: the 32-bit "mulberry32" generator (public domain). */
export interface RandomSource {
  /** From `low` up to `high`. */
  between(low: number, high: number): number;
  /** From `low` up to `high`, each power of ten as likely as another. */
  scaled(low: number, high: number): number;
  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number;
  chance(share: number): boolean;
  pick<T>(values: readonly T[]): T;
}

export function randomSource(seed: number): RandomSource {
  let state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    between: (low, high) => low + (high - low) * next(),
    scaled: (low, high) => low * (high / low) ** next(),
    whole: (low, high) => low + Math.floor((high - low + 1) * next()),
    chance: (share) => next() < share,
    pick: (values) => values[Math.floor(values.length * next())]!,
  };
}
