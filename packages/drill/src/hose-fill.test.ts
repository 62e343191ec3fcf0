import type { HoseSize } from '@plugside/fireground';
import { newHydrant, newLine, newNozzle, newPlan, newRig } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import type { Drill } from './running-drill.ts';
import { sceneFromPlan } from './scene-from-plan.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';

/** A hose from the steamer of a hydrant whose main does not sag, its other end loose or on a pump's intake. */
function chargedHose(hose: HoseSize, lengthFt: number, looseEnd: boolean): Drill {
  const plan = newPlan({
    title: 'Filling',
    scene: 'A1',
    hydrants: [newHydrant('H1', { staticPsi: 50, residualPsi: 49.99, testGpm: 10_000 })],
    rigs: [newRig('A1', 'attack')],
    lines: [
      newLine('lay', 'H1.steamer', 'A1.intake1', hose, lengthFt),
      newLine('attack', 'A1.discharge1', 'N1.inlet', '1-3/4', 200),
    ],
    nozzles: [newNozzle('N1', { kind: 'fog', ratedGpm: 150, ratedPsi: 100 })],
  });
  const drill = createDrill(
    sceneFromPlan(plan, {
      start: 'hose connected',
      openings: { 'H1.stem': 1 },
    }),
    1,
  );
  if (looseEnd)
    step(drill, [{ role: 'attack operator', action: { do: 'uncouple', hose: 'lay', end: 'to' } }]);
  return drill;
}

const layOf = (drill: Drill) => drill.state.hoses[0]!;
const waterGal = (drill: Drill) => layOf(drill).from.waterGal + layOf(drill).to.waterGal;

function secondsToFill(drill: Drill): number {
  const from = drill.state.tick;
  while (layOf(drill).phase === 'filling' && drill.state.tick < 20_000) step(drill);
  return (drill.state.tick - from) / TICKS_PER_S;
}

describe('water that a hose takes to be full', () => {
  it.each([
    ['LDH basics: about a gallon a foot of 5 in', '5' as HoseSize, 100, 100, 2.5],
    [
      'NWCG 3.2 Volume of Water in Hose: 9.2 gal in 100 ft of 1½ in',
      '1-1/2' as HoseSize,
      600,
      55.2,
      0.3,
    ],
    ['NWCG 3.2, by its formula: 36.7 gal in 100 ft of 3 in', '3' as HoseSize, 100, 36.7, 0.1],
  ])('%s', (_source, hose, lengthFt, gallons, within) => {
    const drill = chargedHose(hose, lengthFt, true);
    secondsToFill(drill);
    expect(Math.abs(waterGal(drill) - gallons)).toBeLessThan(within);
    // What came from the main went into the hose, but for the last tick's spurt.
    expect(Math.abs(drill.state.water.sourceGal - gallons)).toBeLessThan(within + 2);
  });
});

describe('time to fill', () => {
  /**
   * By hand, for a main that holds 50 psi: P = (k₀ + c·x)·Q² with x the share that is full, so
   * t = V·∫√((k₀ + c·x)/P) dx = V/√P·(2/3c)·((k₀ + c)^1.5 − k₀^1.5). k₀ is the steamer's 5 psi at
   * 1,000 gpm and the speed of a full bore, 1/(29.84·d²)²; c is C·L/10⁶.
   */
  it.each([
    ['500 ft of 5 in', '5' as HoseSize, 500, 5, 0.08],
    ['1,000 ft of 4 in', '4' as HoseSize, 1000, 4, 0.2],
    ['300 ft of 2½ in', '2-1/2' as HoseSize, 300, 2.5, 2],
  ])(
    '%s with its far end loose, by the closed form of the integral',
    (_name, hose, lengthFt, d, C) => {
      const k0 = 5 / 1000 ** 2 + 1 / (29.84 * d * d) ** 2;
      const c = (C * lengthFt) / 1e6;
      const volume = 0.0408 * d * d * lengthFt;
      const minutes = (volume / Math.sqrt(50)) * (2 / (3 * c)) * ((k0 + c) ** 1.5 - k0 ** 1.5);
      const seconds = secondsToFill(chargedHose(hose, lengthFt, true));
      // The throat of 5 ft at the outlet and the main's own sag are not in the integral.
      expect(Math.abs(seconds / (60 * minutes) - 1)).toBeLessThan(0.03);
    },
  );

  it('is longer through a bleeder than out of a loose end, and never comes where no air can leave', () => {
    const loose = secondsToFill(chargedHose('5', 200, true));
    const bled = chargedHose('5', 200, false);
    step(bled, [
      {
        role: 'attack operator',
        action: { do: 'set valve', valve: 'A1.intake1.bleeder', opening: 1 },
      },
    ]);
    expect(secondsToFill(bled)).toBeGreaterThan(2 * loose);
    const shut = chargedHose('5', 200, false);
    expect(secondsToFill(shut)).toBeGreaterThan(900);
  });

  it('leaves squeezed air by Boyle: at 50 psi it keeps 14.7/64.7 of the hose', () => {
    const drill = chargedHose('5', 200, false);
    for (let n = 0; n < 1200; n++) step(drill);
    const hose = layOf(drill);
    expect(hose.airPsi).toBeCloseTo(50, 0);
    const full = 0.0408 * 25 * 200;
    expect(1 - waterGal(drill) / full).toBeCloseTo(14.7 / 64.7, 2);
    // The bleeder lets it out after all.
    step(drill, [
      {
        role: 'attack operator',
        action: { do: 'set valve', valve: 'A1.intake1.bleeder', opening: 1 },
      },
    ]);
    expect(secondsToFill(drill)).toBeLessThan(20);
    expect(layOf(drill).phase).toBe('full');
  });
});

describe('hose that comes off', () => {
  it('throws water under pressure, runs out, and its port pours until the valve is shut', () => {
    const drill = chargedHose('5', 100, false);
    const act = (action: Parameters<typeof step>[1]) => step(drill, action);
    act([
      {
        role: 'attack operator',
        action: { do: 'set valve', valve: 'A1.intake1.bleeder', opening: 1 },
      },
    ]);
    secondsToFill(drill);
    const thrown = act([
      { role: 'hydrant operator', action: { do: 'uncouple', hose: 'lay', end: 'from' } },
    ]);
    expect(thrown).toContainEqual(
      expect.objectContaining({
        event: expect.objectContaining({ kind: 'water thrown', level: 'caution' }),
      }),
    );
    for (let n = 0; n < 40 * TICKS_PER_S; n++) step(drill);
    expect(waterGal(drill)).toBe(0);
    // 4 in open at 50 psi: some thousand gpm, into the street.
    expect(drill.state.hydrants[0]!.flowGpm).toBeGreaterThan(1000);
    act([{ role: 'hydrant operator', action: { do: 'set valve', valve: 'H1.stem', opening: 0 } }]);
    for (let n = 0; n < 20 * TICKS_PER_S; n++) step(drill);
    expect(drill.state.hydrants[0]!.flowGpm).toBe(0);
    const { sourceGal, wasteGal } = drill.state.water;
    expect(Math.abs(wasteGal - sourceGal)).toBeLessThan(0.001 * sourceGal);
  });
});
