import { hosePressureLimit, limitsFor } from '../catalogue/limits.ts';
import { planNetwork } from '../network/plan-network.ts';
import { readState } from '../network/read-state.ts';
import type { Plan } from '../plan/plan.ts';
import { describeLine, nameOf } from '../plan/ports.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { type Say, sayIn } from '../words/say.ts';
import type { Notice, ShutOff, SupplyState } from './answers.ts';

/**
 * The pressure every hose and intake sees when flow stops with the pumps still set: all nozzles shut,
 * nothing else touched. A booster's setting then stands, less height, on the attack engine's intake.
 * @param flowing the state with water moving, for the pressures beside
 * @throws NetworkError
 */
export function shutOff(plan: Plan, flowing: SupplyState, units: UnitSystem = 'us'): ShutOff {
  const say = sayIn(units);
  const still = planNetwork({
    ...plan,
    nozzles: plan.nozzles.map((nozzle) => ({ ...nozzle, open: false })),
    appliances: plan.appliances.filter((appliance) => appliance.kind !== 'sprinkler'),
    lines: plan.lines.filter(
      (line) =>
        !plan.appliances.some((a) => a.kind === 'sprinkler' && line.to.startsWith(`${a.id}.`)),
    ),
  });
  still.network.solve();
  const state = readState(still);
  const notices: Notice[] = [];
  const lines = state.lines.map((line) => {
    const piece = plan.lines.find((candidate) => candidate.id === line.id)!;
    const { limitPsi } = hosePressureLimit(plan, piece);
    const passed = line.greatestPsi > limitPsi + 0.05;
    if (passed) {
      notices.push({
        level: 'caution',
        piece: line.id,
        text: `With the nozzles shut, ${overWords(say, line.greatestPsi, limitPsi)} stands in ${describeLine(plan, piece)}: its limit is ${say.bare(limitPsi, 'pressure')}.`,
      });
    }
    return {
      id: line.id,
      flowingPsi: flowing.lines.find((other) => other.id === line.id)?.greatestPsi ?? 0,
      shutPsi: line.greatestPsi,
      limitPsi,
      passed,
    };
  });
  const limitPsi = limitsFor(plan).greatestIntakePsi;
  const intakes = state.rigs
    .filter((rig) => Object.keys(rig.intakeGpm).length > 0)
    .map((rig) => {
      const piece = plan.rigs.find((candidate) => candidate.id === rig.id)!;
      const passed = rig.intakePsi > limitPsi + 0.05;
      if (passed) {
        notices.push({
          level: 'caution',
          piece: rig.id,
          text: `When the lines shut, ${overWords(say, rig.intakePsi, limitPsi)} comes onto ${nameOf(piece)}'s intake (limit ${say.bare(limitPsi, 'pressure')}). Set its intake relief and shut down slowly, from the fire end first.`,
        });
      }
      return {
        id: rig.id,
        flowingPsi: flowing.rigs.find((other) => other.id === rig.id)?.intakePsi ?? 0,
        shutPsi: rig.intakePsi,
        limitPsi,
        passed,
      };
    });
  return { lines, intakes, notices };
}

/** A pressure over its limit, where both read alike too [psi]. */
function overWords(say: Say, psi: number, limitPsi: number): string {
  const words = say.full(psi, 'pressure');
  return words === say.full(limitPsi, 'pressure') ? `a little more than ${words}` : words;
}
