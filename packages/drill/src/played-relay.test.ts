import { relay, whatNow } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import type { DrillAction, Submitted } from './action.ts';
import { createDrill } from './drill.ts';
import { planNow } from './plan-now.ts';
import { playedBy } from './played-by.ts';
import { relayRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import type { DrillStart } from './scene.ts';
import { sceneFromPlan } from './scene-from-plan.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';

const plan = relay({
  pumps: 4,
  lay: { hose: '5', lengthFt: 1500, riseFt: 60 },
  pdpPsi: 150,
  attackPdpPsi: 170,
  attackLines: [{}, {}],
});

const couple = (hose: string, end: 'from' | 'to', port: string): DrillAction => ({
  do: 'couple',
  hose,
  end,
  port,
});
const open = (valve: string, overS = 10): DrillAction => ({
  do: 'set valve',
  valve,
  opening: 1,
  overS,
});
const shut = (valve: string): DrillAction => ({ do: 'set valve', valve, opening: 0, overS: 1 });

/** What the people at both ends do, and when [s]. */
const people: [atS: number, role: Submitted['role'], action: DrillAction][] = [
  [1, 'hydrant operator', couple('suction', 'from', 'H1.steamer')],
  [1, 'hydrant operator', couple('suction', 'to', 'P1.intake1')],
  [1, 'hydrant operator', couple('leg1', 'from', 'P1.discharge1')],
  [1, 'attack operator', couple('leg3', 'to', 'P4.intake1')],
  [1, 'attack operator', couple('attack1', 'from', 'P4.discharge1')],
  [1, 'attack operator', couple('attack2', 'from', 'P4.discharge2')],
  [1, 'nozzle crew', couple('attack1', 'to', 'N1.inlet')],
  [1, 'nozzle crew', couple('attack2', 'to', 'N2.inlet')],
  [2, 'hydrant operator', open('P1.intake1.bleeder', 1)],
  [3, 'hydrant operator', open('H1.stem', 20)],
  [40, 'hydrant operator', shut('P1.intake1.bleeder')],
  [42, 'hydrant operator', open('P1.intake1', 6)],
  [50, 'hydrant operator', open('P1.discharge1', 12)],
  [52, 'attack operator', open('P4.intake1.bleeder', 1)],
  [320, 'attack operator', shut('P4.intake1.bleeder')],
  [322, 'attack operator', open('P4.intake1', 6)],
  [330, 'hydrant operator', { do: 'pump in gear', rig: 'P1', inGear: true }],
  [331, 'hydrant operator', { do: 'set governor', rig: 'P1', pdpPsi: 150 }],
  [332, 'attack operator', { do: 'pump in gear', rig: 'P4', inGear: true }],
  [333, 'attack operator', open('P4.discharge1', 6)],
  [334, 'attack operator', open('P4.discharge2', 6)],
  [345, 'attack operator', { do: 'set governor', rig: 'P4', pdpPsi: 170 }],
  [360, 'nozzle crew', open('N1.bale', 3)],
  [380, 'nozzle crew', open('N2.bale', 3)],
];

function played(start: DrillStart): Drill {
  const scene = sceneFromPlan(plan, { start });
  const drill = createDrill(scene, 3);
  while (drill.state.tick < 460 * TICKS_PER_S) {
    const { tick } = drill.state;
    const now: Submitted[] = relayRoles.flatMap((role) => playedBy(role, scene, drill.state));
    for (const [atS, role, action] of people) {
      if (atS * TICKS_PER_S !== tick) continue;
      if (action.do === 'couple' && start !== 'hose laid') continue;
      now.push({ role, action });
    }
    step(drill, now);
  }
  return drill;
}

describe.each(['hose laid', 'hose connected'] as const)(
  'the computer as relay operators of a plan without a script, from %s',
  (start) => {
    const drill = played(start);
    const { state } = drill;

    it('does nothing that is refused, and starves no pump', () => {
      expect(drill.log.filter((entry) => entry.kind === 'refused')).toEqual([]);
      const told = drill.log.flatMap((entry) => (entry.kind === 'event' ? [entry.event.kind] : []));
      for (const kind of ['prime lost', 'cavitating', 'air into pump', 'hose burst'] as const)
        expect(told).not.toContain(kind);
    });

    it('ends as the solver has the plan with every pump in the relay at its pressure', () => {
      const still = whatNow(plan).state;
      for (const rig of still.rigs) {
        const pump = state.pumps.find(({ rigId }) => rigId === rig.id)!;
        expect(Math.abs(pump.dischargePsi - rig.pdpPsi), rig.id).toBeLessThan(0.1);
        expect(Math.abs(pump.intakePsi - rig.intakePsi), rig.id).toBeLessThan(0.1);
      }
      for (const nozzle of still.nozzles) {
        const now = state.nozzles.find(({ id }) => id === nozzle.id)!;
        expect(Math.abs(now.flowGpm - nozzle.flowGpm)).toBeLessThan(0.1);
      }
      expect(planNow(drill.scene, state).rigs.map(({ setting }) => setting.mode)).toEqual(
        plan.rigs.map(({ setting }) => setting.mode),
      );
    });

    it('says that water is coming, once, each of them', () => {
      const coming = state.said.filter(({ preset }) => preset === 'water coming');
      expect(coming.map(({ role }) => role)).toEqual(['relay operator', 'second relay operator']);
      expect(drill.log.filter((e) => e.kind === 'action' && e.action.do === 'radio').length).toBe(
        2,
      );
    });
  },
);
