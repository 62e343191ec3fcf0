/** Air of a hose that is filled against water: where it goes, how much of it arrives, and when. */
import { boostedAtHydrant, twoHydrants } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import type { DrillAction, Submitted } from './action.ts';
import { createDrill } from './drill.ts';
import type { EventKind } from './event.ts';
import type { PlayedRole } from './role.ts';
import type { Drill } from './running-drill.ts';
import { sceneFromPlan } from './scene-from-plan.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';

function act(drill: Drill, role: PlayedRole, action: DrillAction): void {
  const refused = step(drill, [{ role, action }]).find(({ kind }) => kind === 'refused');
  expect(refused).toBeUndefined();
}

const hoseOf = (drill: Drill, hose: string) => drill.state.hoses.find(({ id }) => id === hose)!;
const pumpOf = (drill: Drill, rig: string) => drill.state.pumps.find(({ rigId }) => rigId === rig)!;
const happened = (drill: Drill, kind: EventKind) =>
  drill.log.filter((entry) => entry.kind === 'event' && entry.event.kind === kind);
/** Air on its way in full hose [gal at the pressure of the open]. */
const carried = (drill: Drill) =>
  drill.state.hoses.reduce(
    (sum, { air = [] }) => sum + air.reduce((all, { gal }) => all + gal, 0),
    0,
  );

/**
 * Steps, and reads off a pump's own air what came into it [gal at the pressure of the open]: air leaves a
 * pump by a fortieth in a tick (2 s), the rest of a change came in, at the intake's pressure (Boyle's law).
 */
function runAndCount(
  drill: Drill,
  rig: string,
  seconds: number,
  does: Submitted[] = [],
  each?: () => void,
): number {
  let came = 0;
  for (let n = 0; n < seconds * TICKS_PER_S; n++) {
    const before = pumpOf(drill, rig).airGal;
    step(drill, n === 0 ? does : []);
    const { airGal, intakePsi } = pumpOf(drill, rig);
    const entered = airGal - before * (1 - 1 / 40);
    came += (entered * (14.696 + Math.max(0, intakePsi))) / 14.696;
    each?.();
  }
  return came;
}

const lengthFt = 600;
/** An engine hooked to the assist valve of a supply line that flows, its discharge hose dry and shut in. */
const hooked = (layFt = lengthFt) =>
  createDrill(
    sceneFromPlan(
      boostedAtHydrant({
        lay: { hose: '5', lengthFt: layFt },
        attackLines: [{}, {}, {}],
        attack: { pdpPsi: 150 },
      }),
      {
        start: 'water flowing',
        dryHoses: ['discharge'],
        outOfGear: ['B1'],
        openings: { 'B1.discharge1': 0 },
      },
    ),
    1,
  );
const dischargeGal = 0.0408 * 25 * 25;
const boost = (drill: Drill, overS: number) => {
  act(drill, 'hydrant operator', { do: 'pump in gear', rig: 'B1', inGear: true });
  act(drill, 'hydrant operator', { do: 'set governor', rig: 'B1', pdpPsi: 100 });
  act(drill, 'hydrant operator', {
    do: 'set valve',
    valve: 'B1.discharge1',
    opening: 1,
    overS,
  });
};

