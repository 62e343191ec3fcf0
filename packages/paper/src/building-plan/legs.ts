/** Where a way's hose and roads lie on the map, and where its engines stand along them. */
import {
  formatHoseSize,
  type HoseSize,
  type Line,
  type Plan,
  type SupplyWay,
  splitPortRef,
  type UnitSystem,
} from '@plugside/fireground';
import type { BuildingSituation } from '@plugside/records/planning';
import type { LonLat } from '@plugside/records/streets';
import { figuresIn } from '../sheet/figures.ts';
import type { PlanLeg, PlanMap } from './data.ts';

/** An engine this near to its water stands at it, as a share of the leg. */
const AT_THE_WATER = 0.08;

/** Legs of a way, source by source. */
export function legsOf(
  way: SupplyWay,
  { paths }: Pick<BuildingSituation, 'paths'>,
  units: UnitSystem,
  next = false,
): PlanLeg[] {
  return way.sources.flatMap((source): PlanLeg[] => {
    const path = paths[source];
    if (!path || path.length < 2) return [];
    const road = isRoad(way, source);
    const words = road ? roadWords(way, units) : layWords(way, source, units);
    const name = sourceNameOf(way, source);
    const label = words && name ? `${name}: ${words}` : words;
    return [{ path, label, kind: road ? 'road' : 'hose', ...(next && { next }) }];
  });
}

/** Tenders drive there: no hose of the plan begins at it. */
export function isRoad({ plan, kind }: SupplyWay, source: string): boolean {
  if (!plan) return kind === 'tender shuttle';
  return ![...plan.hydrants, ...plan.drafts].some(({ id }) => id === source);
}

function sourceNameOf({ plan, shuttle, parts }: SupplyWay, source: string): string | undefined {
  const piece = [...(plan?.hydrants ?? []), ...(plan?.drafts ?? [])].find(
    ({ id }) => id === source,
  );
  if (piece?.name) return piece.name;
  if (shuttle?.place.id === source) return shuttle.place.name;
  return parts?.find(({ sourceId }) => sourceId === source)?.sourceName;
}

function roadWords({ shuttle }: SupplyWay, units: UnitSystem): string {
  if (!shuttle) return 'tenders’ road';
  return `tenders’ road, ${figuresIn(units).full(shuttle.place.roadMi, 'distance')}`;
}

/** "two lines of 900 ft of 5 in", "2,700 ft of 5 in, then 200 ft of 4 in": what lies from a source to the scene, hookups aside. */
export function layWords({ plan }: SupplyWay, source: string, units: UnitSystem): string {
  if (!plan) return '';
  const counts = new Map<string, number>();
  for (const run of runsFrom(plan, source)) {
    const words = run.map((one) => pieceWords(one, units)).join(', then ');
    const lines = run[0]!.count;
    counts.set(words, (counts.get(words) ?? 0) + lines);
  }
  return [...counts]
    .map(([words, count]) => (count > 1 ? `${LINES[count] ?? count} lines of ${words}` : words))
    .join(' and ');
}

const LINES: Readonly<Record<number, string>> = { 2: 'two', 3: 'three', 4: 'four' };

const pieceWords = ({ hose, lengthFt }: LaidPiece, units: UnitSystem) =>
  `${figuresIn(units).full(lengthFt, 'length')} of ${formatHoseSize(hose, units)}`;

/** Hose of one size in a run from the water to the scene. */
export interface LaidPiece {
  hose: HoseSize;
  lengthFt: number;
  /** Lines side by side. */
  count: number;
}

/** Runs of hose from a source to the scene, the longest first; each as pieces of one size, from the water on. */
export function runsFrom(plan: Plan, source: string): LaidPiece[][] {
  const stations = stationsFrom(plan, source);
  const longest = Math.max(...plan.lines.map(({ lengthFt }) => lengthFt));
  const isHookup = ({ lengthFt }: Line) => lengthFt <= 50 && lengthFt < longest / 2;
  const runs = plan.lines
    .filter(({ from, to }) => ownerOf(to) === plan.scene && stations.has(ownerOf(from)))
    .map((last) => {
      const run: Line[] = [];
      const seen = new Set<string>();
      for (let line: Line | undefined = last; line && !seen.has(line.id); ) {
        seen.add(line.id);
        run.unshift(line);
        const at = ownerOf(line.from);
        // What a booster gives back to its own valve is no lay.
        const valve = plan.appliances.some(({ id, kind }) => id === at && kind === 'assist-valve');
        const [before]: Line[] = valve
          ? []
          : plan.lines
              .filter(({ from, to }) => ownerOf(to) === at && stations.has(ownerOf(from)))
              .sort((one, two) => two.lengthFt - one.lengthFt);
        line = before;
      }
      const laid = run.filter((line) => !isHookup(line));
      return joined(laid.length > 0 ? laid : run);
    });
  const ft = (run: readonly LaidPiece[]) => run.reduce((sum, { lengthFt }) => sum + lengthFt, 0);
  return runs.sort((one, two) => ft(two) - ft(one));
}

