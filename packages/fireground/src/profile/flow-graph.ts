import type { Line, Plan, PortRef } from '../plan/plan.ts';
import { kindOf, pieceOf, portOf, splitPortRef } from '../plan/ports.ts';
import type {
  AssistValveState,
  HydrantState,
  LineState,
  RigState,
  SupplyState,
} from '../questions/answers.ts';
import { acrossLine } from './across-line.ts';
import type { Place, Stretch } from './place.ts';
import type { ProfileSpan } from './profile.ts';

/** Flow [gpm] under which water counts as still. */
export const STILL_GPM = 0.05;

/** Water on its way from one place to another. */
export interface FlowEdge {
  from: string;
  to: string;
  /** [gpm], 0 or more; still water stands in the direction it would flow. */
  flowGpm: number;
  stretches: Stretch[];
}

/** Where water is and how it goes on, as a solved plan shows it. */
export interface FlowGraph {
  places: Map<string, Place>;
  edges: FlowEdge[];
}

/** The place inside a piece that is no port: a main, a pump's either side, a tank, open water. */
export const mainOf = (id: string) => `${id}.main`;
export const surfaceOf = (id: string) => `${id}.surface`;
export const tankOf = (id: string) => `${id}.tank`;
export const pumpInOf = (id: string) => `${id}.pump-in`;
export const pumpOutOf = (id: string) => `${id}.pump-out`;

const byId = <State extends { id: string }>(states: readonly State[]) =>
  new Map(states.map((each) => [each.id, each]));

/** Every way that water goes, or could go where all is still, between the places of a solved plan. */
export function flowGraph(plan: Plan, state: SupplyState): FlowGraph {
  const graph: FlowGraph = { places: new Map(), edges: [] };
  const lines = plan.lines.flatMap((line) => {
    const solved = state.lines.find(({ id }) => id === line.id);
    return solved ? [{ line, solved }] : [];
  });
  const rigs = byId(state.rigs);
  for (const hydrant of state.hydrants) addHydrant(graph, plan, hydrant);
  for (const valve of state.assistValves) addAssistValve(graph, plan, valve);
  for (const rig of plan.rigs) {
    const solved = rigs.get(rig.id);
    if (!solved) continue;
    // A state of the supply side alone has no flow through the scene's pump, only up to it.
    const flowGpm =
      rig.id === plan.scene ? Math.max(solved.flowGpm, state.sceneGpm) : solved.flowGpm;
    addPump(graph, rig.elevationFt, { ...solved, flowGpm });
  }
  for (const { line, solved } of lines) addLine(graph, plan, line, solved);
  addNozzles(graph, plan, state);
  addOtherPieces(graph, plan, state, lines);
  return graph;
}

/** Height of a port [ft]; a standpipe's outlets are not where its connection is. */
function elevationAt(plan: Plan, ref: PortRef): number {
  const piece = portOf(plan, ref)?.piece ?? pieceOf(plan, splitPortRef(ref).pieceId);
  if (!piece) return 0;
  if ('waterElevationFt' in piece) return piece.waterElevationFt;
  const outlet = splitPortRef(ref).port.startsWith('outlet');
  if ('outletElevationFt' in piece && outlet) return piece.outletElevationFt;
  return piece.elevationFt;
}

function kindAt(plan: Plan, ref: PortRef): Place['kind'] {
  const found = portOf(plan, ref);
  if (!found) return 'appliance';
  const kind = kindOf(found.piece);
  if (kind === 'rig') return found.port.direction === 'in' ? 'intake' : 'discharge';
  if (kind === 'hydrant' || kind === 'draft') return 'outlet';
  return kind === 'nozzle' ? 'nozzle' : 'appliance';
}

function placeAt(plan: Plan, ref: PortRef, psi: number): Place {
  const { pieceId, port } = splitPortRef(ref);
  const elevationFt = elevationAt(plan, ref);
  return { piece: pieceId, port, kind: kindAt(plan, ref), elevationFt, psi };
}

