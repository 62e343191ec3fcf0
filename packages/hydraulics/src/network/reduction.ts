/**
 * Collapses runs in series, like lines in parallel and dead ends, so that the matrix holds only
 * the nodes where something happens. What was collapsed is kept as a short program: run forward
 * it turns the links' coefficients into the composites', run backward it turns composite flows
 * and heads into every link's flow and every node's head.
 */
import { lossPsi } from './drop.ts';

/** 0 both ways, 1 `from` to `to` only, -1 `to` to `from` only, 2 neither way (opposed checks). */
export type CheckSense = 0 | 1 | -1 | 2;

/** A link with a loss, before and after collapsing. */
export interface Element {
  from: number;
  to: number;
  check: CheckSense;
  /** Index of its automatic nozzle, or -1. */
  automatic: number;
  /** Loss goes by the square of flow alone, and its offset never changes: may join a like one in parallel. */
  plain: boolean;
}

/** Steps of the program, each seven numbers: kind, x, sense of x, y, sense of y, composite, node. */
export const SERIES = 0;
export const PARALLEL = 1;
export const DEAD_END = 2;
export const STRIDE = 7;

/** Coefficients by element: `drop = offset + a·Q² + b·Q^1.85`; a = Infinity is shut. */
export interface Coefficients {
  a: Float64Array;
  b: Float64Array;
  offset: Float64Array;
  /** Of a pair in parallel, by its composite: the part of the flow that the first takes. */
  share: Float64Array;
}

export interface Reduction {
  elements: readonly Element[];
  /** Elements that remain to be solved. */
  core: readonly number[];
  /** Nodes that remain. */
  coreNodes: readonly number[];
  program: Int32Array;
}

/**
 * @param nodeCount number of nodes
 * @param links elements as given
 * @param keep nodes that must remain: fixed, with a demand, or at a pump
 */
export function reduce(nodeCount: number, links: readonly Element[], keep: Uint8Array): Reduction {
  const elements: Element[] = [...links];
  const at: Set<number>[] = Array.from({ length: nodeCount }, () => new Set<number>());
  const alive = new Set<number>();
  const gone = new Uint8Array(nodeCount);
  const program: number[] = [];

  const attach = (e: number) => {
    alive.add(e);
    at[elements[e]!.from]!.add(e);
    at[elements[e]!.to]!.add(e);
  };
  const detach = (e: number) => {
    alive.delete(e);
    at[elements[e]!.from]!.delete(e);
    at[elements[e]!.to]!.delete(e);
  };
  links.forEach((_, e) => {
    attach(e);
  });

  /** Joins parallels of `e`; returns the element that stands for it. */
  const joinParallels = (e: number): number => {
    let current = e;
    for (;;) {
      const one = elements[current]!;
      if (!one.plain || one.from === one.to) return current;
      const mate = [...at[one.from]!].find((f) => {
        if (f === current) return false;
        const two = elements[f]!;
        if (!two.plain) return false;
        const same = two.from === one.from && two.to === one.to;
        const crossed = two.from === one.to && two.to === one.from;
        if (!same && !crossed) return false;
        return one.check === turn(two.check, same ? 1 : -1);
      });
      if (mate === undefined) return current;
      const sense = elements[mate]!.from === one.from ? 1 : -1;
      const joined: Element = { ...one };
      detach(current);
      detach(mate);
      elements.push(joined);
      const z = elements.length - 1;
      attach(z);
      program.push(PARALLEL, current, 1, mate, sense, z, -1);
      current = z;
    }
  };

  const queue: number[] = [];
  for (const e of [...alive]) if (alive.has(e)) joinParallels(e);
  for (let node = 0; node < nodeCount; node++) queue.push(node);
  while (queue.length > 0) {
    const node = queue.pop()!;
    if (keep[node] || gone[node]) continue;
    const around = [...at[node]!];
    if (around.length === 1) {
      const e = around[0]!;
      const other = elements[e]!.from === node ? elements[e]!.to : elements[e]!.from;
      detach(e);
      gone[node] = 1;
      program.push(DEAD_END, e, elements[e]!.to === node ? 1 : -1, -1, 0, -1, node);
      queue.push(other);
    } else if (around.length === 2) {
      let [x, y] = around as [number, number];
      // An automatic nozzle is always second, so that its flow runs forward.
      if (elements[x]!.automatic >= 0) [x, y] = [y, x];
      if (elements[x]!.automatic >= 0) continue;
      const i = elements[x]!.from === node ? elements[x]!.to : elements[x]!.from;
      const j = elements[y]!.from === node ? elements[y]!.to : elements[y]!.from;
      if (i === j) continue;
      const senseX = elements[x]!.from === i ? 1 : -1;
      const senseY = elements[y]!.from === node ? 1 : -1;
      const joined: Element = {
        from: i,
        to: j,
        check: both(turn(elements[x]!.check, senseX), turn(elements[y]!.check, senseY)),
        automatic: elements[y]!.automatic,
        plain: elements[x]!.plain && elements[y]!.plain,
      };
      detach(x);
      detach(y);
      gone[node] = 1;
      elements.push(joined);
      const z = elements.length - 1;
      attach(z);
      program.push(SERIES, x, senseX, y, senseY, z, node);
      joinParallels(z);
      queue.push(i, j);
    }
  }
  const coreNodes: number[] = [];
  for (let node = 0; node < nodeCount; node++) if (!gone[node]) coreNodes.push(node);
  return { elements, core: [...alive], coreNodes, program: Int32Array.from(program) };
}

