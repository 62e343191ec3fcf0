/** The pumps before the scene, by the intakes that they feed. */
import { limitsFor } from '../catalogue/limits.ts';
import { leastIntake } from '../limits/check-limits.ts';
import { nextRigs } from '../network/downstream.ts';
import type { PlanNetwork } from '../network/plan-network.ts';
import type { Plan, Rig } from '../plan/plan.ts';

export interface GroupPump {
  rig: Rig;
  /** Its link in the network. */
  link: string;
  /** Setting [psi]; 0: no need to pump. */
  pdpPsi: number;
  /** By how much each hill before the next intakes has its least pressure [psi]. */
  hills: (() => number)[];
}

/** An intake that pumps feed: rig, node of the network, least pressure there. */
export interface Target {
  rig: string;
  node: number;
  leastPsi: number;
}

/** Pumps that feed the same next intakes. */
export interface PumpGroup {
  pumps: GroupPump[];
  targets: Target[];
  /** Those that rise and fall together until the intakes stand at their least; the others are held. */
  free: GroupPump[];
  /** Setting of the free ones [psi]. */
  pdpPsi: number;
  /** The step before: setting, what the intakes stood above their least, and how they follow the setting. */
  last: { pdpPsi: number; sparePsi: number; slope: number };
}

/** Pumps on the supply side that may be set, by the intakes they feed; nearest the scene first. */
export function groupsOf({ plan, network, covers }: PlanNetwork): PumpGroup[] {
  const limits = limitsFor(plan);
  const groups = new Map<string, PumpGroup>();
  const links = new Set(network.linkIds);
  for (const rig of plan.rigs) {
    const link = `${rig.id}:pump`;
    if (rig.id === plan.scene || rig.setting.mode === 'idle' || !links.has(link)) continue;
    const next = nextRigs(plan, rig.id).filter(covers).sort();
    if (next.length === 0) continue;
    const key = next.join('|');
    const group = groups.get(key) ?? {
      pumps: [],
      targets: next.map(targetOf),
      free: [],
      pdpPsi: 100,
      last: { pdpPsi: 100, sparePsi: 0, slope: 1 },
    };
    group.pumps.push({ rig, link, pdpPsi: group.pdpPsi, hills: [] });
    group.free = group.pumps;
    groups.set(key, group);
  }
  const order = [...groups.values()];
  const steps = ({ targets }: PumpGroup): number =>
    targets.some(({ rig }) => rig === plan.scene) ? 0 : 1 + depth(plan, targets[0]!.rig);
  return order.sort((one, two) => steps(one) - steps(two));

  function targetOf(id: string): Target {
    const rig = plan.rigs.find((candidate) => candidate.id === id)!;
    const node = network.nodeIndex(`${id}:intake`);
    return { rig: id, node, leastPsi: leastIntake(rig, limits).psi };
  }
}

/** Pumps between a rig and the scene. */
function depth(plan: Plan, rigId: string): number {
  let at = [rigId];
  for (let steps = 0; steps <= plan.rigs.length; steps++) {
    if (at.includes(plan.scene)) return steps;
    at = [...new Set(at.flatMap((id) => nextRigs(plan, id)))];
    if (at.length === 0) return plan.rigs.length;
  }
  return plan.rigs.length;
}
