/**
 * Pressure against distance: the figures behind the profile drawing, for screen, print and command line alike.
 * Distances count hose only [ft]; pumps and appliances take no distance.
 */

/** A point on a path where a pressure is known. */
export interface ProfileStation {
  /** Piece of the plan, and the port there where it is a port. */
  piece: string;
  port?: string;
  kind: 'main' | 'outlet' | 'appliance' | 'intake' | 'discharge' | 'nozzle' | 'water' | 'terrain';
  /** Hose from the path's start [ft]. */
  alongFt: number;
  elevationFt: number;
  psi: number;
}

/** What joins a station to the next one. */
export type ProfileSpan =
  | { kind: 'hose'; line: string; limitPsi: number }
  | { kind: 'pump'; rig: string }
  | { kind: 'piece'; piece: string };

export interface ProfilePath {
  id: string;
  label: string;
  /** `hookup`: at the hydrant, drawn not to scale; `lay`: source to scene; `attack`: past the scene's pump. One per span. */
  regions: ('hookup' | 'lay' | 'attack')[];
  stations: ProfileStation[];
  /** One fewer than stations. */
  spans: ProfileSpan[];
  flowGpm: number;
}

export interface PressureProfile {
  /** From the source that gives most to the scene's discharge, then each other source, then each line past the scene. */
  supply: ProfilePath[];
  attack: ProfilePath[];
}