function turn(check: CheckSense, sense: number): CheckSense {
  return check === 2 || check === 0 || sense === 1 ? check : check === 1 ? -1 : 1;
}

function both(one: CheckSense, two: CheckSense): CheckSense {
  if (one === 0) return two;
  if (two === 0 || one === two) return one;
  return 2;
}

/** Works the composites' coefficients out of the links'. No allocation. */
export function combine(program: Int32Array, { a, b, offset, share }: Coefficients): void {
  for (let at = 0; at < program.length; at += STRIDE) {
    const kind = program[at]!;
    if (kind === DEAD_END) continue;
    const x = program[at + 1]!;
    const y = program[at + 3]!;
    const z = program[at + 5]!;
    if (kind === SERIES) {
      a[z] = a[x]! + a[y]!;
      b[z] = b[x]! + b[y]!;
      offset[z] = program[at + 2]! * offset[x]! + program[at + 4]! * offset[y]!;
    } else {
      const conductance = 1 / Math.sqrt(a[x]!) + 1 / Math.sqrt(a[y]!);
      a[z] = 1 / (conductance * conductance);
      b[z] = 0;
      offset[z] = offset[x]!;
      share[z] = shareOf(a[x]!, a[y]!);
    }
  }
}

/**
 * Fills in flows of all elements and heads of all collapsed nodes from the core's. No allocation.
 * @param closed by element: 1 where its check is shut by the pressures, 2 where a valve stops it, else 0
 */
export function expand(
  { program, elements }: Reduction,
  { a, b, offset, share }: Coefficients,
  flow: Float64Array,
  head: Float64Array,
  closed: Uint8Array,
): void {
  for (let at = program.length - STRIDE; at >= 0; at -= STRIDE) {
    const kind = program[at]!;
    const x = program[at + 1]!;
    const senseX = program[at + 2]!;
    const node = program[at + 6]!;
    if (kind === DEAD_END) {
      flow[x] = 0;
      closed[x] = 0;
      const element = elements[x]!;
      head[node] = head[element.from === node ? element.to : element.from]! - senseX * offset[x]!;
      continue;
    }
    const y = program[at + 3]!;
    const senseY = program[at + 4]!;
    const z = program[at + 5]!;
    const q = flow[z]!;
    closed[x] = closed[z]!;
    closed[y] = closed[z]!;
    if (kind === PARALLEL) {
      const toX = q * share[z]!;
      flow[x] = toX;
      flow[y] = senseY * (q - toX);
      continue;
    }
    flow[x] = senseX * q;
    flow[y] = senseY * q;
    const before = head[elements[z]!.from]! - senseX * offset[x]!;
    if (closed[z] !== 0 || a[z] === Number.POSITIVE_INFINITY) {
      const after = head[elements[z]!.to]! + senseY * offset[y]!;
      head[node] = restingHead(
        before,
        after,
        a[x] === Number.POSITIVE_INFINITY ? SHUT_OFF : turn(elements[x]!.check, senseX),
        a[y] === Number.POSITIVE_INFINITY ? SHUT_OFF : turn(elements[y]!.check, senseY),
      );
    } else {
      head[node] = before - lossPsi(a[x]!, b[x]!, q);
    }
  }
}

/** Part of a pair's flow that the first of two parallels takes; halves where neither has a loss. */
function shareOf(aX: number, aY: number): number {
  const byX = 1 / Math.sqrt(aX);
  const byY = 1 / Math.sqrt(aY);
  const share = byX / (byX + byY);
  if (!Number.isNaN(share)) return share;
  if (byX !== Number.POSITIVE_INFINITY) return 0;
  return byY === byX ? 0.5 : 1;
}

/** A shut element in `restingHead`. */
const SHUT_OFF = 3;

/**
 * Head of a joint through which nothing flows: that of a neighbour it is open to; between checks,
 * the one that keeps both shut.
 * @param before,after heads of the neighbours as they would stand at the joint
 * @param checkBefore,checkAfter senses of the two elements along the path, or SHUT_OFF
 */
function restingHead(before: number, after: number, checkBefore: number, checkAfter: number) {
  if (checkBefore === 0) return before;
  if (checkAfter === 0) return after;
  if (checkBefore === SHUT_OFF) return after;
  if (checkAfter === SHUT_OFF) return before;
  if (checkBefore === checkAfter) return checkBefore === 1 ? before : after;
  return checkBefore === 1 ? Math.max(before, after) : Math.min(before, after);
}
