import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DraftPlace, draftAt } from './draft-at.ts';

describe('at the conditions of the rating test', () => {
  // NFPA 1901, from memory: a single 6 in suction to 1,250 gpm and two from 1,500, at 10 ft of lift.
  test.each([
    [750, 1],
    [1000, 1],
    [1250, 1],
    [1500, 2],
  ])(
    '%i gpm with %i suctions: the pump stops it, not the vacuum (recalled: NFPA 1901)',
    (ratedGpm, count) => {
      const answer = draftAt({ ratedGpm, suction: { count } });
      expect(answer.binding.map(({ kind }) => kind)).toEqual(['pump capability']);
      // Rated at 150 psi net; here 150 at the discharge and the vacuum on top of it.
      expect(answer.mostGpm).toBeLessThan(ratedGpm);
      expect(answer.mostGpm).toBeGreaterThan(0.9 * ratedGpm);
    },
  );
});

describe('by hand', () => {
  test('a large pump on one suction is stopped by the vacuum', () => {
    const answer = draftAt({ ratedGpm: 2500, dischargePsi: 50 });
    expect(answer.binding.map(({ kind }) => kind)).toEqual(['draft vacuum']);
    // 22 inHg are 10.806 psi; 4.34 of them lift, the rest is (0.05·0.2 + 2/100)·(Q/100)²: 1,468 gpm.
    expect(answer.mostGpm).toBeCloseTo(100 * Math.sqrt((10.8056 - 4.34) / 0.03), 0);
    expect(answer.vacuumInHg).toBeCloseTo(22, 2);
    expect(answer.vacuumLimitInHg).toBeCloseTo(22, 9);
  });

  test('two suctions, each with its strainer, pass twice as much under the same vacuum', () => {
    const place = { ratedGpm: 5000, dischargePsi: 30 };
    const one = draftAt(place).mostGpm;
    expect(draftAt({ ...place, suction: { count: 2 } }).mostGpm).toBeCloseTo(2 * one, 0);
  });

  test('no table and no number past 20 ft; a word past what can be depended on', () => {
    const high = draftAt({ ratedGpm: 1500, liftFt: 22 });
    expect(high.ruleGpm).toBeNull();
    expect(high.notices[0]!.text).toMatch(/^The lift of 22 ft is more than the 15 ft/);
  });

  // NWCG glossary, suction lift: 70 % of rated at 15 ft.
  test('the published share stands beside the answer (published: NWCG glossary, suction lift)', () => {
    expect(draftAt({ ratedGpm: 1000, liftFt: 15 }).ruleGpm).toBeCloseTo(700, 9);
  });

  test('a lift that the vacuum cannot hold gives nothing, and says why', () => {
    const answer = draftAt({ ratedGpm: 1500, liftFt: 28 });
    expect(answer.mostGpm).toBe(0);
    expect(answer.noneReason).toMatch(/Vacuum at Source engine's intake/);
  });

  test('at 5,000 ft the air pushes with 12.23 psi, and the vacuum stops it sooner (published: Standard Atmospheric Data for Altitude and Temperature)', () => {
    const answer = draftAt({ ratedGpm: 2500, dischargePsi: 50, altitudeFt: 5000 });
    const limitInHg = (22 * (12.23 - 0.256)) / (14.696 - 0.256);
    expect(answer.binding.map(({ kind }) => kind)).toEqual(['draft vacuum']);
    expect(answer.vacuumLimitInHg).toBeCloseTo(limitInHg, 1);
    expect(answer.vacuumInHg).toBeCloseTo(limitInHg, 1);
  });

  test('warm water boils sooner: at 140 °F its 2.89 psi come off what the air pushes (published: Vapor Pressure of Water, Handbook of Chemistry and Physics)', () => {
    const warm = draftAt({ ratedGpm: 2500, dischargePsi: 50, waterTempF: 140 });
    expect(warm.vacuumLimitInHg).toBeCloseTo((22 * (14.696 - 2.89)) / (14.696 - 0.256), 1);
  });

  test('refuses what cannot be', () => {
    expect(() => draftAt({ ratedGpm: 1500, liftFt: 31 })).toThrow(
      'liftFt is 31; allowed: 0 to 30 ft',
    );
    expect(() => draftAt({ ratedGpm: 1500, waterTempF: 20 })).toThrow('waterTempF is 20');
  });
});

test('more lift, height above the sea, warmth or suction never gives more', () => {
  const place: fc.Arbitrary<DraftPlace> = fc.record({
    ratedGpm: fc.constantFrom(500, 1000, 1500, 2000),
    liftFt: fc.double({ min: 0, max: 20, noNaN: true }),
    altitudeFt: fc.double({ min: 0, max: 8000, noNaN: true }),
    waterTempF: fc.double({ min: 35, max: 95, noNaN: true }),
    dischargePsi: fc.integer({ min: 50, max: 200 }),
  });
  fc.assert(
    fc.property(
      place,
      fc.constantFrom('liftFt', 'altitudeFt', 'waterTempF', 'suction'),
      (at, more) => {
        const harder =
          more === 'suction'
            ? { ...at, suction: { lengthFt: 40 } }
            : { ...at, [more]: at[more]! + 5 };
        const before = draftAt(at).mostGpm;
        expect(draftAt(harder).mostGpm).toBeLessThanOrEqual(before + 0.01);
      },
    ),
    { numRuns: 40 },
  );
});
