/** What the operators set: pumps, handles, valves. */
import type { LimitValues, Plan, PumpSetting } from '@plugside/fireground';
import { patchAppliance, patchRig } from './pieces.ts';

/** Writes the settings that an answer found into the plan, so that they are "as set now". */
export function takeSettings(plan: Plan, answered: Plan): Plan {
  const rigs = plan.rigs.map((rig) => {
    const found = answered.rigs.find((one) => one.id === rig.id);
    return found ? { ...rig, setting: found.setting } : rig;
  });
  const lines = plan.lines.map((line) => {
    const found = answered.lines.find((one) => one.id === line.id);
    return found ? { ...line, valve: found.valve } : line;
  });
  const appliances = plan.appliances.map((one) => {
    const found = answered.appliances.find((other) => other.id === one.id);
    return one.kind === 'assist-valve' && found?.kind === 'assist-valve'
      ? { ...one, handle: found.handle }
      : one;
  });
  return { ...plan, rigs, lines, appliances };
}

export function setPump(plan: Plan, rigId: string, setting: PumpSetting): Plan {
  return patchRig(plan, rigId, { setting });
}

export function setHandle(plan: Plan, valveId: string, handle: 'hydrant' | 'boost'): Plan {
  return patchAppliance(plan, valveId, { handle });
}

/** A department's own value for a limit; `null` goes back to the usual one. */
export function setLimit(plan: Plan, key: keyof LimitValues, value: number | null): Plan {
  const { [key]: _, ...others } = plan.department.limits ?? {};
  const limits = value === null ? others : { ...others, [key]: value };
  return { ...plan, department: { ...plan.department, limits } };
}
