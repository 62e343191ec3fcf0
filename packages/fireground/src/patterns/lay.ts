import type { HoseSize, Line, PortRef } from '../plan/plan.ts';
import { newLine } from './pieces.ts';

/** Hose from source to scene. */
export interface LayOptions {
  hose?: HoseSize;
  lengthFt?: number;
  /** Height of the scene above the source [ft]; below it when negative. */
  riseFt?: number;
  /** Like lines side by side. */
  count?: number;
}

export const usualLay: Required<LayOptions> = { hose: '5', lengthFt: 600, riseFt: 0, count: 1 };

/** A lay's options with what was left out filled in. */
export function fillLay(lay: LayOptions = {}): Required<LayOptions> {
  return {
    hose: lay.hose ?? usualLay.hose,
    lengthFt: lay.lengthFt ?? usualLay.lengthFt,
    riseFt: lay.riseFt ?? usualLay.riseFt,
    count: lay.count ?? usualLay.count,
  };
}

/** The line of a lay from one port to another. */
export function layLine(from: PortRef, to: PortRef, lay: Required<LayOptions>): Line {
  return newLine('lay', from, to, lay.hose, lay.lengthFt, { count: lay.count });
}
