/** The lay: its lines, its length, and how high the scene lies. */
import { type Line, type Plan, pieceOf, splitPortRef } from '@plugside/fireground';

const pieceIdOf = (ref: string) => splitPortRef(ref).pieceId;

/** The lines that end at a rig's intakes and begin anywhere but at another piece of the same spot. */
export function linesInto(plan: Plan, rigId: string): Line[] {
  return plan.lines.filter((line) => pieceIdOf(line.to) === rigId);
}

/** The hydrant, water or rig from which a rig's longest line comes: where its lay begins. */
export function layLinesOf(plan: Plan, rigId: string): Line[] {
  const into = linesInto(plan, rigId);
  const longest = [...into].sort((a, b) => b.lengthFt - a.lengthFt)[0];
  if (!longest) return [];
  return into.filter((line) => spotOf(plan, line.from) === spotOf(plan, longest.from));
}

/** Pieces that stand together: a valve stands at its hydrant, a booster at the hydrant that feeds it. */
function spotOf(plan: Plan, ref: string): string {
  const id = pieceIdOf(ref);
  const valve = plan.appliances.find((one) => one.id === id);
  if (valve?.kind === 'assist-valve') return pieceIdOf(valve.on);
  const rig = plan.rigs.find((one) => one.id === id);
  if (rig?.role === 'booster') {
    const feed = linesInto(plan, id)[0];
    if (feed) return spotOf(plan, feed.from);
  }
  return id;
}

/** Gives every line of a rig's lay the same length [ft] ≥ 0: parallel lines are laid together. */
export function setLayLength(plan: Plan, rigId: string, lengthFt: number): Plan {
  const ids = new Set(layLinesOf(plan, rigId).map((line) => line.id));
  return {
    ...plan,
    lines: plan.lines.map((line) => (ids.has(line.id) ? { ...line, lengthFt } : line)),
  };
}

/** Height of the piece's ground [ft]. */
export function elevationOf(plan: Plan, id: string): number {
  const piece = pieceOf(plan, id);
  if (!piece) return 0;
  return 'waterElevationFt' in piece ? piece.waterElevationFt : piece.elevationFt;
}

/** How much higher a rig stands than where its lay begins [ft]; negative: lower. */
export function riseOf(plan: Plan, rigId: string): number {
  const first = layLinesOf(plan, rigId)[0];
  return first ? elevationOf(plan, rigId) - elevationOf(plan, pieceIdOf(first.from)) : 0;
}

/** Everything that water reaches past a rig: it stands on the same ground and moves with it. */
export function pastRig(plan: Plan, rigId: string): Set<string> {
  const reached = new Set([rigId]);
  for (let grew = true; grew; ) {
    grew = false;
    const add = (id: string) => {
      if (!reached.has(id)) {
        reached.add(id);
        grew = true;
      }
    };
    for (const line of plan.lines) if (reached.has(pieceIdOf(line.from))) add(pieceIdOf(line.to));
    for (const one of plan.nozzles) if (one.on && reached.has(pieceIdOf(one.on))) add(one.id);
  }
  return reached;
}

/** Moves a rig and all past it so that it stands this much above where its lay begins [ft]. */
export function setRise(plan: Plan, rigId: string, riseFt: number): Plan {
  const by = riseFt - riseOf(plan, rigId);
  if (by === 0) return plan;
  const moved = pastRig(plan, rigId);
  const lift = <T extends { id: string; elevationFt: number }>(one: T): T =>
    moved.has(one.id) ? { ...one, elevationFt: one.elevationFt + by } : one;
  return {
    ...plan,
    rigs: plan.rigs.map(lift),
    appliances: plan.appliances.map(lift),
    nozzles: plan.nozzles.map(lift),
  };
}
