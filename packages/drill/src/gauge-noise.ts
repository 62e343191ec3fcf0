/** A needle moves so often in a second: its noise stands for as many ticks [ticks]. */
const STANDS_TICKS = 5;

/**
 * Noise of a gauge from −1 to 1: a hash of seed, moment and gauge, in whole numbers alone, so that it is
 * the same on every machine and for everyone who looks (the finishing steps of the 32-bit "mulberry32"
 * generator, public domain).
 */
export function gaugeNoise(seed: number, tick: number, gauge: string): number {
  let state = (seed ^ Math.imul(Math.floor(tick / STANDS_TICKS) + 1, 0x9e3779b1)) >>> 0;
  for (let at = 0; at < gauge.length; at++)
    state = Math.imul(state ^ gauge.charCodeAt(at), 0x01000193) >>> 0;
  state = (state + 0x6d2b79f5) >>> 0;
  let t = state;
  t = Math.imul(t ^ (t >>> 15), t | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return (((t ^ (t >>> 14)) >>> 0) / 2 ** 32) * 2 - 1;
}
