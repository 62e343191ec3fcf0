/** Where everything of a role's drawing stands [px]. */
import type { HoseEnd, HoseEndView, ValveKind } from '@plugside/drill';

export type Vector = readonly [x: number, y: number];

export interface PortSpot {
  port: string;
  x: number;
  y: number;
  /** Way out of the piece. */
  out: Vector;
  /** What stands in its ring. */
  short: string;
  /** What stands under it while nothing is on it. */
  caption: string;
}

export interface ValveSpot {
  valve: string;
  kind: ValveKind;
  x: number;
  y: number;
  /** Its pipe runs across or down. */
  pipe: 'across' | 'down';
}

export interface EndSpot {
  hose: string;
  end: HoseEnd;
  x: number;
  y: number;
  out: Vector;
  /** The port that it is on; null: it lies loose. */
  port: string | null;
}

export interface Pipe {
  d: string;
  /** The port that it leads to, and the valve in it. */
  port?: string;
  valve?: string;
  /** Between valve and port, or between valve and pump or chamber. */
  part: 'port side' | 'inner side';
}

export interface PieceSpot {
  id: string;
  kind: 'hydrant' | 'draft' | 'assist valve' | 'rig' | 'fitting' | 'nozzle';
  x: number;
  y: number;
  width: number;
  height: number;
  /** Middle of its pump, where it has one. */
  pump?: { x: number; y: number };
  tank?: { x: number; y: number; width: number; height: number };
  pipes: Pipe[];
}

export interface HoseRun {
  hose: string;
  d: string;
  /** Middle of the run. */
  middle: Vector;
  widthPx: number;
  looks: HoseEndView['looks'];
  /** Leaves the drawing here. */
  away?: {
    x: number;
    y: number;
    anchor: 'start' | 'end';
    to: string;
    /** There is room between port and edge for where it goes; else that is told below. */
    hasRoom: boolean;
  };
}

export interface StageLayout {
  width: number;
  height: number;
  pieces: PieceSpot[];
  ports: PortSpot[];
  valves: ValveSpot[];
  ends: EndSpot[];
  hoses: HoseRun[];
}

/** A finger's target, and the least from middle to middle. */
export const TOUCH_PX = 44;
