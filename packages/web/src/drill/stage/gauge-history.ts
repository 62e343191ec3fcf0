/** What gauges have read over the last minutes, one reading a second of the drill. */
import type { DrillView } from '@plugside/drill';

/** Kept this long [s]. */
export const KEPT_S = 180;

export interface Reading {
  timeS: number;
  value: number;
}

export type GaugeHistory = Readonly<Record<string, readonly Reading[]>>;

/**
 * Adds a view's readings. A gauge that was out of sight leaves a gap. A clock that went back begins anew.
 */
export function addReadings(history: GaugeHistory, { timeS, gauges }: DrillView): GaugeHistory {
  const next: Record<string, readonly Reading[]> = { ...history };
  let changed = false;
  for (const { id, value } of gauges) {
    const kept = next[id] ?? [];
    const last = kept.at(-1);
    if (last && timeS < last.timeS) {
      next[id] = [{ timeS, value }];
      changed = true;
    } else if (!last || timeS - last.timeS >= 1) {
      next[id] = [...kept.filter((one) => one.timeS > timeS - KEPT_S), { timeS, value }];
      changed = true;
    }
  }
  return changed ? next : history;
}
