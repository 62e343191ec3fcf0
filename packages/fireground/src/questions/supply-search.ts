/**
 * The supply side as a search: for a flow at the scene, the lowest discharge pressure of each pump
 * that keeps every next intake at its least, and the room that leaves under every hard limit.
 */
import { airPressurePsi, IN_HG_PER_PSI, type Network, PSI_PER_FT } from '@plugside/hydraulics';
import { hosePressureLimit, limitsFor } from '../catalogue/limits.ts';
import { capabilityAt, capabilityFor } from '../catalogue/pumps.ts';
import { leastIntake } from '../limits/check-limits.ts';
import { nextRigs } from '../network/downstream.ts';
import { nodeOfPort } from '../network/pieces-to-links.ts';
import { hoseLink, type PlanNetwork, planNetwork } from '../network/plan-network.ts';
import { endElevations, greatestAlongPsi } from '../network/read-state.ts';
import type { Line, Plan, Rig } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';
import type { LimitKind } from './answers.ts';
import { fallingRoot } from './root.ts';

/** Greatest discharge pressure a search will try [psi]. */
const MOST_PDP_PSI = 600;
/** Greatest flow a search will try [gpm]. */
const MOST_GPM = 20000;

/** Pumps that feed the same intakes share one setting. */
interface Group {
  rigs: Rig[];
  /** The next intakes: rig, node of the network, least pressure there. */
  targets: { rig: string; node: number; leastPsi: number }[];
  pdpPsi: number;
}

interface Constraint {
  kind: LimitKind;
  piece: string;
  /** Room left, as a share of the limit's scale; negative: passed. */
  room(): number;
  /** Met by the settings themselves while this group pumps. */
  metBy?: Group;
}

export class SupplySearch {
  readonly plan: Plan;
  readonly solved: PlanNetwork;
  readonly #network: Network;
  readonly #groups: Group[];
  readonly #constraints: Constraint[];
  readonly #room: number[];
  readonly #scene: string;
  /** Shut valves keep all water from the scene: no flow can be asked of it. */
  readonly dry: boolean;

  constructor(plan: Plan) {
    this.plan = plan;
    this.solved = planNetwork(plan, { part: 'supply', ideal: true });
    this.#network = this.solved.network;
    this.#scene = `${plan.scene}:intake`;
    this.#groups = groupsOf(plan, this.solved);
    this.#constraints = this.#constraintsOf();
    this.#room = this.#constraints.map(() => 0);
    this.#network.setDemandGpm(this.#scene, 0);
    this.#network.solve();
    this.dry = this.#network.cutOff[this.#network.nodeIndex(this.#scene)] === 1;
  }

  /** Discharge pressure by rig at the last flow tried [psi]; 0: no need to pump. */
  get pdpPsi(): Map<string, number> {
    return new Map(
      this.#groups.flatMap((group) => group.rigs.map((rig) => [rig.id, group.pdpPsi] as const)),
    );
  }