/** Hose of one size one after another is one piece. */
function joined(run: readonly Line[]): LaidPiece[] {
  const pieces: LaidPiece[] = [];
  for (const { hose, lengthFt, count } of run) {
    const last = pieces.at(-1);
    if (last && last.hose === hose && last.count === count) last.lengthFt += lengthFt;
    else pieces.push({ hose, lengthFt, count });
  }
  return pieces;
}

const ownerOf = (ref: string) => splitPortRef(ref).pieceId;

/** Pieces that water of a source comes to before the scene. */
function stationsFrom(plan: Plan, source: string): Set<string> {
  const stations = new Set([source]);
  for (let grown = true; grown; ) {
    grown = false;
    for (const appliance of plan.appliances) {
      const onIt = 'on' in appliance && stations.has(ownerOf(appliance.on));
      if (onIt && !stations.has(appliance.id)) {
        stations.add(appliance.id);
        grown = true;
      }
    }
    for (const line of plan.lines) {
      const [from, to] = [ownerOf(line.from), ownerOf(line.to)];
      if (stations.has(from) && to !== plan.scene && !stations.has(to)) {
        stations.add(to);
        grown = true;
      }
    }
  }
  return stations;
}

/** Hose from a source to each piece that its water comes to [ft], a hookup counted as none. */
function alongFt(plan: Plan, source: string): Map<string, number> {
  const along = new Map([[source, 0]]);
  const longest = Math.max(...plan.lines.map(({ lengthFt }) => lengthFt));
  for (let grown = true; grown; ) {
    grown = false;
    const reach = (id: string, lengthFt: number) => {
      if ((along.get(id) ?? -1) >= lengthFt) return;
      along.set(id, lengthFt);
      grown = true;
    };
    for (const appliance of plan.appliances) {
      if ('on' in appliance && along.has(ownerOf(appliance.on))) {
        reach(appliance.id, along.get(ownerOf(appliance.on))!);
      }
    }
    for (const line of plan.lines) {
      const before = along.get(ownerOf(line.from));
      const to = ownerOf(line.to);
      // A booster's own hose comes back to its valve; nothing runs past the scene.
      const back = plan.appliances.some(({ id, kind }) => id === to && kind === 'assist-valve');
      if (before === undefined || back || ownerOf(line.from) === plan.scene) continue;
      const hookup = line.lengthFt <= 50 && line.lengthFt < longest / 2;
      reach(to, before + (hookup ? 0 : line.lengthFt));
    }
  }
  return along;
}

/** Engines before the scene, each where it stands on its leg. */
export function pumpsOf(way: SupplyWay, paths: BuildingSituation['paths']): PlanMap['pumps'] {
  const { plan } = way;
  if (!plan) return [];
  return way.sources.flatMap((source) => {
    const path = paths[source];
    if (!path || path.length < 2 || isRoad(way, source)) return [];
    const along = alongFt(plan, source);
    const allFt = along.get(plan.scene) ?? 0;
    return plan.rigs
      .filter(({ id }) => id !== plan.scene && along.has(id))
      .map((rig) => {
        const share = allFt > 0 ? along.get(rig.id)! / allFt : 0;
        const atWater = share < AT_THE_WATER;
        const at = atWater ? path[0]! : placeAlong(path, share);
        return { name: rig.name ?? rig.id, at, atWater };
      });
  });
}

/** By length on the drawing's plane, near enough over a leg. */
function placeAlong(path: readonly LonLat[], share: number): LonLat {
  const perLon = Math.cos((path[0]![1] * Math.PI) / 180);
  const lengths = path
    .slice(1)
    .map(([lon, lat], at) => Math.hypot((lon - path[at]![0]) * perLon, lat - path[at]![1]));
  let left = share * lengths.reduce((sum, length) => sum + length, 0);
  for (const [at, length] of lengths.entries()) {
    if (left <= length) {
      const part = length > 0 ? left / length : 0;
      const [from, to] = [path[at]!, path[at + 1]!];
      return [from[0] + part * (to[0] - from[0]), from[1] + part * (to[1] - from[1])];
    }
    left -= length;
  }
  return path.at(-1)!;
}
