import { buildDrillNetwork } from './drill-network.ts';
import { initialState } from './initial-state.ts';
import type { DrillLog } from './log.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene } from './scene.ts';
import { solveFlows } from './solve-flows.ts';
import type { DrillState } from './state.ts';

/**
 * A drill at its first tick, its pressures those of the scene at rest.
 * @param seed of what is random: gauges alone [whole number 0 … 2³²−1]
 * @throws RangeError for a seed out of range
 */
export function createDrill(scene: DrillScene, seed: number): Drill {
  if (!Number.isInteger(seed) || seed < 0 || seed > 0xffffffff)
    throw new RangeError(`seed is ${seed}. Give a whole number from 0 to 4294967295.`);
  const drill = restoreDrill(scene, initialState(scene, seed));
  solveFlows(drill);
  const { state } = drill;
  for (const pump of state.pumps) {
    pump.intakeGaugePsi = pump.intakePsi;
    pump.dischargeGaugePsi = pump.dischargePsi;
  }
  return drill;
}

/**
 * A drill that goes on from a state that was written down. It goes on exactly as the one it was taken
 * from would have.
 * @param log its log so far, if it is to be kept on
 */
export function restoreDrill(scene: DrillScene, state: DrillState, log: DrillLog = []): Drill {
  const own = structuredClone(state);
  return {
    scene,
    state: own,
    log: [...log],
    net: buildDrillNetwork(scene, own),
    stale: false,
    applied: new Float64Array(0),
  };
}
