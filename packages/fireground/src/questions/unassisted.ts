import type { Plan } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';

/**
 * The plan on hydrant pressure alone: no pump before the scene pumps. A booster on an assist valve is
 * left out of the water's way (handle at hydrant, its lines shut); any other pump passes water.
 */
export function unassistedPlan(plan: Plan): Plan {
  const upstream = new Set(plan.rigs.filter((rig) => rig.id !== plan.scene).map((rig) => rig.id));
  const valves = plan.appliances.filter((appliance) => appliance.kind === 'assist-valve');
  const fedBack = new Set<string>();
  for (const valve of valves) {
    for (const line of plan.lines) {
      const to = splitPortRef(line.to);
      if (to.pieceId === valve.id && to.port === 'pump-discharge')
        fedBack.add(splitPortRef(line.from).pieceId);
    }
  }
  return {
    ...plan,
    rigs: plan.rigs.map((rig) =>
      upstream.has(rig.id) ? { ...rig, setting: { mode: 'idle' } } : rig,
    ),
    appliances: plan.appliances.map((appliance) =>
      appliance.kind === 'assist-valve' ? { ...appliance, handle: 'hydrant' } : appliance,
    ),
    lines: plan.lines.map((line) => {
      const ends = [splitPortRef(line.from).pieceId, splitPortRef(line.to).pieceId];
      return ends.some((id) => fedBack.has(id)) ? { ...line, valve: 'shut' } : line;
    }),
  };
}

/** Whether a pump before the scene is there to raise the supply's pressure. */
export function isBoosted(plan: Plan): boolean {
  return plan.rigs.some((rig) => rig.id !== plan.scene && rig.setting.mode !== 'idle');
}
