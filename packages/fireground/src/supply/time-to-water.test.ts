import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chooseSupply,
  hoseVolumeGal,
  newDraft,
  newHydrant,
  newRig,
  type RespondingRig,
  type Situation,
  usualTaskTimes,
} from '../index.ts';
import type { LegTasks } from './arrangement.ts';
import { dutiesOf } from './duties.ts';
import type { Leg } from './leg.ts';
import { timeToWater } from './time-to-water.ts';

const rig = (
  id: string,
  arrivesMin: number,
  more: Partial<Omit<RespondingRig, 'rig'>> = {},
): RespondingRig => ({
  rig: newRig(id, 'attack', { name: `Engine ${id.slice(1)}` }),
  kind: 'engine',
  arrivesMin,
  hose: [],
  assistValve: false,
  ...more,
});

const hydrant = newHydrant('H', { name: 'H-369', staticPsi: 65, residualPsi: 45, testGpm: 900 });
const legFrom = (more: Partial<Leg>, lengthFt = 500): Leg => ({
  source: { kind: 'hydrant', at: { hydrant, steamer: true, lengthFt } },
  pumps: [],
  stretches: [{ lines: ['5'], fromFt: 0, toFt: lengthFt }],
  valve: false,
  suction: [],
  ...more,
});

/** 500 ft/min, half a minute to stop, 1.5 for a hydrant, 0.5 for a valve, 0.5 for an intake, 2 to hook up. */
const times = usualTaskTimes;

function played(attack: RespondingRig, ...work: LegTasks[]) {
  const timed = timeToWater(attack, work, times);
  const steps = timed.steps.map(({ text, startMin, endMin }) => [
    text,
    Math.round(startMin * 1000) / 1000,
    Math.round(endMin * 1000) / 1000,
  ]);
  return { timed, steps };
}

describe('a reverse lay', () => {
  // Engine 1 at the fire at 3, Engine 2 there at 3.4: it stops and lays until 3.4 + 0.5 + 1 = 4.9,
  // puts its valve on until 6.9, hooks up until 8.9. 500 ft of 5 in fill at 500 gpm.
  const attack = rig('E1', 3);
  const pump = rig('E2', 3.4, { assistValve: true });
  const leg = legFrom({ pumps: [pump], valve: true });
  const work: LegTasks = { leg, lay: [{ rig: pump, hose: '5', lengthFt: 500 }], suction: [] };
  const fillMin = Math.round((hoseVolumeGal('5', 500) / 500) * 1000) / 1000;

  it('ends at the hydrant; then the engine connects, then it hooks up (by hand)', () => {
    const { timed, steps } = played(attack, work);
    expect(steps).toEqual([
      ['Engine 2 lays 500 ft of 5 in from the fire to H-369', 3.4, 4.9],
      ['Engine 1 connects the supply from H-369 to its intake', 4.9, 5.4],
      ['Engine 2 connects to H-369 with its assist valve', 4.9, 6.9],
      ['The hose from H-369 fills', 6.9, 6.9 + fillMin],
      ['Engine 2 hooks up to the assist valve at H-369', 6.9, 8.9],
      ['Engine 2 sets its pressure to boost', 8.9, 9.4],
    ]);
    expect(timed.waterAtMin).toBeCloseTo(6.9 + fillMin, 3);
    expect(timed.fullAtMin).toBeCloseTo(9.4, 9);
    expect(timed.atFireMin).toBe(3);
  });

  it('is told in the duties in the same words', () => {
    const { timed } = played(attack, work);
    expect(dutiesOf({ rigs: [attack, pump] }, attack, timed.tasks).map(({ duty }) => duty)).toEqual(
      [
        'goes to the fire, connects the supply from H-369 to its intake and attacks',
        'lays 500 ft of 5 in from the fire to H-369, connects to H-369 with its assist valve, hooks up to the assist valve at H-369 and sets its pressure to boost',
      ],
    );
  });
});

describe('a forward lay', () => {
  const attack = rig('E1', 2, { assistValve: true });
  const lay = [{ rig: attack, hose: '5' as const, lengthFt: 500 }];

  it('leaves a crew that connects while the engine lays; the engine is at the fire when it has laid (by hand)', () => {
    const { timed, steps } = played(attack, { leg: legFrom({}), lay, suction: [] });
    expect(steps.slice(0, 3)).toEqual([
      ['Engine 1 lays 500 ft of 5 in from H-369 to the fire', 2, 3.5],
      ['Engine 1 leaves a crew at H-369 to connect', 2.5, 4],
      ['Engine 1 connects the supply from H-369 to its intake', 3.5, 4],
    ]);
    expect(timed.atFireMin).toBe(3.5);
  });

  it('leaves no crew to fit a valve that the engine does not bring: the second engine brings it', () => {
    const plain = rig('E1', 2);
    const pump = rig('E2', 5, { assistValve: true });
    const work: LegTasks = {
      leg: legFrom({ pumps: [pump], valve: true }),
      lay: [{ rig: plain, hose: '5', lengthFt: 500 }],
      suction: [],
    };
    const { steps } = played(plain, work);
    expect(steps).toContainEqual(['Engine 2 connects to H-369 with its assist valve', 5, 7]);
    expect(steps.some(([text]) => String(text).includes('leaves a crew'))).toBe(false);
  });
});

