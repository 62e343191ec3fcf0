import type { DrillScene, ValveView } from '@plugside/drill';
import type { StageLayout } from './layout-shape.ts';

/** A layout as it is being made, row by row. */
export interface Making {
  scene: DrillScene;
  valves: readonly ValveView[];
  /** Ports to draw. */
  shown: ReadonlySet<string>;
  width: number;
  /** Room at either side where hose comes in and leaves. */
  marginPx: number;
  layout: StageLayout;
}

/** From one row of ports to the next: a target, its caption, a gap [px]. */
export const ROW_PX = 66;
