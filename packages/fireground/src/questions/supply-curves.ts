import { hosePressureLimit, limitsFor } from '../catalogue/limits.ts';
import { leastIntake } from '../limits/check-limits.ts';
import { planNetwork } from '../network/plan-network.ts';
import { sideSuctionLines } from '../patterns/side-suction-lines.ts';
import type { Plan } from '../plan/plan.ts';
import type { SupplyCurve } from './answers.ts';
import { withSettings } from './most-water.ts';
import { SupplySearch } from './supply-search.ts';
import { isBoosted, unassistedPlan } from './unassisted.ts';

const POINTS = 40;

/**
 * Pressure left at the scene's intake against flow: on hydrant pressure alone; with the pumps as high as
 * hose and capability let them go; and the same with more suction where side outlets are free. A curve
 * stops where a main or an intake falls under its least. Pumps beside each other are set each for its
 * own source at the greatest flow, as for the most water.
 * @throws NetworkError
 */
export function supplyCurves(plan: Plan): SupplyCurve[] {
  const curves = [curveOf('alone', 'Hydrant pressure alone', unassistedPlan(plan))];
  if (isBoosted(plan)) {
    curves.push(curveOf('boosted', 'Boosted', plan));
    const more = withMoreSuction(plan);
    if (more) curves.push(curveOf('more suction', 'Boosted, more suction', more));
  }
  return curves;
}

/** The plan with 5 in lines on every side outlet and intake left free; undefined where none is. */
export function withMoreSuction(plan: Plan): Plan | undefined {
  for (const hoses of [['5', '5'], ['5']] as const) {
    try {
      return sideSuctionLines(
        plan,
        hoses.map((hose) => ({ hose })),
      );
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return undefined;
}

function curveOf(id: string, label: string, plan: Plan): SupplyCurve {
  const search = new SupplySearch(plan);
  const mostGpm = search.greatestGpm();
  const highest = withSettings(plan, highestSettings(plan, search, mostGpm));
  const { network } = planNetwork(highest, { part: 'supply' });
  const limits = limitsFor(plan);
  const scene = `${plan.scene}:intake`;
  const nodes = new Set(network.nodeIds);
  const holds = () => {
    for (const hydrant of plan.hydrants) {
      if (
        nodes.has(`${hydrant.id}:main`) &&
        network.pressureOf(`${hydrant.id}:main`) < limits.mainResidualPsi - 0.05
      )
        return false;
    }
    for (const rig of plan.rigs) {
      if (rig.id === plan.scene || !nodes.has(`${rig.id}:intake`)) continue;
      const drafts = plan.lines.some(
        (line) =>
          line.to.startsWith(`${rig.id}.`) &&
          plan.drafts.some((d) => line.from.startsWith(`${d.id}.`)),
      );
      const least = drafts ? -10 : leastIntake(rig, limits).psi;
      if (rig.setting.mode !== 'idle' && network.pressureOf(`${rig.id}:intake`) < least - 0.05)
        return false;
    }
    return true;
  };
  const points: SupplyCurve['points'] = [];
  const furthest = Math.max(mostGpm * 1.15, 200);
  for (let at = 0; at <= POINTS; at++) {
    const flowGpm = (furthest * at) / POINTS;
    network.setDemandGpm(scene, flowGpm);
    network.solve({ warm: true });
    const intakePsi = network.pressureOf(scene);
    if (intakePsi < 0) break;
    points.push({ flowGpm, intakePsi });
    if (!holds() && at > 0) {
      points.pop();
      break;
    }
  }
  // The curve ends where the search ended, so that the mark sits on it.
  if (mostGpm > 0) {
    network.setDemandGpm(scene, mostGpm);
    network.solve({ warm: true });
    const end = { flowGpm: mostGpm, intakePsi: network.pressureOf(scene) };
    const after = points.findIndex((point) => point.flowGpm > mostGpm);
    if (after < 0) points.push(end);
    else points.splice(after, 0, end);
  }
  return { id, label, points, mostGpm };
}

/**
 * Each pump before the scene as high as the hose behind it allows [psi]. Pumps beside each other as high
 * as their own sources allow at the greatest flow: one setting for all would draw one of them too low.
 */
function highestSettings(plan: Plan, search: SupplySearch, mostGpm: number): Map<string, number> {
  const settings = new Map<string, number>();
  for (const rig of plan.rigs) {
    if (rig.id === plan.scene || rig.setting.mode === 'idle') continue;
    let highest = 1000;
    for (const line of plan.lines) {
      if (line.from.startsWith(`${rig.id}.`))
        highest = Math.min(highest, hosePressureLimit(plan, line).limitPsi);
    }
    settings.set(rig.id, highest);
  }
  if (!search.pumpsBesideEachOther || mostGpm <= 0) return settings;
  search.highestIntakePsi(mostGpm);
  // A pump at its capability gives what it can whatever it is set to, and more at less flow.
  const atCapability = search.tightest(1e-3).filter(({ kind }) => kind === 'pump capability');
  for (const [id, pdpPsi] of search.pdpPsi) {
    if (!atCapability.some(({ piece }) => piece === id)) settings.set(id, pdpPsi);
  }
  return settings;
}
