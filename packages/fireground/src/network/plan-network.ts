/** A plan as a network to solve. */
import {
  buildNetwork,
  type LinkSpec,
  type Network,
  NetworkError,
  type NetworkSpec,
} from '@plugside/hydraulics';
import { coefficientFor } from '../catalogue/hose.ts';
import type { Line, Plan, PortRef } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';
import { downstreamOf } from './downstream.ts';
import {
  addAppliance,
  addDraftSource,
  addHydrant,
  addNode,
  addNozzle,
  addRigIntake,
  addRigPump,
  addSharedMain,
  type Draft,
  nodeOfPort,
} from './pieces-to-links.ts';
import { sharedMains } from './shared-mains.ts';

/** Which part of a plan a network covers. */
export type Part =
  /** Everything. */
  | 'whole'
  /** Sources to the scene rig's intake, where the flow is a demand. */
  | 'supply'
  /** From the scene rig's discharge on; its discharge pressure is fixed. */
  | 'attack';

export interface PlanNetwork {
  plan: Plan;
  part: Part;
  spec: NetworkSpec;
  network: Network;
  /** Whether a line, rig, appliance or nozzle is in the network. */
  covers(id: string): boolean;
}

export interface PlanNetworkOptions {
  part?: Part;
  /** Pumps without a capability limit (see `pumpLinkOf`). */
  ideal?: boolean;
  /** Nozzles and sprinklers as fixed demands [gpm] by id instead of openings. */
  demandsGpm?: ReadonlyMap<string, number>;
}

/** Name of a line's hose link. */
export function hoseLink(line: Pick<Line, 'id'>): string {
  return `${line.id}:hose`;
}

/**
 * Builds the network of a plan or of a part of it.
 * @throws NetworkError where no water can get to a piece or a pump, in the plan's own names
 */
export function planNetwork(plan: Plan, options: PlanNetworkOptions = {}): PlanNetwork {
  const { part = 'whole', ideal = false, demandsGpm } = options;
  const past = part === 'whole' ? new Set<string>() : downstreamOf(plan, plan.scene);
  const covers = (id: string) =>
    part === 'whole' || id === plan.scene || (part === 'attack') === past.has(id);
  const draft: Draft = { nodes: new Map(), links: [] };

  const lines = plan.lines.filter((line) => covers(line.id));
  const ports = new Set<PortRef>();
  for (const line of lines) {
    ports.add(line.from);
    ports.add(line.to);
  }
  for (const appliance of plan.appliances)
    if (appliance.kind === 'assist-valve') ports.add(appliance.on);
  const used = (port: PortRef) => ports.has(port);
  const touched = new Set([...ports].map((port) => splitPortRef(port).pieceId));

  if (part !== 'attack') {
    const shared = sharedMains(plan);
    const sharing = new Set(shared.flatMap(({ hydrants }) => hydrants));
    for (const main of shared) addSharedMain(draft, main, used);
    for (const hydrant of plan.hydrants)
      if (touched.has(hydrant.id) && !sharing.has(hydrant)) addHydrant(draft, hydrant, used);
    for (const source of plan.drafts) addDraftSource(draft, source, used);
  }
  for (const rig of plan.rigs) {
    if (!covers(rig.id)) continue;
    const scene = rig.id === plan.scene;
    if (scene && part === 'attack') {
      addNode(draft, `${rig.id}:discharge`, rig.elevationFt, { fixedPsi: 100 });
      continue;
    }
    if (!touched.has(rig.id) && !(rig.tankGal && rig.tankValve === 'open')) continue;
    if (scene && part === 'supply') {
      addNode(draft, `${rig.id}:intake`, rig.elevationFt, { demandGpm: 0 });
      addRigIntake(draft, rig, used);
      continue;
    }
    addRigIntake(draft, rig, used);
    addRigPump(draft, rig, ideal);
  }
  for (const appliance of plan.appliances) {
    if (!covers(appliance.id)) continue;
    if (!touched.has(appliance.id)) continue;
    addAppliance(draft, appliance, used);
  }
  for (const line of lines) addLine(draft, plan, line);
  for (const nozzle of plan.nozzles) {
    if (!covers(nozzle.id)) continue;
    const port = nozzle.on ?? `${nozzle.id}.inlet`;
    if (!used(port) && !(nozzle.on && touched.has(splitPortRef(nozzle.on).pieceId))) continue;
    addNozzle(draft, nozzle, nodeOfPort(plan, port));
  }
  const spec = replaceDemands({ nodes: [...draft.nodes.values()], links: draft.links }, demandsGpm);
  return { plan, part, spec, network: buildNamed(spec), covers };
}

