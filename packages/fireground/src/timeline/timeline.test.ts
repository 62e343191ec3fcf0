import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { newRig } from '../patterns/pieces.ts';
import { layTasks } from './lay-tasks.ts';
import { scheduleTasks } from './schedule.ts';
import { supplyOfWay } from './supply-of-way.ts';
import { tanksOfWay } from './tanks-of-way.ts';
import { chargingMin, layingMin } from './task-durations.ts';
import { timeline } from './timeline.ts';
import type { TimelineInput } from './timeline-input.ts';

const supplyAt = (atMin: number, flowGpm: number) => ({
  flowGpm,
  tasks: [{ id: 'all', what: 'Everything.', durationMin: atMin }],
});

const levelAt = (answer: { tank: { atMin: number; gal: number }[] }, atMin: number) =>
  answer.tank.find((corner) => Math.abs(corner.atMin - atMin) < 1e-9)?.gal;

describe('by hand', () => {
  // 750 gal at 150 gpm last 5 min.
  test('tank alone: dry after 5 min of flow that begins at 1', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 1, flowGpm: 150 }],
      attackTank: { rigId: 'E1', gallons: 750 },
    });
    expect(answer.runsDryAtMin).toBeCloseTo(6, 9);
    expect(answer.supplyAtMin).toBeNull();
    expect(answer.bridgeGpm).toBeNull();
    expect(answer.notices.map(({ text }) => text)).toEqual([
      'No supply is planned; the tanks last 6.0 min.',
    ]);
  });

  test('supply at 4: never dry, 1 min to spare, 300 gal left, 200 gpm would just do', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 150 }],
      attackTank: { rigId: 'E1', gallons: 750 },
      supply: supplyAt(4, 800),
    });
    expect(answer.runsDryAtMin).toBeNull();
    expect(answer.marginMin).toBeCloseTo(1, 9);
    expect(levelAt(answer, 4)).toBeCloseTo(150, 9);
    expect(levelAt(answer, 60)).toBeCloseTo(150, 9);
    expect(answer.bridgeGpm).toBeCloseTo(750 / 4, 2);
  });

  test('a second line shortens it: 150 for 2 min, then 300: dry at 3.5, 2.5 min before the supply', () => {
    const answer = timeline({
      attackFlow: [
        { atMin: 0, flowGpm: 150, what: 'First line' },
        { atMin: 2, flowGpm: 300, what: 'Second line' },
      ],
      attackTank: { rigId: 'E1', gallons: 750 },
      supply: supplyAt(6, 800),
    });
    expect(answer.runsDryAtMin).toBeCloseTo(3.5, 9);
    expect(answer.marginMin).toBeCloseTo(-2.5, 9);
    expect(answer.shortGal).toBeCloseTo(2.5 * 300, 6);
    expect(answer.bridgeGpm).toBeCloseTo(125, 2);
    expect(answer.events.map(({ atMin, kind }) => [atMin, kind])).toEqual([
      [0, 'flow'],
      [0, 'task'],
      [2, 'flow'],
      [3.5, 'attack tank dry'],
      [6, 'supply'],
    ]);
    expect(answer.notices[0]).toEqual({
      level: 'caution',
      text: 'The tanks are dry 2.5 min before the supply is there. The tanks would hold 125 gpm until then. Crews inside must know before it happens.',
    });
  });

  test('a second engine nurses: its 500 gal at up to 200 gpm go before the first tank’s', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 300 }],
      attackTank: { rigId: 'E1', gallons: 900 },
      nurseTanks: [{ rigId: 'E2', gallons: 500, arrivesMin: 1, connectMin: 1, flowGpm: 200 }],
      supply: supplyAt(6, 800),
    });
    // 600 gal gone by 2; then 100 gpm from the tank and 200 from the nurse, which lasts to 4.5; at 3
    // the tank would be at 200 and at 4.5 at 50, gone at 4 min 40 s.
    expect(levelAt(answer, 2)).toBeCloseTo(300, 9);
    expect(levelAt(answer, 4.5)).toBeCloseTo(50, 9);
    expect(answer.nurseTanks).toEqual([{ rigId: 'E2', fromMin: 2, usedGal: 500, emptyAtMin: 4.5 }]);
    expect(answer.runsDryAtMin).toBeCloseTo(4.5 + 50 / 300, 9);
    // 1,400 gal over 6 min: both tanks would be used up in time, the nurse’s in 2.5 of its 4 min.
    expect(answer.bridgeGpm).toBeCloseTo(1400 / 6, 2);
  });

  test('of two nurses the first to come gives first: dry at 3 and at 5, and the tank untouched between', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 100 }],
      attackTank: { rigId: 'E1', gallons: 1000 },
      nurseTanks: [
        { rigId: 'E3', gallons: 200, arrivesMin: 1, connectMin: 1, flowGpm: 100 },
        { rigId: 'E2', gallons: 200, arrivesMin: 0, connectMin: 1, flowGpm: 100 },
      ],
    });
    expect(answer.nurseTanks.map(({ rigId, emptyAtMin }) => [rigId, emptyAtMin])).toEqual([
      ['E2', 3],
      ['E3', 5],
    ]);
    expect(levelAt(answer, 5)).toBeCloseTo(900, 9);
  });

  test('a nurse that cannot give its water in time bridges less than its tank would say', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 100 }],
      attackTank: { rigId: 'E1', gallons: 500 },
      nurseTanks: [{ rigId: 'E2', gallons: 1000, arrivesMin: 4, connectMin: 0, flowGpm: 50 }],
      supply: supplyAt(10, 800),
    });
    // 50 gpm for 6 min are 300 gal: 800 gal in 10 min.
    expect(answer.bridgeGpm).toBeCloseTo(80, 2);
    expect(answer.marginMin! < 0).toBe(true);
  });

  test('a supply too small for the lines drains the tank on: 900 gal less 100 gpm, dry at 11', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 300 }],
      attackTank: { rigId: 'E1', gallons: 1500 },
      supply: supplyAt(2, 200),
    });
    expect(answer.runsDryAtMin).toBeCloseTo(11, 9);
    expect(answer.notices.at(-1)!.text).toBe(
      'The supply gives 200 gpm; the lines take up to 300 gpm.',
    );
  });

  test('a supply that is there before water flows leaves nothing to bridge', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 5, flowGpm: 300 }],
      attackTank: { rigId: 'E1', gallons: 500 },
      supply: supplyAt(4, 500),
    });
    expect(answer.bridgeGpm).toBeNull();
    expect(answer.runsDryAtMin).toBeNull();
  });
});

