import { describe, expect, it } from 'vitest';
import { formatSeconds, lastResult, measure, seededRandom, summarize } from './measure.ts';

describe('summarize', () => {
  it('agrees with a worked example of the mean, median and standard deviation', () => {
    // The data and its population deviation of 2 are the example of "Standard deviation",
    // Wikipedia; with n − 1 = 7 below the line the deviation is √(32/7).
    const { min, median, mean, sd } = summarize([2, 4, 4, 4, 5, 5, 7, 9]);
    expect([min, median, mean]).toEqual([2, 4.5, 5]);
    expect(sd).toBeCloseTo(Math.sqrt(32 / 7), 12);
  });

  it('takes the middle one of an odd count, whatever their order', () => {
    expect(summarize([3, 1, 2]).median).toBe(2);
    expect(summarize([7])).toEqual({ min: 7, median: 7, mean: 7, sd: 0 });
  });

  it('refuses nothing at all', () => {
    expect(() => summarize([])).toThrow('at least one');
  });
});

describe('measure', () => {
  it('does the work at least as often as it says, and keeps what it made', () => {
    let done = 0;
    const { runs, min, median } = measure('count', () => ++done, { warmUpS: 0, timedS: 0 });
    expect(done).toBeGreaterThanOrEqual(runs);
    expect(runs).toBeGreaterThanOrEqual(5);
    expect(lastResult()).toBe(done);
    expect(min).toBeLessThanOrEqual(median);
  });
});

describe('seededRandom', () => {
  it('gives the same numbers for the same seed and others for another', () => {
    const draw = (seed: number) => Array.from({ length: 20 }, seededRandom(seed));
    expect(draw(1)).toEqual(draw(1));
    expect(draw(1)).not.toEqual(draw(2));
  });

  it('spreads evenly from 0 to 1', () => {
    const random = seededRandom(7);
    const counts = new Array<number>(10).fill(0);
    for (let i = 0; i < 10_000; i += 1) {
      const bin = Math.floor(random() * 10);
      counts[bin] = (counts[bin] ?? Number.NaN) + 1;
    }
    // Chi-squared with 9 degrees of freedom passes 27.88 once in 1,000 fair draws (standard tables).
    const chiSquared = counts.reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
    expect(chiSquared).toBeLessThan(27.88);
  });
});

describe('formatSeconds', () => {
  it.each([
    [2, '2.00 s'],
    [0.0123, '12.3 ms'],
    [4.5e-6, '4.50 µs'],
    [7.89e-8, '78.9 ns'],
  ])('%s s is written %s', (seconds, words) => {
    expect(formatSeconds(seconds)).toBe(words);
  });
});
