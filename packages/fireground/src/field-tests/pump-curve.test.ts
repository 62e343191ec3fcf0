import { capabilityAtSpeed, capabilityPsi, requireCapability } from '@plugside/hydraulics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capabilityAt } from '../catalogue/pumps.ts';
import { pumpCurve } from './pump-curve.ts';
import { atFullSpeed, headShare, provenOutline } from './pump-speed.ts';

const test = (testedOn: string, points: [number, number, number?][]) => ({
  testedOn,
  points: points.map(([flowGpm, netPsi, speedRpm]) => ({ flowGpm, netPsi, speedRpm })),
});

describe('against the rating', () => {
  // A pump maker's manual, performance test table: a 750 gpm pump gives 750/525/375 at 150/200/250.
  const maker = test('2024-04-02', [
    [750, 150],
    [525, 200],
    [375, 250],
  ]);

  it('a pump that makes a maker’s printed table is at its rating, no more and no less', () => {
    const { rating, shareOfRating } = pumpCurve([maker], 750);
    expect(rating.map(({ gotGpm }) => gotGpm)).toEqual([750, 525, 375]);
    expect(shareOfRating).toBe(1);
  });

  it('says where it falls short, and how far', () => {
    const weak = test('2024-04-02', [
      [640, 150],
      [525, 200],
      [375, 250],
    ]);
    const { shareOfRating, notices } = pumpCurve([weak], 750);
    expect(shareOfRating).toBeCloseTo(640 / 750, 9);
    const under = notices.find(({ code }) => code === 'under-rating');
    expect(under).toMatchObject({ level: 'caution' });
    expect(under?.text).toContain('640 gpm, 85 %');
  });

  it('says nothing of a point that the test never reached', () => {
    const { rating, notices } = pumpCurve([test('2024-04-02', [[375, 250]])], 750);
    expect(rating.map(({ gotGpm }) => gotGpm)).toEqual([null, null, 375]);
    expect(notices.map(({ code }) => code)).toContain('stage-untested');
  });

  it('keeps the overload reading, and drops a throttled one that another beats', () => {
    const { points } = pumpCurve(
      [
        test('2024-04-02', [
          [750, 150],
          [750, 165],
          [525, 200],
          [500, 140],
          [375, 250],
        ]),
      ],
      750,
    );
    expect(points).toEqual([
      [0, 250],
      [375, 250],
      [525, 200],
      [750, 165],
    ]);
  });
});

describe('at another speed', () => {
  it('scales flow and pressure as the laws say, within the power that was proven', () => {
    // Down to half speed: half the flow, a quarter of the pressure (affinity laws, any pump text).
    const [half] = atFullSpeed([{ flowGpm: 1000, netPsi: 160, speedRpm: 2000 }], 1000);
    expect(half).toMatchObject({ flowGpm: 500, netPsi: 40, heldBy: 'speed' });
  });

  it('does not lift a reading past the greatest power of the test', () => {
    const readings = [
      { flowGpm: 1500, netPsi: 150, speedRpm: 1700 },
      { flowGpm: 750, netPsi: 250, speedRpm: 2000 },
    ];
    for (const lifted of atFullSpeed(readings, 2000)) {
      expect((lifted.flowGpm * lifted.netPsi) / 1714).toBeLessThanOrEqual(
        (1500 * 150) / 1714 + 1e-9,
      );
    }
  });

  it('agrees with the capability at a speed where power is no limit', () => {
    const curve: [number, number][] = [
      [0, 200],
      [500, 190],
      [1000, 150],
    ];
    const expected = capabilityAtSpeed(curve, 0.8);
    const readings = curve.map(([flowGpm, netPsi]) => ({ flowGpm, netPsi, speedRpm: 2000 }));
    const found = atFullSpeed(readings, 1600);
    for (const [index, [flowGpm, netPsi]] of expected.entries()) {
      expect(found[index]!.flowGpm).toBeCloseTo(flowGpm, 9);
      expect(found[index]!.netPsi).toBeCloseTo(netPsi, 9);
    }
  });
});