describe('a supply of several sources', () => {
  const twoSources = {
    tasks: [],
    flowGpm: 500,
    sources: [
      { name: 'H-331', flow: [{ atMin: 3, flowGpm: 100 }] },
      { name: 'H-330', flow: [{ atMin: 6, flowGpm: 400 }] },
    ],
  };

  // 300 gpm from 1,000 gal: 100 left at 3; then 200 gpm from it, gone at 3.5; 200 gpm short until 6.
  test('counts each as it comes (by hand)', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 300 }],
      attackTank: { rigId: 'E1', gallons: 1000 },
      supply: twoSources,
    });
    expect(levelAt(answer, 3)).toBeCloseTo(100, 9);
    expect(answer.runsDryAtMin).toBeCloseTo(3.5, 9);
    expect(answer.shortGal).toBeCloseTo(2.5 * 200, 6);
    expect(answer.supplyAtMin).toBe(6);
    // 1,000 gal of tank and 300 of H-331 in 6 min.
    expect(answer.bridgeGpm).toBeCloseTo(1300 / 6, 2);
    expect(answer.text).toBe(
      'The lines lack water from 3:30: with H-330 the supply gives 500 gpm from 6:00, 2:30 min later. 217 gpm would last until then.',
    );
    expect(answer.supply).toEqual([
      { atMin: 3, flowGpm: 100, what: 'H-331' },
      { atMin: 6, flowGpm: 500, what: 'H-330' },
    ]);
  });

  test('is there as soon as what has come carries the lines (by hand)', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 90 }],
      attackTank: { rigId: 'E1', gallons: 360 },
      supply: twoSources,
    });
    expect(answer.supplyAtMin).toBe(3);
    expect(answer.runsDryAtMin).toBeNull();
    expect(answer.text).toBe(
      'No line lacks water: with H-331 the supply gives 100 gpm from 3:00, 1:00 min before the tank would be dry.',
    );
  });

  test('too small for the lines is said so, and no flow that would bridge it', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 300 }],
      attackTank: { rigId: 'E1', gallons: 1500 },
      supply: supplyAt(2, 200),
    });
    expect(answer.text).toBe(
      'The supply gives only 200 gpm from 2:00; the tank makes up what it lacks until 11:00. After that the lines have 200 gpm.',
    );
  });

  // 100 gpm lacked from 2 on, 900 gal by then: 11, long after what is shown.
  test('is said to run dry past what is shown too (by hand)', () => {
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 300 }],
      attackTank: { rigId: 'E1', gallons: 1500 },
      supply: supplyAt(2, 200),
      untilMin: 5,
    });
    expect(answer.runsDryAtMin).toBeNull();
    expect(answer.text).toContain('makes up what it lacks until 11:00');
  });

  test('the sentence and the picture agree in any timeline', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const { text, runsDryAtMin, supplyAtMin, bridgeGpm } = timeline({
          ...input,
          untilMin: 240,
        });
        const takenGpm = Math.max(0, ...input.attackFlow.map(({ flowGpm }) => flowGpm));
        expect(text.startsWith('No line lacks')).toBe(
          supplyAtMin !== null && runsDryAtMin === null,
        );
        if (!text.includes('would last until then')) return;
        expect(runsDryAtMin!).toBeLessThan(supplyAtMin!);
        // What would have lasted is less than what was taken.
        expect(bridgeGpm!).toBeLessThan(takenGpm);
      }),
    );
  });
});