function addLine(draft: Draft, plan: Plan, line: Line): void {
  const { coefficient } = coefficientFor(plan, line);
  let from = endNode(draft, plan, line.from);
  const to = endNode(draft, plan, line.to);
  if (typeof line.valve === 'object') {
    const gate = addNode(draft, `${line.id}:gate`, draft.nodes.get(from)?.elevationFt ?? 0);
    draft.links.push({ kind: 'loss', id: `${line.id}:valve`, from, to: gate, ...line.valve.gated });
    from = gate;
  }
  const link: LinkSpec = {
    kind: 'hose',
    id: hoseLink(line),
    from,
    to,
    coefficient,
    lengthFt: line.lengthFt,
    lines: line.count,
  };
  if (line.check) link.check = true;
  if (line.valve === 'shut') link.shut = true;
  draft.links.push(link);
}

function endNode(draft: Draft, plan: Plan, ref: PortRef): string {
  const node = nodeOfPort(plan, ref);
  if (!draft.nodes.has(node)) {
    const { pieceId } = splitPortRef(ref);
    const nozzle = plan.nozzles.find((candidate) => candidate.id === pieceId);
    addNode(draft, node, nozzle?.elevationFt ?? 0);
  }
  return node;
}

/** Openings to the air become demands at their nodes; those not named stay openings. */
function replaceDemands(
  spec: NetworkSpec,
  demandsGpm: ReadonlyMap<string, number> | undefined,
): NetworkSpec {
  if (!demandsGpm) return spec;
  const demandAt = new Map<string, number>();
  const links = spec.links.filter((link) => {
    if (link.kind !== 'nozzle' && link.kind !== 'automaticNozzle') return true;
    const gpm = demandsGpm.get(link.id.slice(0, link.id.lastIndexOf(':')));
    if (gpm === undefined) return true;
    if (!link.shut) demandAt.set(link.from, (demandAt.get(link.from) ?? 0) + gpm);
    return false;
  });
  const nodes = spec.nodes.map((node) => {
    const gpm = demandAt.get(node.id);
    return gpm === undefined ? node : { ...node, demandGpm: gpm };
  });
  return { nodes, links };
}

/** Builds, with node names of a failure turned into the plan's own. */
function buildNamed(spec: NetworkSpec): Network {
  try {
    return buildNetwork(spec);
  } catch (error) {
    if (!(error instanceof NetworkError)) throw error;
    const plain = (name: string) => name.replace(/[:.].*$/, '');
    const pieces = [...new Set(error.pieces.map(plain))];
    const message =
      error.code === 'pump fed by nothing'
        ? `${pieces[0]} is fed by nothing: no hydrant, draft source, open tank or other pump reaches its intake. Run a line to one of its intakes.`
        : error.code === 'disconnected part'
          ? `No water can reach ${pieces.slice(0, 5).join(', ')}. Join it to a source with a line, or take it out of the plan.`
          : error.code === 'no source'
            ? 'Nothing feeds this plan. Add a hydrant, a draft source or an open tank, and a line from it.'
            : error.message;
    throw new NetworkError(error.code, message, pieces, error.best);
  }
}
