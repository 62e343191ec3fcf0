/** Which mains are part of loops, and the dead ends that hang on them. */
import type { DemoHydrant } from './hydrant-places.ts';
import type { Stretch } from './town-map.ts';

export interface MainLayout {
  looped: Stretch[];
  /** Nodes on loops. */
  junctions: Set<number>;
  /** Of each node on a dead end, the main that leads back to the loop. */
  towardsLoop: Map<number, Stretch>;
}

/** Main between a loop and a hydrant, or a part of one. */
export interface TailPart {
  stretch: Stretch;
  /** Counted from the stretch's `from`. */
  forward: boolean;
  /** As far along it as the hydrant [ft]. */
  lengthFt: number;
}

/** The loop's node that a hydrant draws from, and what lies between. */
export interface Hanging {
  junction: number;
  tail: TailPart[];
}

/** Takes dead ends off one by one; what stays is loops. */
export function layoutOf(mains: readonly Stretch[]): MainLayout {
  const at = new Map<number, Set<Stretch>>();
  for (const stretch of mains) {
    for (const node of [stretch.from, stretch.to]) {
      at.set(node, (at.get(node) ?? new Set()).add(stretch));
    }
  }
  const towardsLoop = new Map<number, Stretch>();
  const ends = [...at.keys()].filter((node) => at.get(node)!.size === 1);
  for (let node = ends.pop(); node !== undefined; node = ends.pop()) {
    const [last] = at.get(node)!;
    if (!last) continue;
    towardsLoop.set(node, last);
    at.delete(node);
    const parent = otherEnd(last, node);
    const left = at.get(parent)!;
    left.delete(last);
    if (left.size === 1) ends.push(parent);
  }
  const looped = mains.filter(({ from, to }) => at.has(from) && at.has(to));
  return { looped, junctions: new Set(at.keys()), towardsLoop };
}

function otherEnd({ from, to }: Stretch, node: number): number {
  return from === node ? to : from;
}

/** A hydrant between two nodes of a loop is taken to hang on the nearer one. */
export function hangingOf({ towardsLoop }: MainLayout, hydrant: DemoHydrant): Hanging {
  const { stretch, alongFt } = hydrant;
  const { from, to, lengthFt } = stretch;
  const deadEnd = [from, to].find((node) => towardsLoop.get(node) === stretch);
  const nearer = alongFt <= lengthFt / 2 ? from : to;
  let node = deadEnd === undefined ? nearer : otherEnd(stretch, deadEnd);
  const forward = node === from;
  const tail = [{ stretch, forward, lengthFt: forward ? alongFt : lengthFt - alongFt }];
  for (let up = towardsLoop.get(node); up; up = towardsLoop.get(node)) {
    const parent = otherEnd(up, node);
    tail.push({ stretch: up, forward: parent === up.from, lengthFt: up.lengthFt });
    node = parent;
  }
  return { junction: node, tail };
}
