/** What is counted as a drill runs, so that judging needs no second run. */

/** A time during which something stood wrong. */
export interface Moment {
  /** The hose, pump, hydrant or nozzle. */
  piece: string;
  fromTick: number;
  /** Left out: still so. */
  toTick?: number;
  /** The worst value of it [psi, or gpm at a nozzle]. */
  worst: number;
}

export type TallyKind =
  | 'nozzle interrupted'
  | 'intake under'
  | 'main under'
  | 'hose over'
  | 'nozzle swing';

export interface TallyLine {
  /** Ticks in all. */
  ticks: number;
  /** The first 100 moments. */
  moments: Moment[];
}

export interface Tally {
  lines: Record<TallyKind, TallyLine>;
  /** By nozzle of the scene: has had water since it was opened, and pressure within the window [psi]. */
  nozzles: { id: string; supplied: boolean; recentPsi: number[] }[];
  /** Tick at which the boosted flow was reached; -1: not yet. */
  boostTick: number;
  /** Step id of the evolution → tick at which its condition first held. */
  stepTicks: { step: string; tick: number }[];
  /** Couplings to a port that the plan has another hose on, or none. */
  wrongConnections: { tick: number; hose: string; port: string }[];
  /**
   * Valves shut so fast that the hose that feels it could pass its limit, with what it could come to [psi];
   * the last 100. Left out: none.
   */
  surges?: { tick: number; hose: string; valve: string; psi: number }[];
}
