import { misses, titled } from '@plugside/hydraulics';
import { describe, expect, test } from 'vitest';
import { tenderRateRows, wholeRoundRows } from './published/shuttle.ts';
import { type Shuttle, shuttleFlow, tendersNeeded } from './shuttle-flow.ts';
import { shuttleTravelMin, tenderRateGpm } from './tender-rate.ts';
import { tenderTrip } from './tender-trip.ts';

describe('one tender', () => {
  test.each(titled(tenderRateRows))('%s', (_, row) => {
    const { tankGal, roundTripMin } = row.given;
    expect(misses(row, { gpm: tenderRateGpm(tankGal, roundTripMin) })).toEqual([]);
  });

  test.each(titled(wholeRoundRows))('%s', (_, row) => {
    const { tankGal, oneWayMi, startCounted, handlingMin } = row.given;
    const loadGal = 0.9 * tankGal;
    // Fill and dump at 1,500 gpm take 3 min together; handling is the rest of the lesson's 9.
    const pumpedMin = (2 * loadGal) / 1500;
    const trip = tenderTrip(
      {
        id: 'T1',
        tankGal,
        fillGpm: 1500,
        dumpGpm: 1500,
        fillHandlingMin: (handlingMin - pumpedMin) / 2,
        dumpHandlingMin: (handlingMin - pumpedMin) / 2,
      },
      { oneWayMi, startCounted },
    );
    const { outMin, backMin, roundTripMin, gpm } = trip;
    expect(misses(row, { travelMin: outMin + backMin, roundTripMin, gpm })).toEqual([]);
  });

  test('35 mph is 1.7 min to the mile, and 60 over the speed is the pace (published: Water Shuttle Operations lesson)', () => {
    expect(Math.abs(60 / 35 - 1.7)).toBeLessThan(0.05);
    expect(shuttleTravelMin(10, { startMin: 0, minPerMi: 60 / 30 })).toBe(20);
  });

  test('a road driven and timed goes before the rule', () => {
    const trip = tenderTrip({ id: 'T1', tankGal: 1000 }, { oneWayMi: 4, measuredOutMin: 9 });
    expect(trip.outMin).toBe(9);
    expect(trip.backMin).toBeCloseTo(0.65 + 1.7 * 4, 9);
  });

  test('the fill site’s points hold back a tender that could take more', () => {
    const trip = tenderTrip(
      { id: 'T1', tankGal: 2000, fillGpm: 1000, fillHandlingMin: 0 },
      { oneWayMi: 1 },
      { points: 1, gpmEach: 500 },
    );
    expect(trip.fillSiteMin).toBeCloseTo(1800 / 500, 9);
  });
});

// By hand: load 900; out 2, fill 1 + 1.8, back 2, dump 1 + 0.9: 8.7 min and 103.4 gpm each.
const alike = (count: number, points = { fill: 1, dump: 1 }): Shuttle => ({
  tenders: Array.from({ length: count }, (_, at) => ({
    id: `T${at + 1}`,
    tankGal: 1000,
    fillGpm: 500,
    dumpGpm: 1000,
    fillHandlingMin: 1,
    dumpHandlingMin: 1,
  })),
  road: { oneWayMi: 1, measuredOutMin: 2, measuredBackMin: 2 },
  fillSite: { points: points.fill },
  dumpSite: { points: points.dump },
});

describe('tenders together', () => {
  test.each([
    [1, 103.448, 'tenders'],
    [3, 310.345, 'tenders'],
    // 900 gal each 2.8 min is all that one fill point passes.
    [4, 321.429, 'fill site'],
    [9, 321.429, 'fill site'],
  ] as const)('%i: %f gpm, held by the %s (by hand)', (count, gpm, limitedBy) => {
    const flow = shuttleFlow(alike(count));
    expect(flow.gpm).toBeCloseTo(gpm, 2);
    expect(flow.limitedBy).toBe(limitedBy);
  });

  test('a second fill point moves the limit to the dump site: 900 gal each 1.9 min (by hand)', () => {
    const flow = shuttleFlow(alike(9, { fill: 2, dump: 1 }));
    expect(flow.gpm).toBeCloseTo(900 / 1.9, 6);
    expect(flow.limitedBy).toBe('dump site');
  });

  test.each([
    [103, 1],
    [104, 2],
    [500, 5],
  ])('%i gpm takes %i (by hand)', (gpm, count) => {
    expect(tendersNeeded(gpm, shuttleFlow(alike(1)).trips[0]!)).toBe(count);
  });

  test('a flow that tenders meet exactly takes no one more', () => {
    const trip = tenderTrip(
      { id: 'T1', tankGal: 1000, usableShare: 1, fillHandlingMin: 1.5, dumpHandlingMin: 1.5 },
      { oneWayMi: 0, measuredOutMin: 2.5, measuredBackMin: 2.5 },
    );
    expect(trip.gpm).toBe(100);
    expect(tendersNeeded(300, trip)).toBe(3);
  });

  // Five tenders of 1,200 to 3,000 gal, source 2 miles off: 700 gpm and more, 70,000 gal in 90 min.
  // Which tender held what, and how many filled at once, is not printed: plausibility, not proof.
  test('a drill of five tenders lies between five of its smallest and five of its largest (field test: Tanker shuttle drill, Petersham MA 2000)', () => {
    const five = (tankGal: number) =>
      shuttleFlow({
        tenders: [1, 2, 3, 4, 5].map((at) => ({ id: `T${at}`, tankGal })),
        road: { oneWayMi: 2 },
        fillSite: { points: 2 },
        dumpSite: { points: 2 },
      }).gpm;
    expect(five(1200)).toBeLessThan(700);
    expect(five(3000)).toBeGreaterThan(70_000 / 90);
  });

  test('refuses what cannot be', () => {
    expect(() => shuttleFlow({ ...alike(1), tenders: [] })).toThrow(
      'tenders is 0; allowed: 1 to 40',
    );
    expect(() => shuttleFlow({ ...alike(1), fillSite: { points: 0 } })).toThrow(
      'fillSite.points is 0',
    );
    const [one] = alike(1).tenders;
    expect(() => shuttleFlow({ ...alike(1), tenders: [one!, one!] })).toThrow('each id once');
    expect(() => tenderTrip({ id: 'T1', tankGal: 10 }, { oneWayMi: 1 })).toThrow(
      'tankGal is 10; allowed: 100 to 15000 gal',
    );
    const [good] = alike(1).tenders;
    const small = { id: 'T2', tankGal: 10 };
    expect(() => shuttleFlow({ ...alike(1), tenders: [good!, small] })).toThrow(
      'tenders[1].tankGal is 10',
    );
    expect(() => shuttleFlow({ ...alike(1), road: { oneWayMi: -1 } })).toThrow(
      'road.oneWayMi is -1; allowed: 0 to 50 mi',
    );
  });
});
