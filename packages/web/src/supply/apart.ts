export interface Place {
  x: number;
  y: number;
}

/**
 * Moves dots that would lie on each other sideways, the later ones first, until none is nearer
 * than `leastPx` or there is no room; heights stay.
 */
export function apart(
  places: readonly Place[],
  leastPx: number,
  { left, right }: { left: number; right: number },
): Place[] {
  const set: Place[] = [];
  for (const { x, y } of places) {
    const free = (at: number) =>
      at >= left &&
      at <= right &&
      set.every((one) => Math.hypot(one.x - at, one.y - y) >= leastPx - 1e-9);
    const start = Math.min(right, Math.max(left, x));
    let at = start;
    for (let step = 1; !free(at) && step < 200; step += 1) {
      // Right and left in turn, a little farther each time.
      const side = step % 2 === 1 ? 1 : -1;
      at = start + side * Math.ceil(step / 2) * (leastPx / 4);
    }
    set.push({ x: free(at) ? at : start, y });
  }
  return set;
}