describe('the air of a booster’s discharge hose', () => {
  it('is all in the hose, on its way, or has come to the attack pump, in every tick', () => {
    const drill = hooked();
    runAndCount(drill, 'A1', 5);
    expect(hoseOf(drill, 'discharge').airGal).toBeCloseTo(dischargeGal, 3);
    boost(drill, 10);
    let came = 0;
    let most = 0;
    for (let n = 0; n < 200 * TICKS_PER_S; n++) {
      came += runAndCount(drill, 'A1', 1 / TICKS_PER_S);
      most = Math.max(most, carried(drill));
      const there = hoseOf(drill, 'discharge').airGal + carried(drill) + came;
      expect(Math.abs(there - dischargeGal)).toBeLessThan(0.01 * dischargeGal);
    }
    expect(hoseOf(drill, 'discharge').phase).toBe('full');
    // It was on its way, all of it at once, and has all come.
    expect(most).toBeCloseTo(dischargeGal, 3);
    expect(carried(drill)).toBe(0);
    expect(came / dischargeGal).toBeCloseTo(1, 2);
  });

  it('comes when the water before it has gone through the supply line, by its flow and what it holds', () => {
    const drill = hooked();
    boost(drill, 5);
    let entered = 0;
    let throughGal = 0;
    while (pumpOf(drill, 'A1').airGal === 0 && drill.state.tick < 5000) {
      step(drill);
      if (hoseOf(drill, 'lay').air === undefined) continue;
      if (entered++ > 0) throughGal += hoseOf(drill, 'lay').flowGpm / 60 / TICKS_PER_S;
    }
    // 0.0408·d²·L; .
    expect(throughGal).toBeGreaterThan(0.0408 * 25 * lengthFt - 1);
    expect(throughGal).toBeLessThan(0.0408 * 25 * lengthFt + 1);
  });

  it('lets the attack pump’s pressure dip for a moment', () => {
    const drill = hooked();
    boost(drill, 5);
    runAndCount(drill, 'A1', 20);
    expect(pumpOf(drill, 'A1').dischargePsi).toBeCloseTo(150, 0);
    let least = Number.POSITIVE_INFINITY;
    runAndCount(drill, 'A1', 130, [], () => {
      least = Math.min(least, pumpOf(drill, 'A1').dischargePsi);
    });
    expect(least).toBeLessThan(149);
    expect(pumpOf(drill, 'A1').dischargePsi).toBeCloseTo(150, 0);
  });

  it('is told of where it comes within a second or two, out of a short supply line', () => {
    const drill = hooked(100);
    boost(drill, 5);
    runAndCount(drill, 'A1', 60);
    expect(happened(drill, 'air into pump')).toMatchObject([
      { event: { piece: 'A1', text: expect.stringMatching(/which the water has brought/) } },
    ]);
  });

  it('is lost sight of by the rules of before', () => {
    const drill = hooked();
    drill.scene.settings.rules = 2;
    boost(drill, 5);
    expect(runAndCount(drill, 'A1', 100)).toBe(0);
    expect(hoseOf(drill, 'discharge').phase).toBe('full');
  });

  it('leaves with the water where the supply line bursts on its way', () => {
    const drill = hooked();
    boost(drill, 5);
    while (carried(drill) < 5) step(drill);
    step(drill, [
      {
        role: 'instructor',
        action: { do: 'arm fault', fault: { id: 'b', kind: 'hose burst', hose: 'lay' } },
      },
    ]);
    const came = runAndCount(drill, 'A1', 10);
    expect(hoseOf(drill, 'lay').phase).toBe('burst');
    expect(carried(drill)).toBe(0);
    expect(came).toBe(0);
  });
});

describe('the air of a second supply that is not bled', () => {
  const second = () => {
    const drill = createDrill(
      sceneFromPlan(
        twoHydrants({
          first: { hose: '4', lengthFt: 200 },
          second: { hose: '2-1/2', lengthFt: 100 },
          attack: { pdpPsi: 150 },
          attackLines: [{}, {}],
        }),
        {
          start: 'water flowing',
          dryHoses: ['lay2'],
          openings: { 'H2.stem': 0, 'A1.intake2': 0 },
        },
      ),
      1,
    );
    act(drill, 'hydrant operator', { do: 'set valve', valve: 'H2.stem', opening: 1, overS: 12 });
    runAndCount(drill, 'A1', 30);
    expect(hoseOf(drill, 'lay2').phase).toBe('filling');
    return drill;
  };
  const laySecondGal = 0.0408 * 6.25 * 100;

  it('all goes into the pump when its intake is opened while the first one feeds', () => {
    const drill = second();
    expect(hoseOf(drill, 'lay2').airGal).toBeCloseTo(laySecondGal, 3);
    const opens = { do: 'set valve', valve: 'A1.intake2', opening: 1, overS: 3 } as const;
    const came = runAndCount(drill, 'A1', 60, [{ role: 'attack operator', action: opens }]);
    expect(hoseOf(drill, 'lay2').phase).toBe('full');
    expect(came / laySecondGal).toBeCloseTo(1, 2);
    expect(happened(drill, 'air into pump').length).toBe(1);
  });

  it('goes out of the bleeder where that is open before the intake is', () => {
    const drill = second();
    act(drill, 'attack operator', { do: 'set valve', valve: 'A1.intake2.bleeder', opening: 1 });
    const bled = runAndCount(drill, 'A1', 60);
    act(drill, 'attack operator', { do: 'set valve', valve: 'A1.intake2.bleeder', opening: 0 });
    act(drill, 'attack operator', { do: 'set valve', valve: 'A1.intake2', opening: 1, overS: 3 });
    expect(bled + runAndCount(drill, 'A1', 20)).toBe(0);
  });
});
