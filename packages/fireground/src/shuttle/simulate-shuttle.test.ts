import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Shuttle } from './shuttle-flow.ts';
import { shuttleFlow } from './shuttle-flow.ts';
import type { ShuttleRunOptions } from './shuttle-run.ts';
import { simulateShuttle } from './simulate-shuttle.ts';

/** 1,000 gal dumped in 1 min and filled in 1, four minutes each way: 10 min and 100 gpm each. */
const even = (count: number, points = 1): Shuttle => ({
  tenders: Array.from({ length: count }, (_, at) => ({
    id: `T${at + 1}`,
    tankGal: 1000,
    usableShare: 1,
    fillGpm: 1000,
    dumpGpm: 1000,
    fillHandlingMin: 0,
    dumpHandlingMin: 0,
  })),
  road: { oneWayMi: 2, measuredOutMin: 4, measuredBackMin: 4 },
  fillSite: { points },
  dumpSite: { points },
});

const levelAt = (run: { level: { atMin: number; gal: number }[] }, atMin: number) =>
  run.level.find((corner) => Math.abs(corner.atMin - atMin) < 1e-9)?.gal;

describe('by hand', () => {
  test('one tender and its own flow: full round after round, never dry', () => {
    const run = simulateShuttle({ ...even(1), tankGal: 2000, drawGpm: 100, untilMin: 60 });
    // Drawing begins when the first load is in; 100 gal are left when the next comes.
    expect(run.drawFromMin).toBeCloseTo(1, 9);
    expect(levelAt(run, 1)).toBeCloseTo(1000, 6);
    expect(levelAt(run, 10)).toBeCloseTo(100, 6);
    expect(levelAt(run, 11)).toBeCloseTo(1000, 6);
    expect(run.runsDryAtMin).toBeNull();
    expect(run.averageGpm).toBeCloseTo(100, 6);
  });

  test('twice its flow: dry after 5 min, for 4 min until it is back, then for 5', () => {
    const run = simulateShuttle({ ...even(1), tankGal: 2000, drawGpm: 200, untilMin: 20 });
    expect(run.runsDryAtMin).toBeCloseTo(6, 9);
    // 1 to 6 runs; 6 to 10 dry; 10 to 15 runs; 15 to 20 dry.
    expect(run.dryMin).toBeCloseTo(9, 6);
    expect(run.shortGal).toBeCloseTo(1800, 6);
    expect(run.drawnGal).toBeCloseTo(2000, 6);
    expect(run.events.filter(({ kind }) => kind === 'tank dry').map(({ atMin }) => atMin)).toEqual([
      6, 15,
    ]);
  });

  test('empty out in 2 min, loaded back in 6: filling from 3 to 4, dumping again at 10', () => {
    const run = simulateShuttle({
      ...even(1),
      road: { oneWayMi: 2, measuredOutMin: 2, measuredBackMin: 6 },
      tankGal: 2000,
      drawGpm: 100,
      untilMin: 12,
    });
    expect(run.events.filter(({ tenderId }) => tenderId === 'T1')).toEqual([
      { atMin: 0, kind: 'dumps', tenderId: 'T1' },
      { atMin: 1, kind: 'leaves empty', tenderId: 'T1' },
      { atMin: 3, kind: 'fills', tenderId: 'T1' },
      { atMin: 4, kind: 'leaves full', tenderId: 'T1' },
      { atMin: 10, kind: 'dumps', tenderId: 'T1' },
      { atMin: 11, kind: 'leaves empty', tenderId: 'T1' },
    ]);
  });

  test('two at once at one dump point: the second waits 1 min; at two points neither does', () => {
    const options = { tankGal: 5000, drawGpm: 100, untilMin: 9 };
    const one = simulateShuttle({ ...even(2), ...options });
    expect(one.dumpQueue).toEqual({ most: 1, waitedMin: 1 });
    expect(one.events).toContainEqual({ atMin: 0, kind: 'waits to dump', tenderId: 'T2' });
    expect(simulateShuttle({ ...even(2, 2), ...options }).dumpQueue.most).toBe(0);
  });

  test('a tank too small makes the tender stay: full at ⅔ min, empty at 4 min', () => {
    const run = simulateShuttle({
      ...even(1),
      tankGal: 600,
      drawGpm: 100,
      drawFromMin: 0,
      untilMin: 5,
    });
    // 900 gpm net fill 600 gal in 2/3 min; the 333 gal left run out at the 100 gpm drawn.
    expect(run.events.find(({ kind }) => kind === 'tank full')?.atMin).toBeCloseTo(2 / 3, 9);
    expect(run.events.find(({ kind }) => kind === 'leaves empty')?.atMin).toBeCloseTo(4, 9);
    expect(levelAt(run, 4)).toBeCloseTo(600, 6);
  });

  test('a tank that is full with nothing drawn keeps the tender waiting, and spills nothing', () => {
    const run = simulateShuttle({ ...even(1), tankGal: 400, drawGpm: 0, untilMin: 30 });
    expect(run.endGal).toBe(400);
    expect(run.dumpedGal).toBeCloseTo(400, 6);
    expect(run.loads).toEqual([{ tenderId: 'T1', loads: 0, waitedMin: 0 }]);
  });

  test('drawing from an empty tank before the first tender is dry at once', () => {
    const run = simulateShuttle({
      ...even(1),
      tankGal: 2000,
      drawGpm: 100,
      drawFromMin: 0,
      firstAtMin: { T1: 7 },
      untilMin: 8,
    });
    expect(run.runsDryAtMin).toBe(0);
    expect(run.dryMin).toBeCloseTo(7, 9);
  });

  test('water in the tank at the start bridges the wait: 500 gal at 250 gpm, 2 min', () => {
    const run = simulateShuttle({
      ...even(1),
      tankGal: 2000,
      startGal: 500,
      drawGpm: 250,
      drawFromMin: 0,
      firstAtMin: { T1: 3 },
      untilMin: 4,
    });
    expect(run.runsDryAtMin).toBeCloseTo(2, 9);
    expect(levelAt(run, 4)).toBeCloseTo(750, 6);
  });
});

