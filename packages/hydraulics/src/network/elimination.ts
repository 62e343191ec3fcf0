/**
 * Sparse Gaussian elimination with the order and the fill worked out once.
 *
 * The matrices here are column diagonally dominant with no positive entry off the diagonal: every
 * element's flow rises with its inlet pressure and falls with its outlet pressure, and what leaves
 * one node enters another. Such a matrix is given by its off-diagonal sizes and by each column's
 * excess (what is left of the diagonal after the rest of the column). Eliminating with these alone
 * never takes one number from another like it, so that a link a million million times tighter than
 * its neighbour costs no digits (Grassmann, Taksar and Heyman, "Regenerative analysis and steady
 * state distributions for Markov chains", Operations Research 33, 1985). No pivoting is needed.
 */

/** A matrix pattern with its elimination order, as flat integer programs. */
export interface Elimination {
  size: number;
  /** Stored values: the excess of each column first, then the off-diagonal sizes, fill included, and one to spare. */
  slots: number;
  /** Slot of (row, column), row ≠ column; the spare one where structurally zero. */
  slotOf(row: number, column: number): number;
  /** For each pivot: column, count n, n × (slot below, row), n × slot to the right, n × n targets. */
  forward: Int32Array;
  /** For each pivot, last one first: column, count n, n × (slot to the right, column). */
  backward: Int32Array;
  /** Inverse pivots by column, filled by `eliminate`. */
  inverse: Float64Array;
}

/**
 * Works out order, fill and programs.
 * @param size number of unknowns ≥ 0
 * @param pairs unknowns that touch each other; both entries are kept
 */
export function planElimination(
  size: number,
  pairs: Iterable<readonly [number, number]>,
): Elimination {
  const around: Set<number>[] = Array.from({ length: size }, () => new Set<number>());
  for (const [i, j] of pairs) {
    around[i]!.add(j);
    around[j]!.add(i);
  }
  // Pivots in order of least degree, each with the neighbours it still has; they become neighbours of each other.
  const pivots: { column: number; left: number[] }[] = [];
  const waiting = new Set<number>(around.keys());
  const slot = new Map<number, number>();
  let slots = size;
  while (waiting.size > 0) {
    const column = leastDegree(waiting, around);
    waiting.delete(column);
    const left = [...around[column]!];
    pivots.push({ column, left });
    for (const i of left) {
      slot.set(i * size + column, slots++);
      slot.set(column * size + i, slots++);
      around[i]!.delete(column);
      for (const j of left) if (i !== j) around[i]!.add(j);
    }
  }
  const spare = slots++;
  const slotOf = (row: number, column: number) => slot.get(row * size + column) ?? spare;

  const forward: number[] = [];
  const backward: number[] = [];
  for (const { column, left } of pivots) {
    forward.push(column, left.length);
    for (const i of left) forward.push(slotOf(i, column), i);
    for (const j of left) forward.push(slotOf(column, j));
    for (const i of left) for (const j of left) forward.push(i === j ? spare : slotOf(i, j));
  }
  for (const { column, left } of pivots.reverse()) {
    backward.push(column, left.length);
    for (const j of left) backward.push(slotOf(column, j), j);
  }
  return {
    size,
    slots,
    slotOf,
    forward: Int32Array.from(forward),
    backward: Int32Array.from(backward),
    inverse: new Float64Array(size),
  };
}

function leastDegree(waiting: ReadonlySet<number>, around: readonly Set<number>[]): number {
  let best = -1;
  let degree = Number.POSITIVE_INFINITY;
  for (const i of waiting) {
    if (around[i]!.size >= degree) continue;
    degree = around[i]!.size;
    best = i;
    if (degree <= 1) break;
  }
  return best;
}

/**
 * Solves, overwriting `values` and `right`. No allocation.
 * @param solution by unknown
 * @returns false if a pivot is not a positive number
 */
export function eliminate(
  plan: Elimination,
  values: Float64Array,
  right: Float64Array,
  solution: Float64Array,
): boolean {
  const { forward, backward, inverse } = plan;
  let at = 0;
  const end = forward.length;
  while (at < end) {
    const k = forward[at]!;
    const count = forward[at + 1]!;
    const below = at + 2;
    const ahead = below + 2 * count;
    const excess = values[k]!;
    let pivot = excess;
    for (let s = below; s < ahead; s += 2) pivot += values[forward[s]!]!;
    if (!(pivot > 0)) return false;
    const over = 1 / pivot;
    inverse[k] = over;
    const rightK = right[k]!;
    const share = excess * over;
    let target = ahead + count;
    for (let s = below; s < ahead; s += 2) {
      const row = forward[s + 1]!;
      // The rows below are also the columns ahead: each takes its part of this column's excess.
      if (share !== 0)
        values[row] = values[row]! + share * values[forward[ahead + ((s - below) >> 1)]!]!;
      const factor = values[forward[s]!]! * over;
      if (factor === 0) {
        target += count;
        continue;
      }
      right[row] = right[row]! + factor * rightK;
      for (let j = ahead; j < ahead + count; j++) {
        const slot = forward[target++]!;
        values[slot] = values[slot]! + factor * values[forward[j]!]!;
      }
    }
    at = target;
  }
  at = 0;
  const back = backward.length;
  while (at < back) {
    const k = backward[at]!;
    const last = at + 2 + 2 * backward[at + 1]!;
    let sum = right[k]!;
    for (at += 2; at < last; at += 2) sum += values[backward[at]!]! * solution[backward[at + 1]!]!;
    solution[k] = sum * inverse[k]!;
  }
  return true;
}
