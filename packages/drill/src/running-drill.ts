import type { DrillNetwork } from './drill-network.ts';
import type { DrillLog } from './log.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';

/** A drill that runs. Its state is plain JSON; the rest can be made again from scene and state. */
export interface Drill {
  readonly scene: DrillScene;
  state: DrillState;
  log: DrillLog;
  /** Of the arrangement as it stands; internal. */
  net: DrillNetwork;
  /** The arrangement has changed since `net` was built. */
  stale: boolean;
  /** What was last set in `net`, so that nothing is solved twice. */
  applied: Float64Array;
}
