/** Every hard limit of a plan's supply side, as the room left under it in the network being searched. */
import { airPressurePsi, IN_HG_PER_PSI, type Network, PSI_PER_FT } from '@plugside/hydraulics';
import { hosePressureLimit, limitsFor, type PlanLimits } from '../catalogue/limits.ts';
import { capabilityAt, capabilityFor } from '../catalogue/pumps.ts';
import { isHardSuction, leastIntake } from '../limits/check-limits.ts';
import { wayToNext } from '../network/downstream.ts';
import { nodeOfPort } from '../network/pieces-to-links.ts';
import { hoseLink, type PlanNetwork } from '../network/plan-network.ts';
import { endElevations, greatestAlongPsi, leastBetweenPsi } from '../network/read-state.ts';
import type { Line, Plan, Rig } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';
import type { LimitKind } from './answers.ts';
import type { PumpGroup } from './pump-groups.ts';

export interface Constraint {
  kind: LimitKind;
  piece: string;
  /** Room left, as a share of the limit's scale; negative: passed. */
  room(): number;
  /** Met by the settings themselves while this group pumps. */
  metBy?: PumpGroup;
}

/** Main residuals, intakes, capabilities and hose of a supply side's network. */
export function constraintsOf(solved: PlanNetwork, groups: readonly PumpGroup[]): Constraint[] {
  const collector = new Collector(solved, groups);
  const { hydrants, rigs, lines } = solved.plan;
  for (const hydrant of hydrants) collector.addMain(hydrant.id);
  for (const rig of rigs) collector.addRig(rig);
  for (const line of lines) collector.addHose(line);
  return collector.constraints;
}

class Collector {
  readonly constraints: Constraint[] = [];
  readonly #plan: Plan;
  readonly #network: Network;
  readonly #groups: readonly PumpGroup[];
  readonly #limits: PlanLimits;
  readonly #nodes: ReadonlySet<string>;
  readonly #links: ReadonlySet<string>;
  readonly #ways = new Map<Rig, ReadonlySet<string>>();

  constructor({ plan, network }: PlanNetwork, groups: readonly PumpGroup[]) {
    this.#plan = plan;
    this.#network = network;
    this.#groups = groups;
    this.#limits = limitsFor(plan);
    this.#nodes = new Set(network.nodeIds);
    this.#links = new Set(network.linkIds);
  }

  addMain(hydrantId: string): void {
    const node = `${hydrantId}:main`;
    if (!this.#nodes.has(node)) return;
    const { pressurePsi } = this.#network;
    const at = this.#network.nodeIndex(node);
    const least = this.#limits.mainResidualPsi;
    this.constraints.push({
      kind: 'main residual',
      piece: hydrantId,
      room: () => (pressurePsi[at]! - least) / 50,
    });
  }

  addRig(rig: Rig): void {
    const node = `${rig.id}:intake`;
    if (!this.#nodes.has(node)) return;
    this.#addIntake(rig, this.#network.nodeIndex(node));
    if (this.#links.has(`${rig.id}:pump`)) this.#addCapability(rig);
  }

  #addIntake(rig: Rig, at: number): void {
    const plan = this.#plan;
    const network = this.#network;
    const limits = this.#limits;
    const feeding = plan.lines.filter(
      (line) =>
        splitPortRef(line.to).pieceId === rig.id &&
        this.#links.has(hoseLink(line)) &&
        line.valve !== 'shut',
    );
    if (feeding.length === 0 && rig.id !== plan.scene) return;
    const draft = plan.drafts.find((source) =>
      feeding.some((line) => splitPortRef(line.from).pieceId === source.id),
    );
    if (draft) {
      const vacuum =
        (limits.draftVacuumInHg * airPressurePsi(draft.altitudeFt)) / airPressurePsi(0);
      this.constraints.push({
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
    this.constraints.push(constraint);
  }

  #addCapability(rig: Rig): void {
    const network = this.#network;
    const { points } = capabilityFor(rig);
    const link = network.linkIndex(`${rig.id}:pump`);
    const into = network.nodeIndex(`${rig.id}:intake`);
    const out = network.nodeIndex(`${rig.id}:discharge`);
    const [wallGpm, wallPsi] = points[points.length - 1]!;
    const pump = this.#groups.flatMap(({ pumps }) => pumps).find((one) => one.rig === rig);
    this.constraints.push({
      kind: 'pump capability',
      piece: rig.id,
      room: () => {
        const net = network.pressurePsi[out]! - network.pressurePsi[into]!;
        const flow = network.flowGpm[link]!;
        // A pump works as soon as it makes up for what it loses of water that it lets through.
        const passPsi = rig.passLoss.lossPsi * (flow / rig.passLoss.atGpm) ** 2;
        if (!pump || pump.pdpPsi <= 0 || net <= 1e-6 - passPsi) return Number.POSITIVE_INFINITY;
        const byFlow = (wallGpm - flow) / rig.ratedGpm;
        const byNet = ((flow >= wallGpm ? wallPsi : capabilityAt(rig, flow)) - net) / 100;
        return Math.min(byFlow, byNet);
      },
    });
  }

  /** What a pump's water runs through to its next intakes; walked once. */
  #wayOf({ rig }: { rig: Rig }): ReadonlySet<string> {
    const way = this.#ways.get(rig) ?? wayToNext(this.#plan, rig.id).pieces;
    this.#ways.set(rig, way);
    return way;
  }

  addHose(line: Line): void {
    if (!this.#links.has(hoseLink(line)) || line.valve === 'shut') return;
    const plan = this.#plan;
    const network = this.#network;
    const { limitPsi } = hosePressureLimit(plan, line);
    const gated = typeof line.valve === 'object';
    const from = network.nodeIndex(gated ? `${line.id}:gate` : nodeOfPort(plan, line.from));
    const to = network.nodeIndex(nodeOfPort(plan, line.to));
    const { fromFt, toFt } = endElevations(plan, line);
    const risePsi = PSI_PER_FT * (toFt - fromFt);
    const frictionPsi = () => network.pressurePsi[from]! - network.pressurePsi[to]! - risePsi;
    this.constraints.push({
      kind: 'hose pressure',
      piece: line.id,
      room: () => {
        const inletPsi = network.pressurePsi[from]!;
        const outletPsi = network.pressurePsi[to]!;
        const greatestPsi = greatestAlongPsi(line, inletPsi, outletPsi, frictionPsi(), fromFt);
        return (limitPsi - greatestPsi) / 100;
      },
    });
    if (!line.terrain?.length || isHardSuction(plan, line)) return;
    const least = this.#limits.hilltopPsi;
    const spare = () =>
      leastBetweenPsi(line, network.pressurePsi[from]!, frictionPsi(), fromFt)! - least;
    const constraint: Constraint = {
      kind: 'hilltop pressure',
      piece: line.id,
      room: () => spare() / 50,
    };
    // The pump before a hill is set to bring the water over it.
    for (const group of this.#groups) {
      for (const pump of group.pumps) {
        if (!this.#wayOf(pump).has(line.id)) continue;
        pump.hills.push(spare);
        constraint.metBy = group;
      }
    }
    this.constraints.push(constraint);
  }
}
