import type { Plan } from '../plan/plan.ts';
import { nameOf, pieceOf } from '../plan/ports.ts';
import type { SupplyState } from '../questions/answers.ts';
import { mainFeed, mainWay } from './choose-path.ts';
import {
  type FlowEdge,
  type FlowGraph,
  flowGraph,
  mainOf,
  pumpOutOf,
  STILL_GPM,
  surfaceOf,
  tankOf,
} from './flow-graph.ts';
import type { Place } from './place.ts';
import type { PressureProfile, ProfilePath, ProfileSpan, ProfileStation } from './profile.ts';
import { supplyRegion } from './regions.ts';

/** Two stations of one piece nearer than this [psi] are drawn as one. */
const SAME_PSI = 0.05;

interface Source {
  id: string;
  place: string;
  flowGpm: number;
}

/**
 * Pressure against distance in a solved plan: from each source to the scene rig's discharge,
 * and from there to each open nozzle and sprinkler connection. Where water parts, a path
 * follows the greatest flow; where all is still, it follows the way that water would take.
 * Distances in ft of hose, pressures in psi gauge. A source that gives nothing while another
 * flows has no path; neither has a nozzle that the scene rig does not feed.
 */
export function profileOf(plan: Plan, state: SupplyState): PressureProfile {
  const graph = flowGraph(plan, state);
  const flowing = graph.edges.filter(({ flowGpm }) => flowGpm > STILL_GPM);
  const scene = pumpOutOf(plan.scene);
  const sources = sourcesOf(plan, state, graph);
  const regionOf = supplyRegion(plan);

  const supplyAlong = (edges: readonly FlowEdge[]) =>
    sources.flatMap((source): ProfilePath[] => {
      const way = mainWay(edges, source.place, scene);
      if (!way) return [];
      const { stations, spans } = measured(graph, source.place, way);
      return [
        {
          id: `supply:${source.id}`,
          label: `${nameById(plan, source.id)} to ${nameById(plan, plan.scene)}`,
          regions: spans.map(regionOf),
          stations,
          spans,
          flowGpm: source.flowGpm,
        },
      ];
    });

  const ends = [
    ...state.nozzles
      .filter(({ id }) => plan.nozzles.find((nozzle) => nozzle.id === id)?.open)
      .map(({ id, flowGpm }) => ({ id, place: `${id}.inlet`, flowGpm })),
    ...sprinklerInlets(plan, graph),
  ];
  const attack = ends.flatMap(({ id, place, flowGpm }): ProfilePath[] => {
    const way = mainFeed(flowing, scene, place);
    if (!way) return [];
    const { stations, spans } = measured(graph, scene, way);
    const regions = spans.map(() => 'attack' as const);
    return [{ id: `attack:${id}`, label: nameById(plan, id), regions, stations, spans, flowGpm }];
  });

  const supply = supplyAlong(flowing);
  return { supply: supply.length > 0 ? supply : supplyAlong(graph.edges), attack };
}

function nameById(plan: Plan, id: string): string {
  const piece = pieceOf(plan, id);
  return piece ? nameOf(piece) : id;
}

/** Hydrants, open water, and tanks other than the scene's own; the greatest flow first. */
function sourcesOf(plan: Plan, state: SupplyState, graph: FlowGraph): Source[] {
  const taken = (place: string) =>
    graph.edges.reduce((sum, edge) => sum + (edge.from === place ? edge.flowGpm : 0), 0);
  const hydrants = state.hydrants.map(({ id, flowGpm }) => ({ id, place: mainOf(id), flowGpm }));
  const drafts = plan.drafts.map(({ id }) => {
    const place = surfaceOf(id);
    return { id, place, flowGpm: taken(place) };
  });
  const tanks = state.rigs
    .filter(({ id, tankGpm }) => id !== plan.scene && tankGpm > STILL_GPM)
    .map(({ id, tankGpm }) => ({ id, place: tankOf(id), flowGpm: tankGpm }));
  return [...hydrants, ...drafts, ...tanks].sort((a, b) => b.flowGpm - a.flowGpm);
}

/** The inlet of each sprinkler connection that takes most. */
function sprinklerInlets(plan: Plan, graph: FlowGraph): Source[] {
  return plan.appliances.flatMap((piece): Source[] => {
    if (piece.kind !== 'sprinkler') return [];
    const inlets = graph.edges.filter(({ to }) => graph.places.get(to)?.piece === piece.id);
    const flowGpm = inlets.reduce((sum, edge) => sum + edge.flowGpm, 0);
    const [most] = inlets.sort((a, b) => b.flowGpm - a.flowGpm);
    return most ? [{ id: piece.id, place: most.to, flowGpm }] : [];
  });
}

/** Edges laid end to end: stations with their distance, and the spans between them. */
function measured(graph: FlowGraph, start: string, way: readonly FlowEdge[]) {
  const place = (key: string) => graph.places.get(key)!;
  const stations: ProfileStation[] = [{ ...place(start), alongFt: 0 }];
  const spans: ProfileSpan[] = [];
  let alongFt = 0;
  for (const edge of way) {
    for (const { span, lengthFt, end } of edge.stretches) {
      alongFt += lengthFt;
      const next: ProfileStation = { ...(end ?? place(edge.to)), alongFt };
      const last = stations.at(-1)!;
      if (span.kind === 'piece' && isSame(last, next)) {
        stations[stations.length - 1] = { ...last, port: last.port ?? next.port };
      } else {
        stations.push(next);
        spans.push(span);
      }
    }
  }
  return { stations, spans };
}

/** A pump's side and the port on it where nothing is lost between them. */
function isSame(a: Place, b: Place): boolean {
  return a.piece === b.piece && a.kind === b.kind && Math.abs(a.psi - b.psi) < SAME_PSI;
}