function addPlace(graph: FlowGraph, key: string, place: Place) {
  if (!graph.places.has(key)) graph.places.set(key, place);
}

function addWithin(graph: FlowGraph, from: string, to: string, piece: string, flowGpm: number) {
  const span: ProfileSpan = { kind: 'piece', piece };
  graph.edges.push({ from, to, flowGpm, stretches: [{ span, lengthFt: 0 }] });
}

function addHydrant(graph: FlowGraph, plan: Plan, hydrant: HydrantState) {
  const { id, mainPsi } = hydrant;
  const elevationFt = plan.hydrants.find((each) => each.id === id)?.elevationFt ?? 0;
  addPlace(graph, mainOf(id), { piece: id, kind: 'main', elevationFt, psi: mainPsi });
  for (const outlet of hydrant.outlets) {
    const ref = outlet.port.startsWith(`${id}.`) ? outlet.port : `${id}.${outlet.port}`;
    addPlace(graph, ref, placeAt(plan, ref, outlet.psi));
    addWithin(graph, mainOf(id), ref, id, Math.max(0, outlet.flowGpm));
  }
}

function addAssistValve(graph: FlowGraph, plan: Plan, valve: AssistValveState) {
  const piece = plan.appliances.find((each) => each.id === valve.id);
  if (piece?.kind !== 'assist-valve') return;
  const { id, supplyPsi, suctionPsi, dischargePsi } = valve;
  const supply = `${id}.supply`;
  addPlace(graph, piece.on, placeAt(plan, piece.on, valve.hydrantPsi));
  addPlace(graph, supply, placeAt(plan, supply, supplyPsi));
  if (valve.clapper === 'open') addWithin(graph, piece.on, supply, id, valve.clapperGpm);
  if (suctionPsi !== undefined && valve.handle === 'boost') {
    const suction = `${id}.pump-suction`;
    addPlace(graph, suction, placeAt(plan, suction, suctionPsi));
    addWithin(graph, piece.on, suction, id, valve.suctionGpm);
  }
  if (dischargePsi !== undefined) {
    const discharge = `${id}.pump-discharge`;
    addPlace(graph, discharge, placeAt(plan, discharge, dischargePsi));
    addWithin(graph, discharge, supply, id, valve.dischargeGpm);
  }
}

function addPump(graph: FlowGraph, elevationFt: number, rig: RigState) {
  const { id, intakePsi, pdpPsi, flowGpm, tankGpm } = rig;
  const intake: Place = { piece: id, kind: 'intake', elevationFt, psi: intakePsi };
  addPlace(graph, pumpInOf(id), intake);
  addPlace(graph, pumpOutOf(id), { piece: id, kind: 'discharge', elevationFt, psi: pdpPsi });
  graph.edges.push({
    from: pumpInOf(id),
    to: pumpOutOf(id),
    flowGpm: Math.max(0, flowGpm),
    stretches: [{ span: { kind: 'pump', rig: id }, lengthFt: 0 }],
  });
  if (tankGpm > STILL_GPM) {
    addPlace(graph, tankOf(id), { piece: id, port: 'tank', kind: 'water', elevationFt, psi: 0 });
    addWithin(graph, tankOf(id), pumpInOf(id), id, tankGpm);
  }
}

function addLine(graph: FlowGraph, plan: Plan, line: Line, solved: LineState) {
  addPlace(graph, line.from, placeAt(plan, line.from, solved.inletPsi));
  addPlace(graph, line.to, placeAt(plan, line.to, solved.outletPsi));
  if (line.valve === 'shut') return;
  const fromFt = elevationAt(plan, line.from);
  const stretches = acrossLine(line, solved, fromFt);
  if (solved.flowGpm >= -STILL_GPM) {
    const flowGpm = Math.max(0, solved.flowGpm);
    graph.edges.push({ from: line.from, to: line.to, flowGpm, stretches });
  } else {
    graph.edges.push({
      from: line.to,
      to: line.from,
      flowGpm: -solved.flowGpm,
      stretches: turned(stretches),
    });
  }
}

