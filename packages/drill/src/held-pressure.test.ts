/** What stays in hose behind shut valves and clappers, until it is bled. */
import { describe, expect, it } from 'vitest';
import type { DrillAction } from './action.ts';
import { createDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { judge } from './judge.ts';
import { playedBy } from './played-by.ts';
import { type PlayedRole, playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import { step } from './step.ts';
import { allStepsDone } from './steps-standing.ts';
import { run } from './test-drill.ts';

const hydrant = 'hydrant operator';

function act(drill: Drill, action: DrillAction, role: PlayedRole = hydrant): void {
  const refused = step(drill, [{ role, action }]).filter(({ kind }) => kind === 'refused');
  expect(refused).toEqual([]);
}

const shut = (valve: string, overS = 10): DrillAction => ({
  do: 'set valve',
  valve,
  opening: 0,
  overS,
});
const open = (valve: string): DrillAction => ({ do: 'set valve', valve, opening: 1 });
const hoseOf = ({ state }: Drill, id: string) => state.hoses.find((one) => one.id === id)!;
const psiIn = (drill: Drill, id: string) => {
  const { from, to } = hoseOf(drill, id);
  return Math.max(from.psi, to.psi);
};
const unsafe = ({ scene, state }: Drill) =>
  judge(scene, state).find(({ key }) => key === 'unsafe acts')!.value;

/** The boost, brought to its end by the computer. */
function boosted(): Drill {
  const scene = boostThroughValve.scene();
  const drill = createDrill(scene, 7);
  while (!allStepsDone(scene, drill.state) && drill.state.tick < 15_000)
    step(
      drill,
      playedRoles.flatMap((role) => playedBy(role, scene, drill.state)),
    );
  expect(allStepsDone(scene, drill.state)).toBe(true);
  return drill;
}

describe('hose on an assist valve', () => {
  it('stays charged behind the clapper when the booster shuts its discharge, and is felt when it comes off', () => {
    const drill = boosted();
    act(drill, shut('B1.discharge1'));
    run(drill, 20);
    const supply = drill.state.assistValves[0]!.supplyPsi;
    expect(supply).toBeGreaterThan(20);
    // The clapper lets water into the supply line and none back: both stand alike.
    expect(psiIn(drill, 'discharge')).toBeCloseTo(supply, 0);
    expect(unsafe(drill)).toBe(0);
    act(drill, { do: 'uncouple', hose: 'discharge', end: 'to' });
    expect(drill.log.some((e) => e.kind === 'event' && e.event.kind === 'water thrown')).toBe(true);
    expect(unsafe(drill)).toBe(1);
  });

  it('falls with the supply line, which its clapper opens to', () => {
    const drill = boosted();
    act(drill, shut('B1.discharge1'));
    run(drill, 20);
    const before = psiIn(drill, 'discharge');
    act(drill, shut('H1.stem', 30));
    run(drill, 40);
    expect(drill.state.assistValves[0]!.supplyPsi).toBeLessThan(5);
    expect(before).toBeGreaterThan(20);
    expect(psiIn(drill, 'discharge')).toBeLessThan(5);
  });

  it('is let down by the drain at the discharge, and then comes off without harm', () => {
    const drill = boosted();
    act(drill, shut('B1.discharge1'));
    run(drill, 20);
    act(drill, open('B1.discharge1.bleeder'));
    run(drill, 3);
    expect(psiIn(drill, 'discharge')).toBe(0);
    act(drill, { do: 'uncouple', hose: 'discharge', end: 'to' });
    expect(unsafe(drill)).toBe(0);
  });

  it('stays charged between handle and intake, until its bleeder is opened', () => {
    const drill = boosted();
    act(drill, shut('B1.discharge1'));
    run(drill, 12);
    act(drill, { do: 'pump in gear', rig: 'B1', inGear: false });
    const stood = psiIn(drill, 'suction');
    expect(stood).toBeGreaterThan(20);
    act(drill, shut('V1.handle'));
    run(drill, 15);
    // The pump is shut all round: its gauge tells what stands in it, as the hose does.
    expect(psiIn(drill, 'suction')).toBeGreaterThan(20);
    expect(drill.state.pumps.find(({ rigId }) => rigId === 'B1')!.intakePsi).toBeGreaterThan(20);
    act(drill, shut('B1.intake1'));
    run(drill, 15);
    expect(psiIn(drill, 'suction')).toBeGreaterThan(20);
    act(drill, open('B1.intake1.bleeder'));
    run(drill, 3);
    expect(psiIn(drill, 'suction')).toBe(0);
  });

  it('falls as it did in a drill of the second rules, which keep their end', () => {
    const scene = boostThroughValve.scene();
    scene.settings.rules = 2;
    const drill = createDrill(scene, 7);
    while (!allStepsDone(scene, drill.state) && drill.state.tick < 15_000)
      step(
        drill,
        playedRoles.flatMap((role) => playedBy(role, scene, drill.state)),
      );
    act(drill, shut('B1.discharge1'));
    run(drill, 20);
    expect(psiIn(drill, 'discharge')).toBe(0);
  });
});

describe('a discharge', () => {
  it('has a drain where its engine pumps into an assist valve: no nozzle bleeds that hose', () => {
    const drains = (id: string) =>
      boostThroughValve
        .scene()
        .valves.filter(
          ({ id: valve }) => valve.startsWith(`${id}.discharge`) && valve.endsWith('.bleeder'),
        );
    expect(drains('B1').map(({ label }) => label)).toContain('Discharge 1 drain');
    expect(drains('A1')).toEqual([]);
  });
});