  /**
   * Sets the pumps for a flow and solves.
   * @returns the least room under any limit, as a share of its scale
   */
  roomAt(flowGpm: number): number {
    const network = this.#network;
    if (!this.dry) {
      network.setDemandGpm(this.#scene, flowGpm);
      this.#settle();
    }
    let least = Number.POSITIVE_INFINITY;
    this.#constraints.forEach((constraint, at) => {
      const met = !this.dry && constraint.metBy !== undefined && constraint.metBy.pdpPsi > 0;
      const room = met ? Number.POSITIVE_INFINITY : constraint.room();
      this.#room[at] = room;
      if (room < least) least = room;
    });
    return least;
  }

  /** Limits at the last flow tried whose room is `within` of the least, or under it. */
  tightest(within = 1e-4): { kind: LimitKind; piece: string; room: number }[] {
    const least = Math.min(...this.#room);
    return this.#constraints
      .map(({ kind, piece }, at) => ({ kind, piece, room: this.#room[at]! }))
      .filter(({ room }) => room <= Math.max(least, 0) + within);
  }

  /** Greatest flow within every hard limit [gpm], the pumps left set for it; 0 where a limit fails at rest. */
  greatestGpm(): number {
    const rest = this.roomAt(0);
    if (rest < 0) return 0;
    let low = 0;
    let lowValue = rest;
    let high = 800;
    let highValue = this.roomAt(high);
    while (highValue >= 0) {
      low = high;
      lowValue = highValue;
      high *= 2;
      if (high > MOST_GPM) return low;
      highValue = this.roomAt(high);
    }
    const root = fallingRoot((q) => this.roomAt(q), { low, high, lowValue, highValue }, 1e-6);
    this.roomAt(root);
    return root;
  }

  /** Raises or lowers each group until its next intakes stand at their least. */
  #settle(): void {
    const network = this.#network;
    const groups = this.#groups;
    for (const group of groups) {
      if (group.pdpPsi <= 0) group.pdpPsi = 100;
      apply(network, group);
    }
    network.solve({ warm: true });
    if (groups.length === 0) return;
    // With the flow given, an intake follows the pump before it psi for psi, so one step is often all.
    for (let round = 0; round < 4; round++) {
      let worst = 0;
      for (const group of groups) {
        const short = -this.#spare(group);
        const next = Math.min(MOST_PDP_PSI, Math.max(0, group.pdpPsi + short));
        worst = Math.max(worst, Math.abs(next - group.pdpPsi));
        group.pdpPsi = next;
        apply(network, group);
      }
      network.solve({ warm: true });
      if (worst < 1e-7) return;
    }
    // Where pumps share water with other paths: one group at a time, last before the scene first.
    for (let sweep = 0; sweep < 12; sweep++) {
      let worst = 0;
      for (const group of groups) {
        const before = group.pdpPsi;
        this.#settleGroup(group);
        worst = Math.max(worst, Math.abs(group.pdpPsi - before));
      }
      if (worst < 1e-6) return;
    }
  }

  #settleGroup(group: Group): void {
    const network = this.#network;
    const shortAt = (pdpPsi: number) => {
      group.pdpPsi = pdpPsi;
      apply(network, group);
      network.solve({ warm: true });
      return -this.#spare(group);
    };
    const atRest = shortAt(0);
    if (atRest <= 0) return;
    const atMost = shortAt(MOST_PDP_PSI);
    if (atMost >= 0) return;
    const root = fallingRoot(
      shortAt,
      { low: 0, high: MOST_PDP_PSI, lowValue: atRest, highValue: atMost },
      1e-8,
    );
    shortAt(root);
  }

  /** Least pressure [psi] by which the group's next intakes stand above their least. */
  #spare(group: Group): number {
    let least = Number.POSITIVE_INFINITY;
    for (const { node, leastPsi } of group.targets) {
      least = Math.min(least, this.#network.pressurePsi[node]! - leastPsi);
    }
    return least;
  }

  #constraintsOf(): Constraint[] {
    const { plan } = this;
    const network = this.#network;
    const limits = limitsFor(plan);
    const nodes = new Set(network.nodeIds);
    const links = new Set(network.linkIds);
    const constraints: Constraint[] = [];
    for (const hydrant of plan.hydrants) {
      const node = `${hydrant.id}:main`;
      if (!nodes.has(node)) continue;
      const at = network.nodeIndex(node);
      constraints.push({
        kind: 'main residual',
        piece: hydrant.id,
        room: () => (network.pressurePsi[at]! - limits.mainResidualPsi) / 50,
      });
    }
    for (const rig of plan.rigs) {
      const node = `${rig.id}:intake`;
      if (!nodes.has(node)) continue;
      this.#addIntake(constraints, rig, network.nodeIndex(node), links);
      if (links.has(`${rig.id}:pump`)) this.#addCapability(constraints, rig);
    }
    for (const line of plan.lines) {
      if (links.has(hoseLink(line)) && line.valve !== 'shut') this.#addHose(constraints, line);
    }
    return constraints;
  }

  #addIntake(constraints: Constraint[], rig: Rig, at: number, links: Set<string>): void {
    const { plan } = this;
    const network = this.#network;
    const limits = limitsFor(plan);
    const feeding = plan.lines.filter(
      (line) =>
        splitPortRef(line.to).pieceId === rig.id &&
        links.has(hoseLink(line)) &&
        line.valve !== 'shut',
    );
    if (feeding.length === 0 && rig.id !== plan.scene) return;
    const draft = plan.drafts.find((source) =>
      feeding.some((line) => splitPortRef(line.from).pieceId === source.id),
    );
    if (draft) {
      const vacuum =
        (limits.draftVacuumInHg * airPressurePsi(draft.altitudeFt)) / airPressurePsi(0);
      constraints.push({
        kind: 'draft vacuum',
        piece: rig.id,
        room: () => (vacuum + network.pressurePsi[at]! * IN_HG_PER_PSI) / 15,
      });
      return;
    }
    if (network.cutOff[at] && rig.id !== plan.scene) return;
    const { kind, psi } = leastIntake(rig, limits);
    const metBy = this.#groups.find((group) =>
      group.targets.some((target) => target.rig === rig.id),
    );
    const constraint: Constraint = {
      kind,
      piece: rig.id,
      room: () => (network.pressurePsi[at]! - psi) / 50,
    };
    if (metBy) constraint.metBy = metBy;
    constraints.push(constraint);
  }

  #addCapability(constraints: Constraint[], rig: Rig): void {
    const network = this.#network;
    const { points } = capabilityFor(rig);
    const pump = network.linkIndex(`${rig.id}:pump`);
    const into = network.nodeIndex(`${rig.id}:intake`);
    const out = network.nodeIndex(`${rig.id}:discharge`);
    const [wallGpm, wallPsi] = points[points.length - 1]!;
    const group = this.#groups.find((candidate) => candidate.rigs.includes(rig));
    constraints.push({
      kind: 'pump capability',
      piece: rig.id,
      room: () => {
        const net = network.pressurePsi[out]! - network.pressurePsi[into]!;
        if (!group || group.pdpPsi <= 0 || net <= 1e-9) return Number.POSITIVE_INFINITY;
        const flow = network.flowGpm[pump]!;
        const byFlow = (wallGpm - flow) / rig.ratedGpm;
        const byNet = ((flow >= wallGpm ? wallPsi : capabilityAt(rig, flow)) - net) / 100;
        return Math.min(byFlow, byNet);
      },
    });
  }

  #addHose(constraints: Constraint[], line: Line): void {
    const { plan } = this;
    const network = this.#network;
    const { limitPsi } = hosePressureLimit(plan, line);
    const gated = typeof line.valve === 'object';
    const from = network.nodeIndex(gated ? `${line.id}:gate` : nodeOfPort(plan, line.from));
    const to = network.nodeIndex(nodeOfPort(plan, line.to));
    const { fromFt, toFt } = endElevations(plan, line);
    const risePsi = PSI_PER_FT * (toFt - fromFt);
    constraints.push({
      kind: 'hose pressure',
      piece: line.id,
      room: () => {
        const inletPsi = network.pressurePsi[from]!;
        const outletPsi = network.pressurePsi[to]!;
        const frictionPsi = inletPsi - outletPsi - risePsi;
        const greatestPsi = greatestAlongPsi(line, inletPsi, outletPsi, frictionPsi, fromFt);
        return (limitPsi - greatestPsi) / 100;
      },
    });
  }
}

