export interface Place {
  x: number;
  y: number;
}

/**
 * Where the numbers of dots go: over the dot itself, or straight above or below it, so that none is
 * nearer to another than `leastPx`. The earlier a dot, the nearer its number; with no room left a
 * number stays on its dot.
 */
export function stacked(
  dots: readonly Place[],
  leastPx: number,
  { top, bottom }: { top: number; bottom: number },
): Place[] {
  const set: Place[] = [];
  for (const { x, y } of dots) {
    const free = (at: number) =>
      at >= top &&
      at <= bottom &&
      set.every((one) => Math.hypot(one.x - x, one.y - at) >= leastPx - 1e-9);
    const start = Math.min(bottom, Math.max(top, y));
    const step = leastPx / 4;
    let at = start;
    for (let away = 0; !free(at) && away <= bottom - top; away += step) {
      at = free(start - away) ? start - away : start + away;
    }
    set.push({ x, y: free(at) ? at : start });
  }
  return set;
}
