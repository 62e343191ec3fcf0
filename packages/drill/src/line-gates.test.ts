/**
 * Lines that are gated to their own pressure. The expected pressures are worked by hand: FL = C·(Q/100)²·(L/100),
 * C from "Which Supply Line?", FireRescue1 (2½ in: 50 psi at 500 gpm in 100 ft, so 2; 3 in: 20 psi, so 0.8),
 * and 100 psi at a fog nozzle.
 */
import { describe, expect, it } from 'vitest';
import type { DrillAction } from './action.ts';
import { createDrill } from './drill.ts';
import { evolutionOf } from './evolutions/index.ts';
import { lineGates } from './line-gates.ts';
import { playedBy } from './played-by.ts';
import { playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene } from './scene.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';
import { allStepsDone } from './steps-standing.ts';
import { viewFor } from './view.ts';

const sceneOf = (key: string) => evolutionOf(key)!.scene();

/** By hand [psi]. */
const byHand = {
  // 2 · 2.5² · 2 = 25, and 100 at the nozzle.
  'two hydrants': { attack3: 125 },
  'boost through valve': { attack3: 125 },
  // 0.8 · 5² · 1 = 20, and 100 at the nozzle.
  'side suction lines': { attack1: 120, attack2: 120 },
  'forward lay': {},
  'tank and hydrant': {},
  relay: {},
};

function played(scene: DrillScene, until: (drill: Drill) => boolean): Drill {
  const drill = createDrill(scene, 7);
  while (!until(drill) && drill.state.tick < 15_000)
    step(
      drill,
      playedRoles.flatMap((role) => playedBy(role, scene, drill.state)),
    );
  return drill;
}

const nozzleOf = ({ state }: Drill, id: string) => state.nozzles.find((one) => one.id === id)!;
const cautions = ({ log }: Drill) =>
  log.flatMap((entry) =>
    entry.kind === 'event' && entry.event.kind === 'nozzle over its pressure' ? [entry.event] : [],
  );

describe.each(Object.entries(byHand))('%s', (key, needs) => {
  const scene = sceneOf(key);

  it('gates the lines that want at least 10 psi less than their pump holds, to what they want by hand', () => {
    const gates = lineGates(scene.plan);
    expect([...gates.keys()].sort()).toEqual(Object.keys(needs));
    for (const [line, psi] of Object.entries(needs))
      expect(Math.abs(gates.get(line)!.psi - psi), line).toBeLessThan(0.1);
    const told = scene.hoses.filter(({ gatedPsi }) => gatedPsi !== undefined);
    expect(told.map(({ id }) => id)).toEqual(Object.keys(needs));
  });

  it('has a gauge at each of them, for whoever stands at the pump', () => {
    const drill = createDrill(scene, 1);
    const ids = viewFor('attack operator', scene, drill.state).gauges.map(({ id }) => id);
    const lines = scene.plan.lines.filter(({ id }) => id in needs);
    expect(ids.filter((id) => /\.discharge\d/.test(id))).toEqual(lines.map(({ from }) => from));
  });

  it('leaves no nozzle over its rated pressure when it is done by its steps, and tells of none', () => {
    const drill = played(scene, (now) => allStepsDone(scene, now.state));
    for (let n = 0; n < 20 * TICKS_PER_S; n++) step(drill);
    for (const { id, ratedPsi } of scene.plan.nozzles)
      expect(nozzleOf(drill, id).pressurePsi, id).toBeLessThan(ratedPsi + 10);
    expect(cautions(drill)).toEqual([]);
    for (const [line, psi] of Object.entries(needs)) {
      const { from } = drill.state.hoses.find(({ id }) => id === line)!;
      expect(Math.abs(from.psi - psi), line).toBeLessThan(10);
    }
  });
});

describe('a line that was taken off for want of water', () => {
  it('comes on again gated as it was, by the computer', () => {
    const scene = sceneOf('two hydrants');
    const drill = played(scene, (now) => allStepsDone(scene, now.state));
    const act = (action: DrillAction, role: 'attack operator' | 'nozzle crew') =>
      step(drill, [{ role, action }]);
    act(
      { do: 'radio', message: { text: 'Short of water: I shut discharge 3.' } },
      'attack operator',
    );
    act({ do: 'set valve', valve: 'A1.discharge3', opening: 0, overS: 2 }, 'attack operator');
    // Taken off for two minutes; its crew shuts the nozzle meanwhile and opens it again after.
    for (let n = 0; n < 200 * TICKS_PER_S; n++)
      step(
        drill,
        playedRoles.flatMap((role) => playedBy(role, scene, drill.state)),
      );
    const valve = drill.state.valves.find(({ id }) => id === 'A1.discharge3')!;
    expect(valve.opening).toBeGreaterThan(0.1);
    expect(Math.abs(nozzleOf(drill, 'N3').pressurePsi - 100)).toBeLessThan(10);
    expect(cautions(drill)).toEqual([]);
  });
});

describe('a line that is opened all the way at a higher line’s pressure', () => {
  const scene = sceneOf('two hydrants');
  const before = (id: string) => (drill: Drill) =>
    drill.state.tally.stepTicks.some(({ step: one }) => one === id);
  const drill = played(scene, before('second lay intake open'));
  const act = (action: DrillAction) => step(drill, [{ role: 'attack operator', action }]);
  act({ do: 'radio', message: { preset: 'water received' } });
  act({ do: 'set valve', valve: 'A1.discharge3', opening: 1, overS: 5 });
  for (let n = 0; n < 30 * TICKS_PER_S; n++) step(drill);
  step(drill, [
    {
      role: 'nozzle crew',
      action: { do: 'set valve', valve: 'N3.bale', opening: 1, overS: 3 },
    },
  ]);
  for (let n = 0; n < 20 * TICKS_PER_S; n++) step(drill);
  const gated = () =>
    drill.state.tally.stepTicks.some(({ step: one }) => one === 'third line gated');

  it('does not count as gated, and its nozzle is told of once, with both pressures', () => {
    // By hand: 170 = P + 25·(P/100), so 136 psi at the nozzle.
    expect(Math.abs(nozzleOf(drill, 'N3').pressurePsi - 136)).toBeLessThan(1);
    expect(gated()).toBe(false);
    expect(cautions(drill)).toHaveLength(1);
    expect(cautions(drill)[0]!.text).toMatch(/136 psi.*100 psi.*[Gg]ate/);
  });

  it('counts once it is gated to 125 psi, within 10', () => {
    act({ do: 'set valve', valve: 'A1.discharge3', opening: 0.2, overS: 3 });
    for (let n = 0; n < 20 * TICKS_PER_S; n++) step(drill);
    expect(gated()).toBe(true);
    expect(Math.abs(nozzleOf(drill, 'N3').pressurePsi - 100)).toBeLessThan(10);
    expect(cautions(drill)).toHaveLength(1);
  });

  it('is not told of in a drill of the second rules', () => {
    const older = sceneOf('two hydrants');
    older.settings.rules = 2;
    const old = createDrill(older, 7);
    for (const valve of ['A1.discharge3', 'N3.bale'])
      old.state.valves.find(({ id }) => id === valve)!.target = 1;
    for (let n = 0; n < 60 * TICKS_PER_S; n++) step(old);
    expect(nozzleOf(old, 'N3').pressurePsi).toBeGreaterThan(120);
    expect(cautions(old)).toEqual([]);
  });
});