/** The same stretches walked the other way. */
function turned(stretches: readonly Stretch[]): Stretch[] {
  return [...stretches].reverse().map(({ span, lengthFt }, index, reversed) => {
    const end = reversed[index + 1]?.end;
    return end ? { span, lengthFt, end } : { span, lengthFt };
  });
}

function addNozzles(graph: FlowGraph, plan: Plan, state: SupplyState) {
  const solved = byId(state.nozzles);
  for (const nozzle of plan.nozzles) {
    const found = solved.get(nozzle.id);
    const inlet = `${nozzle.id}.inlet`;
    if (!found) continue;
    graph.places.set(inlet, placeAt(plan, inlet, found.pressurePsi));
    if (nozzle.on) addWithin(graph, nozzle.on, inlet, nozzle.id, found.flowGpm);
  }
}

interface SolvedLine {
  line: Line;
  solved: LineState;
}

/** Draft sources, rigs' ports and plain appliances: water that enters a piece leaves it again. */
function addOtherPieces(graph: FlowGraph, plan: Plan, state: SupplyState, lines: SolvedLine[]) {
  for (const draft of plan.drafts) {
    const ref = `${draft.id}.water`;
    if (!graph.places.has(ref)) continue;
    const elevationFt = draft.waterElevationFt;
    addPlace(graph, surfaceOf(draft.id), { piece: draft.id, kind: 'water', elevationFt, psi: 0 });
    const taken = lines
      .filter(({ line }) => line.from === ref || line.to === ref)
      .reduce((sum, { solved }) => sum + Math.abs(solved.flowGpm), 0);
    addWithin(graph, surfaceOf(draft.id), ref, draft.id, taken);
  }
  for (const rig of plan.rigs) {
    for (const { ref, flowGpm, direction } of endsOn(lines, rig.id)) {
      if (direction === 'in') addWithin(graph, ref, pumpInOf(rig.id), rig.id, flowGpm);
      else addWithin(graph, pumpOutOf(rig.id), ref, rig.id, flowGpm);
    }
  }
  const solved = byId(state.appliances);
  for (const piece of plan.appliances) {
    const found = solved.get(piece.id);
    if (piece.kind === 'assist-valve' || !found) continue;
    const ends = endsOn(lines, piece.id);
    for (const nozzle of plan.nozzles) {
      if (!nozzle.on || splitPortRef(nozzle.on).pieceId !== piece.id) continue;
      addPlace(graph, nozzle.on, placeAt(plan, nozzle.on, found.outletPsi));
      ends.push({ ref: nozzle.on, flowGpm: found.flowGpm, direction: 'out' });
    }
    const entering = ends.filter(({ direction }) => direction === 'in');
    for (const leaving of ends.filter(({ direction }) => direction === 'out')) {
      for (const { ref, flowGpm } of entering) {
        addWithin(graph, ref, leaving.ref, piece.id, Math.min(flowGpm, leaving.flowGpm));
      }
    }
  }
}

interface LineEnd {
  ref: PortRef;
  flowGpm: number;
  direction: 'in' | 'out';
}

/** Ports of a piece that have a line on them, and whether water enters or leaves there. */
function endsOn(lines: readonly SolvedLine[], pieceId: string): LineEnd[] {
  return lines.flatMap(({ line, solved }) =>
    [line.from, line.to]
      .filter((ref) => splitPortRef(ref).pieceId === pieceId)
      .map((ref): LineEnd => {
        const flowGpm = Math.abs(solved.flowGpm);
        const forward = solved.flowGpm >= -STILL_GPM;
        return { ref, flowGpm, direction: forward === (ref === line.to) ? 'in' : 'out' };
      }),
  );
}
