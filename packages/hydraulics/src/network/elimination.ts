/**
 * Sparse Gaussian elimination with the order and the fill worked out once.
 *
 * The matrices here are column diagonally dominant with non-positive off-diagonals (every
 * element's flow rises with its inlet pressure and falls with its outlet pressure, and what leaves
 * one node enters another), so no pivoting is needed.
 */

/** A matrix pattern with its elimination order, as flat integer programs. */
export interface Elimination {
  size: number;
  /** Stored values, fill included. */
  slots: number;
  /** Slot of (row, column); -1 where structurally zero. */
  slotOf(row: number, column: number): number;
  /** Slot of each diagonal entry. */
  diagonal: Int32Array;
  forward: Int32Array;
  backward: Int32Array;
}

/**
 * Works out order, fill and programs.
 * @param size number of unknowns [-] ≥ 0
 * @param entries pairs (row, column) of structural non-zeros; the diagonal is implied
 */
export function planElimination(size: number, entries: Iterable<readonly [number, number]>): Elimination {
  const rows: Set<number>[] = [];
  const columns: Set<number>[] = [];
  for (let i = 0; i < size; i++) {
    rows.push(new Set([i]));
    columns.push(new Set([i]));
  }
  const put = (i: number, j: number) => {
    rows[i]!.add(j);
    columns[j]!.add(i);
  };
  for (const [i, j] of entries) put(i, j);

  const order = leastDegreeOrder(size, rows);
  const rank = new Int32Array(size);
  order.forEach((node, at) => {
    rank[node] = at;
  });

  for (const k of order) {
    for (const i of columns[k]!) {
      if (rank[i]! <= rank[k]!) continue;
      for (const j of rows[k]!) if (rank[j]! > rank[k]!) put(i, j);
    }
  }

  const slot = new Map<number, number>();
  let slots = 0;
  for (const i of order) for (const j of rows[i]!) slot.set(i * size + j, slots++);
  // A table is quicker to ask than a map; past some 700 unknowns it would cost too much memory.
  const table = size <= 700 ? new Int32Array(size * size).fill(-1) : undefined;
  if (table) for (const [key, at] of slot) table[key] = at;
  const slotOf = (i: number, j: number) =>
    (table ? table[i * size + j] : slot.get(i * size + j)) ?? -1;

  const diagonal = new Int32Array(size);
  for (let i = 0; i < size; i++) diagonal[i] = slotOf(i, i);

  const forward: number[] = [];
  const backward: number[] = [];
  for (const k of order) {
    const right = [...rows[k]!].filter((j) => rank[j]! > rank[k]!);
    const below = [...columns[k]!].filter((i) => rank[i]! > rank[k]!);
    forward.push(diagonal[k]!, k, below.length);
    for (const i of below) {
      forward.push(slotOf(i, k), i, right.length);
      for (const j of right) forward.push(slotOf(k, j), slotOf(i, j));
    }
  }
  for (let at = size - 1; at >= 0; at--) {
    const k = order[at]!;
    const right = [...rows[k]!].filter((j) => rank[j]! > rank[k]!);
    backward.push(k, diagonal[k]!, right.length);
    for (const j of right) backward.push(slotOf(k, j), j);
  }
  return {
    size,
    slots,
    slotOf,
    diagonal,
    forward: Int32Array.from(forward),
    backward: Int32Array.from(backward),
  };
}

function leastDegreeOrder(size: number, rows: readonly Set<number>[]): number[] {
  const around: Set<number>[] = rows.map(() => new Set<number>());
  rows.forEach((row, i) => {
    for (const j of row) {
      if (i === j) continue;
      around[i]!.add(j);
      around[j]!.add(i);
    }
  });
  const left = new Set<number>(around.keys());
  const order: number[] = [];
  while (order.length < size) {
    let best = -1;
    let degree = Number.POSITIVE_INFINITY;
    for (const i of left) {
      if (around[i]!.size < degree) {
        degree = around[i]!.size;
        best = i;
        if (degree <= 1) break;
      }
    }
    order.push(best);
    left.delete(best);
    const neighbours = [...around[best]!];
    for (const i of neighbours) {
      around[i]!.delete(best);
      for (const j of neighbours) if (i !== j) around[i]!.add(j);
    }
  }
  return order;
}

/**
 * Factors `values` in place and carries `right` along; afterwards `right` holds the solution.
 * Multipliers stay below the diagonal and inverse pivots on it, for `resolve`.
 * @returns false if a pivot is not a positive number
 */
export function eliminate(plan: Elimination, values: Float64Array, right: Float64Array): boolean {
  const { forward, backward } = plan;
  let at = 0;
  const end = forward.length;
  while (at < end) {
    const pivot = values[forward[at]!]!;
    if (!(pivot > 0)) return false;
    const inverse = 1 / pivot;
    values[forward[at]!] = inverse;
    const rightK = right[forward[at + 1]!]!;
    let below = forward[at + 2]!;
    at += 3;
    for (; below > 0; below--) {
      const slotIK = forward[at]!;
      const factor = values[slotIK]! * inverse;
      values[slotIK] = factor;
      let count = forward[at + 2]!;
      const row = forward[at + 1]!;
      at += 3;
      if (factor === 0) {
        at += 2 * count;
        continue;
      }
      right[row] = right[row]! - factor * rightK;
      for (; count > 0; count--) {
        const slotIJ = forward[at + 1]!;
        values[slotIJ] = values[slotIJ]! - factor * values[forward[at]!]!;
        at += 2;
      }
    }
  }
  at = 0;
  const back = backward.length;
  while (at < back) {
    const k = backward[at]!;
    const inverse = values[backward[at + 1]!]!;
    let count = backward[at + 2]!;
    at += 3;
    let sum = right[k]!;
    for (; count > 0; count--) {
      sum -= values[backward[at]!]! * right[backward[at + 1]!]!;
      at += 2;
    }
    right[k] = sum * inverse;
  }
  return true;
}

/** Solves again with factors left by `eliminate`; `right` is replaced by the solution. */
export function resolve(plan: Elimination, values: Float64Array, right: Float64Array): void {
  const { forward, backward } = plan;
  let at = 0;
  while (at < forward.length) {
    const rightK = right[forward[at + 1]!]!;
    let below = forward[at + 2]!;
    at += 3;
    for (; below > 0; below--) {
      const row = forward[at + 1]!;
      right[row] = right[row]! - values[forward[at]!]! * rightK;
      at += 3 + 2 * forward[at + 2]!;
    }
  }
  at = 0;
  while (at < backward.length) {
    const k = backward[at]!;
    const inverse = values[backward[at + 1]!]!;
    let count = backward[at + 2]!;
    at += 3;
    let sum = right[k]!;
    for (; count > 0; count--) {
      sum -= values[backward[at]!]! * right[backward[at + 1]!]!;
      at += 2;
    }
    right[k] = sum * inverse;
  }
}