function apply(network: Network, group: Group): void {
  for (const rig of group.rigs) network.setPdpPsi(`${rig.id}:pump`, group.pdpPsi);
}

/** Pumps on the supply side that may be set, by the intakes they feed; nearest the scene first. */
function groupsOf(plan: Plan, solved: PlanNetwork): Group[] {
  const { network } = solved;
  const limits = limitsFor(plan);
  const groups = new Map<string, Group>();
  const links = new Set(network.linkIds);
  for (const rig of plan.rigs) {
    if (rig.id === plan.scene || rig.setting.mode === 'idle' || !links.has(`${rig.id}:pump`))
      continue;
    const next = nextRigs(plan, rig.id)
      .filter((id) => solved.covers(id))
      .sort();
    if (next.length === 0) continue;
    const key = next.join('|');
    const group = groups.get(key) ?? { rigs: [], targets: next.map(targetOf), pdpPsi: 100 };
    group.rigs.push(rig);
    groups.set(key, group);
  }
  const order = [...groups.values()];
  const steps = ({ targets }: Group): number =>
    targets.some(({ rig }) => rig === plan.scene) ? 0 : 1 + depth(plan, targets[0]!.rig);
  return order.sort((one, two) => steps(one) - steps(two));

  function targetOf(id: string): Group['targets'][number] {
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