describe('a chosen way and the tanks', () => {
  const part = {
    sourceId: 'H1',
    sourceName: 'H-1',
    kind: 'hydrant' as const,
    pumps: ['E2'],
    valve: true,
    hose: ['5' as const],
    suction: [],
    lengthFt: 600,
    setGpm: 800,
    mostGpm: 900,
    startGpm: 250,
    waterAtMin: 6,
    fullAtMin: 9,
  };
  const way = {
    duties: [{ rigId: 'E1', rigName: 'Engine 1', duty: '' }],
    time: { steps: [], waterAtMin: 6, fullAtMin: 9, atFireMin: 4 },
    mostGpm: 900,
    parts: [part],
  };
  const coming = (id: string, kind: 'engine' | 'tender', arrivesMin: number, tankGal: number) => ({
    rig: newRig(id, 'attack', { tankGal }),
    kind,
    arrivesMin,
    hose: [],
    assistValve: false,
  });
  const rigs = [coming('E1', 'engine', 2, 500), coming('T1', 'tender', 4.1, 3000)];
  const given = { flowGpm: 300, firstWaterMin: 1.5 };

  // At the fire at 4, water at 5.5; 250 gpm from 6 on, 50 gpm of tank more until 9: 500 − 150 − 150.
  test('no line flows before the engine is at the fire; hydrant pressure counts before the boost (by hand)', () => {
    const answer = tanksOfWay(way, { rigs }, given)!;
    expect(answer.events.find(({ kind }) => kind === 'flow')!.atMin).toBe(5.5);
    expect(levelAt(answer, 6)).toBeCloseTo(350, 9);
    expect(levelAt(answer, 9)).toBeCloseTo(200, 9);
    expect(answer.runsDryAtMin).toBeNull();
  });

  // 4.1 and 2 min to couple: from 6.1 on the tender's water goes before the engine's.
  test('a tender that stands by gives its tank (by hand)', () => {
    const late = {
      ...way,
      parts: [{ ...part, startGpm: 0, waterAtMin: 14, fullAtMin: 14 }],
      standBy: [{ rigId: 'T1', rigName: 'Tender 1', duty: '' }],
    };
    const answer = tanksOfWay(late, { rigs }, given)!;
    expect(answer.nurseTanks[0]).toMatchObject({ rigId: 'T1', emptyAtMin: null });
    expect(answer.nurseTanks[0]!.fromMin).toBeCloseTo(6.1, 9);
    // Nine tenths of 3,000 gal, 300 gpm of them for 7.9 min.
    expect(answer.nurseTanks[0]!.usedGal).toBeCloseTo(300 * 7.9, 6);
    expect(answer.runsDryAtMin).toBeNull();
    expect(tanksOfWay({ ...late, standBy: [] }, { rigs }, given)!.runsDryAtMin).toBeCloseTo(
      5.5 + 500 / 300,
      9,
    );
  });

  test('is none where no engine of the way attacks', () => {
    expect(tanksOfWay({ ...way, duties: [] }, { rigs }, given)).toBeNull();
  });
});

