import type { LimitValues, Line, Origin, Plan } from '../plan/plan.ts';
import { hoseCatalogue } from './hose.ts';
import { byDefault, practice, standard } from './origins.ts';

export const defaultLimits: Readonly<LimitValues> = {
  mainResidualPsi: 20,
  boosterIntakePsi: 10,
  hoseFedIntakePsi: 20,
  supplyHosePsi: 185,
  attackHosePsi: 250,
  hilltopPsi: 0,
  greatestIntakePsi: 150,
  nozzleLeastFraction: 0.8,
  nozzleGreatestFraction: 1.2,
  hoseVelocityFtS: 35,
  draftVacuumInHg: 22,
  leastDischargePsi: 50,
};

export const defaultLimitOrigins: Readonly<Record<keyof LimitValues, Origin>> = {
  mainResidualPsi: standard(
    'NFPA 291, chapter 4: keep 20 psi in the main, against backflow and collapse',
  ),
  boosterIntakePsi: practice(
    'Least intake at the hydrant, as in "Maximum Flow from Hydrants", FireHydrant.org',
  ),
  hoseFedIntakePsi: practice('"Relay Pumping Operations", Firehouse: 20 psi at the next pumper'),
  supplyHosePsi: practice(
    '"Comparing Four- and Five-Inch Large-Diameter Hose", Fire Apparatus; use the hose\'s marking',
  ),
  attackHosePsi: byDefault("No standard fixes it; use the hose's marking"),
  hilltopPsi: practice(
    'Common practice, no source: pressure all along the hose. Below the air’s, soft hose goes flat',
  ),
  greatestIntakePsi: byDefault('No standard fixes it; ask what the pump and its relief allow'),
  nozzleLeastFraction: byDefault('Smooth-bore flow tables begin at 40 psi for a 50 psi tip'),
  nozzleGreatestFraction: byDefault('As far above the rated pressure as below it'),
  hoseVelocityFtS: byDefault('A caution only; no standard fixes it'),
  draftVacuumInHg: practice(
    '"Ch 11 Static Water Supply Sources" study cards: greatest lift is 1.13 ft × 22 inHg',
  ),
  leastDischargePsi: practice(
    'Common practice, no source: few pumps hold less steadily. Set what your own do',
  ),
};

const departmentSet: Origin = { kind: 'department', text: 'Set by the department' };

export type PlanLimits = LimitValues & { origins: Record<keyof LimitValues, Origin> };

/** The limits that count for a plan: the department's own over the defaults, each with its origin. */
export function limitsFor(plan: Pick<Plan, 'department'>): PlanLimits {
  const own = plan.department.limits ?? {};
  const origin = plan.department.limitsOrigin ?? departmentSet;
  const limits: PlanLimits = { ...defaultLimits, origins: { ...defaultLimitOrigins } };
  for (const key of Object.keys(defaultLimits) as (keyof LimitValues)[]) {
    const value = own[key];
    if (value === undefined) continue;
    limits[key] = value;
    limits.origins[key] = origin;
  }
  return limits;
}

/** Greatest pressure for a line's hose [psi]: its own marking, else the limit of its class. */
export function hosePressureLimit(
  plan: Pick<Plan, 'department'>,
  line: Pick<Line, 'hose' | 'limitPsi'>,
): { limitPsi: number; origin: Origin } {
  if (line.limitPsi !== undefined) {
    return { limitPsi: line.limitPsi, origin: { kind: 'maker', text: "The hose's own marking" } };
  }
  const key = hoseCatalogue[line.hose].limitClass === 'supply' ? 'supplyHosePsi' : 'attackHosePsi';
  const { limits, limitsOrigin } = plan.department;
  const own = limits?.[key];
  // Asked for every line of every plan tried: without the whole table of limits.
  if (own === undefined) return { limitPsi: defaultLimits[key], origin: defaultLimitOrigins[key] };
  return { limitPsi: own, origin: limitsOrigin ?? departmentSet };
}