const anyRun: fc.Arbitrary<ShuttleRunOptions> = fc.record({
  tenders: fc
    .array(
      fc.record({
        tankGal: fc.integer({ min: 500, max: 4000 }),
        fillGpm: fc.integer({ min: 200, max: 1500 }),
        dumpGpm: fc.integer({ min: 200, max: 2000 }),
        fillHandlingMin: fc.integer({ min: 0, max: 5 }),
        dumpHandlingMin: fc.integer({ min: 0, max: 5 }),
      }),
      { minLength: 1, maxLength: 8 },
    )
    .map((list) => list.map((tender, at) => ({ id: `T${at}`, ...tender }))),
  road: fc.record({ oneWayMi: fc.double({ min: 0, max: 8, noNaN: true }) }),
  fillSite: fc.record({ points: fc.integer({ min: 1, max: 3 }) }),
  dumpSite: fc.record({ points: fc.integer({ min: 1, max: 3 }) }),
  tankGal: fc.integer({ min: 500, max: 6000 }),
  startGal: fc.integer({ min: 0, max: 500 }),
  drawGpm: fc.integer({ min: 0, max: 2000 }),
  untilMin: fc.integer({ min: 10, max: 240 }),
});

describe('any shuttle', () => {
  test('keeps its water: what was there and was dumped is what was drawn and is left', () => {
    fc.assert(
      fc.property(anyRun, (options) => {
        const run = simulateShuttle(options);
        const inGal = (options.startGal ?? 0) + run.dumpedGal;
        expect(Math.abs(inGal - run.drawnGal - run.endGal)).toBeLessThan(1e-3);
        const askedGal =
          run.drawFromMin === null ? 0 : options.drawGpm * (options.untilMin - run.drawFromMin);
        expect(Math.abs(run.drawnGal + run.shortGal - askedGal)).toBeLessThan(1e-3);
        // Whole loads, and at most one more in part from each tender.
        const wholeGal = run.loads.reduce(
          (sum, { loads }, at) => sum + loads * 0.9 * options.tenders[at]!.tankGal,
          0,
        );
        const partGal = options.tenders.reduce((sum, { tankGal }) => sum + 0.9 * tankGal, 0);
        expect(run.dumpedGal).toBeGreaterThan(wholeGal - 1e-3);
        expect(run.dumpedGal).toBeLessThan(wholeGal + partGal + 1e-3);
      }),
    );
  });

  test('never fills past its brim or below its floor, and time runs forward', () => {
    fc.assert(
      fc.property(anyRun, (options) => {
        const { level, events } = simulateShuttle(options);
        for (const [at, corner] of level.entries()) {
          expect(corner.gal).toBeGreaterThanOrEqual(0);
          expect(corner.gal).toBeLessThanOrEqual(options.tankGal);
          if (at > 0) expect(corner.atMin).toBeGreaterThan(level[at - 1]!.atMin);
        }
        for (const [at, event] of events.entries()) {
          if (at > 0) expect(event.atMin).toBeGreaterThanOrEqual(events[at - 1]!.atMin);
        }
      }),
    );
  });

  test('gives no more than its tenders could without ever waiting', () => {
    fc.assert(
      fc.property(anyRun, (options) => {
        const run = simulateShuttle(options);
        const loadsGal = options.tenders.reduce((sum, { tankGal }) => sum + 0.9 * tankGal, 0);
        const mostGal = shuttleFlow(options).tendersGpm * options.untilMin + loadsGal;
        expect(run.dumpedGal).toBeLessThanOrEqual(mostGal + 1e-3);
      }),
    );
  });

  test('is the same each time', () => {
    fc.assert(
      fc.property(anyRun, (options) => {
        expect(simulateShuttle(options)).toEqual(simulateShuttle(options));
      }),
      { numRuns: 20 },
    );
  });
});

describe('against the formula', () => {
  // Tenders alike: what twelve hours pass differs from the formula by the loads at either end.
  test.each([
    [1, 1],
    [3, 1],
    [10, 1],
    [14, 1],
    [14, 2],
    [30, 2],
  ])('%i tenders, %i points at each site', (count, points) => {
    const shuttle = even(count, points);
    const run = simulateShuttle({ ...shuttle, tankGal: 50_000, drawGpm: 10_000, untilMin: 720 });
    const { gpm } = shuttleFlow(shuttle);
    expect(Math.abs(run.dumpedGal - gpm * 720)).toBeLessThanOrEqual(count * 1000);
  });
});
