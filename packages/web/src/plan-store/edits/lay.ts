/** The lay: its lines, its length, and how high it climbs. */
import { type Line, type Plan, pieceOf, splitPortRef } from '@plugside/fireground';

const pieceIdOf = (ref: string) => splitPortRef(ref).pieceId;

/** The lines from one spot to a rig: laid together, so they share length and rise. */
export interface Lay {
  rigId: string;
  /** The hydrant, water or rig where it begins. */
  fromId: string;
  lines: readonly Line[];
}

/** Pieces that stand together: a valve stands at its hydrant, a booster at the hydrant that feeds it. */
function spotOf(plan: Plan, id: string): string {
  const valve = plan.appliances.find((one) => one.id === id);
  if (valve?.kind === 'assist-valve') return pieceIdOf(valve.on);
  const rig = plan.rigs.find((one) => one.id === id);
  if (rig?.role === 'booster') {
    const feed = plan.lines.find((line) => pieceIdOf(line.to) === id);
    if (feed) return spotOf(plan, pieceIdOf(feed.from));
  }
  return id;
}

/** Every lay that ends at a rig, in the plan's order. */
export function laysInto(plan: Plan, rigId: string): Lay[] {
  const lays = new Map<string, Line[]>();
  for (const line of plan.lines) {
    if (pieceIdOf(line.to) !== rigId) continue;
    const fromId = spotOf(plan, pieceIdOf(line.from));
    lays.set(fromId, [...(lays.get(fromId) ?? []), line]);
  }
  return [...lays].map(([fromId, lines]) => ({ rigId, fromId, lines }));
}

/** Gives every line of a lay the same length [ft] ≥ 0. */
export function setLayLength(plan: Plan, lay: Lay, lengthFt: number): Plan {
  const ids = new Set(lay.lines.map((line) => line.id));
  return {
    ...plan,
    lines: plan.lines.map((line) =>
      // Heights along a line belong to its old length.
      ids.has(line.id) ? { ...line, lengthFt, terrain: scaledTerrain(line, lengthFt) } : line,
    ),
  };
}

function scaledTerrain(line: Line, lengthFt: number): Line['terrain'] {
  if (!line.terrain || line.lengthFt <= 0 || lengthFt <= 0) return undefined;
  const by = lengthFt / line.lengthFt;
  return line.terrain.map((one) => ({ ...one, alongFt: one.alongFt * by }));
}

/** Height of a piece [ft]. */
export function elevationOf(plan: Plan, id: string): number {
  const piece = pieceOf(plan, id);
  if (!piece) return 0;
  return 'waterElevationFt' in piece ? piece.waterElevationFt : piece.elevationFt;
}

/** How much higher a lay ends than it begins [ft]; negative: lower. */
export function riseOf(plan: Plan, lay: Lay): number {
  return elevationOf(plan, lay.rigId) - elevationOf(plan, lay.fromId);
}

/** Everything that water reaches past a piece, itself included: it stands on the same ground and moves with it. */
export function pastPiece(plan: Plan, id: string): Set<string> {
  const reached = new Set([id]);
  for (let grew = true; grew; ) {
    grew = false;
    const add = (next: string) => {
      if (reached.has(next)) return;
      reached.add(next);
      grew = true;
    };
    for (const line of plan.lines) if (reached.has(pieceIdOf(line.from))) add(pieceIdOf(line.to));
    for (const one of plan.nozzles) if (one.on && reached.has(pieceIdOf(one.on))) add(one.id);
  }
  return reached;
}

function lifted(plan: Plan, moved: ReadonlySet<string>, byFt: number): Plan {
  const lift = <T extends { id: string; elevationFt: number }>(one: T): T =>
    moved.has(one.id) ? { ...one, elevationFt: one.elevationFt + byFt } : one;
  return {
    ...plan,
    hydrants: plan.hydrants.map(lift),
    drafts: plan.drafts.map((one) =>
      moved.has(one.id) ? { ...one, waterElevationFt: one.waterElevationFt + byFt } : one,
    ),
    rigs: plan.rigs.map(lift),
    appliances: plan.appliances.map(lift),
    nozzles: plan.nozzles.map(lift),
  };
}

/**
 * Makes a lay climb this much [ft]. The rig and all past it move; where another lay comes to the
 * same rig first, that one keeps its rise, and this lay's own source moves instead.
 */
export function setRise(plan: Plan, lay: Lay, riseFt: number): Plan {
  const by = riseFt - riseOf(plan, lay);
  if (by === 0) return plan;
  const first = laysInto(plan, lay.rigId)[0];
  if (!first || first.fromId === lay.fromId) return lifted(plan, pastPiece(plan, lay.rigId), by);
  const pieces = [...plan.hydrants, ...plan.drafts, ...plan.rigs, ...plan.appliances];
  const atSource = pieces.filter((one) => spotOf(plan, one.id) === lay.fromId);
  return lifted(plan, new Set(atSource.map((one) => one.id)), -by);
}