describe('durations', () => {
  test('900 ft at 15 ft/s: a minute; at 20 s for each 100 ft: three (by hand)', () => {
    expect(layingMin(900, { speedFtS: 15 })).toBeCloseTo(1, 9);
    expect(layingMin(900, { secondsPer100Ft: 20 })).toBeCloseTo(3, 9);
  });

  // Know the basics when using LDH: about 100 gal in 100 ft of 5 in.
  test('1,000 ft of 5 in at 500 gpm: about 2 min (published: Know the basics when using LDH)', () => {
    expect(Math.abs(chargingMin('5', 1000, 500) - 2)).toBeLessThanOrEqual(0.05);
  });

  // The lay of 8,000 ft: laid at 35 mph, water through it and 750 gpm reached in 9 min 55 s.
  test('a rating drill’s 8,000 ft lie between its laying and its laying and filling (published: North Montgomery County Fire Department makes the grade with ISO)', () => {
    const laidMin = layingMin(8000, { speedFtS: (35 * 5280) / 3600 });
    const drilledMin = 9 + 55 / 60;
    expect(laidMin).toBeLessThan(drilledMin);
    // Hose size is not printed; 4 in at 750 gpm, filled while it was laid and after.
    expect(chargingMin('4', 8000, 750)).toBeLessThan(drilledMin);
    expect(laidMin + chargingMin('5', 8000, 750)).toBeGreaterThan(drilledMin);
  });
});

describe('a lay', () => {
  const lay = {
    rig: { id: 'E1', name: 'Engine 1', arrivesMin: 0 },
    hose: '5',
    lengthFt: 600,
  } as const;

  test('is as long as its longest way: stop, lay, intake, fill (by hand)', () => {
    const times = {
      stopToLayMin: 0.5,
      layFtPerMin: 600,
      connectIntakeMin: 1,
      connectHydrantMin: 1.25,
      chargeGpm: 612,
    };
    const tasks = scheduleTasks(layTasks(lay, { times }));
    const at = (id: string) => tasks.find((task) => task.id === id)!;
    expect(at('intake').endMin).toBeCloseTo(2.5, 9);
    expect(at('hydrant')).toMatchObject({ startMin: 0.5, endMin: 1.75 });
    // 600 ft of 5 in hold 612 gal: one minute more.
    expect(at('charge').endMin).toBeCloseTo(3.5, 2);
    expect(at('lay').what).toBe('Engine 1 lays 600 ft of 5 in.');
    expect(at('lay').origin).toEqual({ kind: 'department', text: 'Timed by the department' });
  });

  test('is not filled before the hydrant is connected: 0.5 and 10 min (by hand)', () => {
    const tasks = scheduleTasks(layTasks(lay, { times: { connectHydrantMin: 10 } }));
    expect(tasks.find(({ id }) => id === 'charge')!.startMin).toBe(10.5);
  });

  test('waits for the engine that pumps it, and says which times have no source', () => {
    const booster = { id: 'E2', arrivesMin: 6 };
    const tasks = layTasks({ ...lay, booster });
    const scheduled = scheduleTasks(tasks);
    expect(scheduled.find(({ id }) => id === 'pump')!.startMin).toBe(6);
    expect(tasks.every(({ origin }) => origin!.text.startsWith('Common practice, no source'))).toBe(
      true,
    );
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 150 }],
      attackTank: { rigId: 'E1', gallons: 1000 },
      supply: { tasks, flowGpm: 1000 },
    });
    expect(answer.notices.at(-1)!.text).toMatch(/^Some times are common practice/);
  });

  test('in SI too', () => {
    expect(layTasks(lay, { units: 'si' })[1]!.what).toBe('Engine 1 lays 183 m of 125 mm.');
  });
});

describe('a chosen way', () => {
  test('counts from its full flow', () => {
    const supply = supplyOfWay({
      mostGpm: 1200,
      time: {
        steps: [
          { text: 'Engine 1 lays from H1', startMin: 2, endMin: 4, rigId: 'E1' },
          { text: 'The hose fills', startMin: 4, endMin: 5 },
        ],
        waterAtMin: 5,
        fullAtMin: 6.5,
      },
    });
    const answer = timeline({
      attackFlow: [{ atMin: 0, flowGpm: 100 }],
      attackTank: { rigId: 'E1', gallons: 750 },
      supply,
    });
    expect(answer.supplyAtMin).toBe(6.5);
    expect(answer.marginMin).toBeCloseTo(1, 9);
    expect(answer.tasks.map(({ startMin, endMin }) => [startMin, endMin])).toEqual([
      [2, 4],
      [4, 5],
    ]);
  });
});

