/** Changes to one piece of a plan. Every edit returns a new plan and leaves the old one alone. */
import {
  type Appliance,
  type HoseSize,
  type Hydrant,
  type Line,
  type Nozzle,
  type Plan,
  type Rig,
  splitPortRef,
} from '@plugside/fireground';

function patched<T extends { id: string }>(
  list: readonly T[],
  id: string,
  patch: Partial<T>,
): readonly T[] {
  return list.map((one) => (one.id === id ? { ...one, ...patch } : one));
}

export function patchHydrant(plan: Plan, id: string, patch: Partial<Hydrant>): Plan {
  return { ...plan, hydrants: patched(plan.hydrants, id, patch) };
}

export function patchRig(plan: Plan, id: string, patch: Partial<Rig>): Plan {
  return { ...plan, rigs: patched(plan.rigs, id, patch) };
}

export function patchLine(plan: Plan, id: string, patch: Partial<Line>): Plan {
  return { ...plan, lines: patched(plan.lines, id, patch) };
}

/** Another hose: a coefficient that was measured on the old one goes with it. */
export function changeHose(plan: Plan, id: string, hose: HoseSize): Plan {
  const lines = plan.lines.map((one) => {
    if (one.id !== id) return one;
    const { coefficient: _own, coefficientOrigin: _origin, ...line } = one;
    return { ...line, hose };
  });
  return { ...plan, lines };
}

/** A nozzle is one of several kinds, so the patch is a function from nozzle to nozzle. */
export function changeNozzle(plan: Plan, id: string, change: (nozzle: Nozzle) => Nozzle): Plan {
  return { ...plan, nozzles: plan.nozzles.map((one) => (one.id === id ? change(one) : one)) };
}

export function patchAppliance<T extends Appliance>(
  plan: Plan,
  id: string,
  patch: Partial<T>,
): Plan {
  const appliances = plan.appliances.map((one) =>
    one.id === id ? ({ ...one, ...patch } as Appliance) : one,
  );
  return { ...plan, appliances };
}

/** Puts a nozzle at a height [ft], and with it the monitor that it sits on. */
export function raiseNozzle(plan: Plan, id: string, elevationFt: number): Plan {
  const on = plan.nozzles.find((one) => one.id === id)?.on;
  const raised = changeNozzle(plan, id, (one) => ({ ...one, elevationFt }));
  return on ? patchAppliance(raised, splitPortRef(on).pieceId, { elevationFt }) : raised;
}