describe('over the years', () => {
  const fresh: [number, number, number][] = [
    [0, 300, 2000],
    [500, 280, 2000],
    [1000, 230, 2000],
    [1500, 150, 2000],
  ];

  it('finds wear of 10 % whatever the speed of the later test', () => {
    const speed = 0.9;
    const worn = fresh.map(([gpm, psi, rpm]): [number, number, number] => [
      gpm * speed,
      psi * 0.9 * speed ** 2,
      rpm * speed,
    ]);
    const { trend, notices } = pumpCurve(
      [test('2016-03-01', fresh), test('2024-03-01', worn)],
      1500,
    );
    expect(trend[1]!.headShareOfFirst).toBeCloseTo(0.9, 9);
    expect(notices.map(({ code }) => code)).toContain('wear');
  });

  it('finds none in the same pump at another speed', () => {
    const same = fresh.map(([gpm, psi, rpm]): [number, number, number] => [
      gpm * 0.95,
      psi * 0.95 ** 2,
      rpm * 0.95,
    ]);
    const { trend, notices } = pumpCurve(
      [test('2016-03-01', fresh), test('2024-03-01', same)],
      1500,
    );
    expect(trend[1]!.headShareOfFirst).toBeCloseTo(1, 9);
    expect(notices.map(({ code }) => code)).not.toContain('wear');
  });

  it('compares with the first test that has speeds, and reads the pressure at rated flow', () => {
    const bare = fresh.map(([gpm, psi]): [number, number] => [gpm, psi]);
    const worn = fresh.map(([gpm, psi, rpm]): [number, number, number] => [gpm, psi * 0.9, rpm]);
    const { trend } = pumpCurve(
      [test('2014-03-01', bare), test('2016-03-01', fresh), test('2024-03-01', worn)],
      1500,
    );
    expect(trend.map(({ headShareOfFirst }) => headShareOfFirst?.toFixed(2) ?? null)).toEqual([
      null,
      null,
      '0.90',
    ]);
    // The last reading of each is at 1,500 gpm: 150 psi, and nine tenths of it.
    expect(trend.map(({ netAtRatedPsi }) => netAtRatedPsi)).toEqual([150, 150, 135]);
  });

  it('tells nothing without speeds, and takes the newest test for the curve', () => {
    const bare = fresh.map(([gpm, psi]): [number, number] => [gpm, psi]);
    const found = pumpCurve([test('2024-03-01', bare), test('2016-03-01', bare)], 1500);
    expect(found.test?.testedOn).toBe('2024-03-01');
    expect(headShare(found.test!.points, found.test!.points)).toBeNull();
    expect(found.sharePerYear).toBeCloseTo(0, 9);
  });
});

it('gives points that a plan takes, whatever is entered, or none with the reason', () => {
  const reading = fc.record({
    flowGpm: fc.integer({ min: 0, max: 3000 }),
    netPsi: fc.integer({ min: 0, max: 500 }),
    speedRpm: fc.option(fc.integer({ min: 500, max: 3000 }), { nil: undefined }),
  });
  fc.assert(
    fc.property(fc.array(reading, { maxLength: 8 }), (points) => {
      const found = pumpCurve([{ testedOn: '2024-03-01', points }], 1500);
      if (found.points === null) {
        expect(found.notices.some(({ level }) => level === 'error')).toBe(true);
        return;
      }
      requireCapability(found.points);
      const rig = { ratedGpm: 1500, capability: found.points };
      for (const [flowGpm, netPsi] of found.points) {
        expect(capabilityAt(rig, flowGpm)).toBeCloseTo(netPsi, 6);
        expect(capabilityPsi(found.points, flowGpm)).toBeCloseTo(netPsi, 6);
      }
      // Nothing that was shown lies above the outline.
      for (const one of found.readings) {
        if (one.flowGpm > found.points.at(-1)![0]) continue;
        expect(capabilityPsi(found.points, one.flowGpm)).toBeGreaterThanOrEqual(one.netPsi - 1e-6);
      }
    }),
    { seed: 1911, numRuns: 500 },
  );
});

it('draws a curve for a rig without a rating, and holds it against none', () => {
  const found = pumpCurve([test('2024-04-02', [[375, 250]])], undefined);
  expect(found).toMatchObject({ rating: [], shareOfRating: null });
  expect(found.points).toEqual([
    [0, 250],
    [375, 250],
  ]);
});

it('leaves out a reading that cannot be, and says so', () => {
  const found = pumpCurve(
    [
      test('2024-04-02', [
        [375, 250],
        [-10, 260],
        [Number.NaN, 200],
      ]),
    ],
    750,
  );
  expect(found.readings).toHaveLength(1);
  expect(found.notices.map(({ code }) => code)).toContain('reading-left-out');
});

it('has no outline where nothing flowed or nothing was added', () => {
  expect(provenOutline([{ flowGpm: 0, netPsi: 300 }])).toBeNull();
  expect(provenOutline([{ flowGpm: 500, netPsi: 0 }])).toBeNull();
});