const anyInput: fc.Arbitrary<TimelineInput> = fc.record(
  {
    attackFlow: fc
      .array(
        fc.record({
          atMin: fc.double({ min: 0, max: 30, noNaN: true }),
          flowGpm: fc.integer({ min: 0, max: 1500 }),
        }),
        { maxLength: 5 },
      )
      .map((steps) => steps.sort((one, two) => one.atMin - two.atMin)),
    attackTank: fc.record({ rigId: fc.constant('E1'), gallons: fc.integer({ min: 0, max: 2000 }) }),
    nurseTanks: fc
      .array(
        fc.record({
          gallons: fc.integer({ min: 0, max: 3000 }),
          arrivesMin: fc.integer({ min: 0, max: 20 }),
          connectMin: fc.integer({ min: 0, max: 5 }),
          flowGpm: fc.integer({ min: 0, max: 1000 }),
        }),
        { maxLength: 3 },
      )
      .map((list) => list.map((nurse, at) => ({ rigId: `N${at}`, ...nurse }))),
    supply: fc
      .record({ at: fc.integer({ min: 0, max: 40 }), gpm: fc.integer({ min: 0, max: 2000 }) })
      .map(({ at, gpm }) => supplyAt(at, gpm)),
    untilMin: fc.integer({ min: 1, max: 90 }),
  },
  { requiredKeys: ['attackFlow', 'attackTank'] },
);

describe('any timeline', () => {
  test('keeps its water: what the lines took and lacked is what they asked; tanks give what they lose', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const answer = timeline(input);
        const untilMin = input.untilMin ?? 60;
        let askedGal = 0;
        for (const [at, step] of input.attackFlow.entries()) {
          const end = Math.min(untilMin, input.attackFlow[at + 1]?.atMin ?? untilMin);
          askedGal += step.flowGpm * Math.max(0, end - step.atMin);
        }
        expect(Math.abs(answer.deliveredGal + answer.shortGal - askedGal)).toBeLessThan(1e-3);
        const supplyGal =
          answer.supplyAtMin === null
            ? 0
            : input.supply!.flowGpm * Math.max(0, untilMin - answer.supplyAtMin);
        const tanksGal =
          input.attackTank.gallons -
          answer.tank.at(-1)!.gal +
          answer.nurseTanks.reduce((sum, { usedGal }) => sum + usedGal, 0);
        expect(answer.deliveredGal).toBeLessThanOrEqual(tanksGal + supplyGal + 1e-3);
        expect(answer.deliveredGal).toBeGreaterThanOrEqual(tanksGal - 1e-3);
        expect(answer.runsDryAtMin === null).toBe(answer.shortGal < 1e-6);
      }),
    );
  });

  test('never fills a tank, and its events stand in order', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const { tank, events } = timeline(input);
        for (const [at, corner] of tank.entries()) {
          expect(corner.gal).toBeGreaterThanOrEqual(0);
          if (at > 0) {
            expect(corner.gal).toBeLessThanOrEqual(tank[at - 1]!.gal);
            expect(corner.atMin).toBeGreaterThan(tank[at - 1]!.atMin);
          }
        }
        for (const [at, event] of events.entries()) {
          if (at > 0) expect(event.atMin).toBeGreaterThanOrEqual(events[at - 1]!.atMin);
        }
      }),
    );
  });

  test('the bridging flow holds to the supply, and a little more does not', () => {
    let bridged = 0;
    fc.assert(
      fc.property(anyInput, (input) => {
        const { bridgeGpm, supplyAtMin } = timeline(input);
        if (bridgeGpm === null || bridgeGpm < 1 || bridgeGpm > 9000) return;
        bridged++;
        const startMin = input.attackFlow.find(({ flowGpm }) => flowGpm > 0)!.atMin;
        const dry = (flowGpm: number) =>
          timeline({ ...input, attackFlow: [{ atMin: startMin, flowGpm }] }).tanksDryAtMin ??
          Number.POSITIVE_INFINITY;
        expect(dry(bridgeGpm)).toBeGreaterThanOrEqual(supplyAtMin! - 1e-6);
        expect(dry(bridgeGpm + 0.01)).toBeLessThan(supplyAtMin!);
      }),
      { numRuns: 300 },
    );
    expect(bridged).toBeGreaterThan(20);
  });
});

test('refuses what cannot be', () => {
  const tank = { rigId: 'E1', gallons: 750 };
  expect(() => timeline({ attackFlow: [{ atMin: 0, flowGpm: -1 }], attackTank: tank })).toThrow(
    'attackFlow[0].flowGpm is -1; allowed: 0 to 10000 gpm',
  );
  expect(() =>
    timeline({
      attackFlow: [
        { atMin: 4, flowGpm: 100 },
        { atMin: 2, flowGpm: 200 },
      ],
      attackTank: tank,
    }),
  ).toThrow('attackFlow[1].atMin is 2; allowed: 4 to 240 min. Put the steps in order of time.');
  expect(() => scheduleTasks([{ id: 'a', what: 'A.', durationMin: 1, after: ['b'] }])).toThrow(
    'tasks[0].after is b',
  );
});
