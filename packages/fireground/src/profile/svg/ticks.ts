/** A step of 1, 2 or 5 times a power of ten, so that about `count` of them make up `range`. */
export function roundStep(range: number, count: number): number {
  const rough = range / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const digit = rough / power;
  if (digit <= 1) return power;
  if (digit <= 2) return 2 * power;
  return digit <= 5 ? 5 * power : 10 * power;
}

/**
 * Round places on an axis from at most `low` to at least `high`, in a unit that is `unit` inside
 * ones big. Places come back in inside units.
 */
export function axisTicks(low: number, high: number, unit: number, count: number): number[] {
  const step = roundStep((high - low) / unit, count);
  const first = Math.floor(low / unit / step + 1e-9);
  const last = Math.ceil(high / unit / step - 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step * unit);
}