describe('hose that several lay', () => {
  it('starts and ends where it lies: the pump’s at the water, the attack engine’s at the fire', () => {
    const attack = rig('E1', 2);
    const pump = rig('E2', 3);
    const helper = rig('E3', 3);
    const work: LegTasks = {
      leg: legFrom({ pumps: [pump] }, 1500),
      // In the order in which hose is given out.
      lay: [
        { rig: attack, hose: '5', lengthFt: 800 },
        { rig: pump, hose: '5', lengthFt: 400 },
        { rig: helper, hose: '5', lengthFt: 300 },
      ],
      suction: [],
    };
    const texts = played(attack, work).steps.map(([text]) => text);
    expect(texts).toContain(
      'Engine 1 lays 800 ft of 5 in from the point 700 ft from H-369 to the fire',
    );
    expect(texts).toContain('Engine 2 lays 400 ft of 5 in from the point 400 ft out to H-369');
    expect(texts).toContain(
      'Engine 3 lays 300 ft of 5 in from the point 400 ft from H-369 to the point 700 ft out',
    );
  });

  it('in a relay lies between the pumps that it joins', () => {
    const attack = rig('E1', 2);
    const source = rig('E2', 3);
    const second = rig('E3', 4);
    const river = newDraft('W', { name: 'River' });
    const leg: Leg = {
      source: { kind: 'water', at: { draft: river, liftFt: 10, lengthFt: 3400 } },
      pumps: [source, second],
      stretches: [
        { lines: ['5'], fromFt: 0, toFt: 2700 },
        { lines: ['4'], fromFt: 2700, toFt: 3400 },
      ],
      valve: false,
      suction: [],
    };
    const lay = [
      { rig: attack, hose: '5' as const, lengthFt: 1700 },
      { rig: source, hose: '5' as const, lengthFt: 1000 },
      { rig: second, hose: '4' as const, lengthFt: 700 },
    ];
    const { steps } = played(attack, { leg, lay, suction: [] });
    const texts = steps.map(([text]) => text);
    expect(texts).toContain(
      'Engine 3 lays 700 ft of 4 in from the fire to the point 2,700 ft from River',
    );
    expect(texts).toContain(
      'Engine 1 lays 1,700 ft of 5 in from the point 1,000 ft from River to Engine 3, 2,700 ft out',
    );
    // It couples what ends at it: not before the longer of the two lies, 2 + 0.5 + 3.4 = 5.9.
    const hooks = steps.find(([text]) => String(text).startsWith('Engine 3 hooks up'))!;
    expect(hooks[0]).toBe('Engine 3 hooks up in the line 2,700 ft from River');
    expect(hooks[1]).toBeCloseTo(5.9, 6);
  });
});

describe('any way', () => {
  const situations = fc
    .record({
      hydrants: fc.array(
        fc.record({
          lengthFt: fc.integer({ min: 100, max: 1800 }),
          testGpm: fc.integer({ min: 400, max: 1500 }),
        }),
        { minLength: 1, maxLength: 3 },
      ),
      arrives: fc.array(fc.integer({ min: 0, max: 8 }), { minLength: 2, maxLength: 4 }),
      hoseFt: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 4, maxLength: 4 }),
      valves: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
      demandGpm: fc.integer({ min: 300, max: 2000 }),
    })
    .map(
      ({ hydrants, arrives, hoseFt, valves, demandGpm }): Situation => ({
        title: 'Any',
        invented: true,
        scene: { name: 'Any', elevationFt: 0 },
        demandGpm,
        hydrants: hydrants.map(({ lengthFt, testGpm }, at) => ({
          hydrant: newHydrant(`H${at + 1}`, { staticPsi: 65, residualPsi: 45, testGpm }),
          steamer: true,
          lengthFt,
        })),
        rigs: [...arrives]
          .sort((one, two) => one - two)
          .map((arrivesMin, at) =>
            rig(`E${at + 1}`, arrivesMin, {
              hose: [{ hose: '5', lengthFt: 100 * hoseFt[at]! }],
              assistValve: valves[at]!,
            }),
          ),
        waters: [],
        fillPlaces: [],
        department: {},
      }),
    );

  it('has no rig at two tasks at once, but for a crew left at a hydrant, and begins none before it comes', () => {
    let seen = 0;
    fc.assert(
      fc.property(situations, (situation) => {
        for (const { time, duties } of chooseSupply(situation).ways) {
          for (const { rig: one, arrivesMin } of situation.rigs) {
            const own = time.steps.filter(({ rigId }) => rigId === one.id);
            for (const step of own) expect(step.startMin).toBeGreaterThanOrEqual(arrivesMin);
            const alone = own.filter(({ text }) => !text.includes('leaves a crew'));
            alone.slice(1).forEach((step, at) => {
              expect(step.startMin).toBeGreaterThanOrEqual(alone[at]!.endMin - 1e-9);
              seen++;
            });
            const duty = duties.find(({ rigId }) => rigId === one.id)?.duty ?? '';
            for (const { text } of own.filter(({ text: words }) => / lays | hooks up /.test(words)))
              expect(`${one.name} ${duty}`).toContain(text.slice(one.name!.length + 1));
          }
          expect(Math.max(...time.steps.map(({ endMin }) => endMin))).toBeCloseTo(
            time.fullAtMin,
            9,
          );
        }
      }),
      { numRuns: 40, seed: 7 },
    );
    expect(seen).toBeGreaterThan(100);
  });
});
