import { splitPortRef } from '@plugside/fireground';
import type { DrillScene } from './scene.ts';
import type { DrillState, HoseState } from './state.ts';
import { leastOpening } from './valve-loss.ts';

/**
 * Whether a full hose keeps the pressure that stood in it: both its ends are behind shut valves, and no
 * bleeder lets it off. Height between the ends is left out.
 */
export function holdsPressure(scene: DrillScene, state: DrillState, hose: HoseState): boolean {
  return (
    hose.phase === 'full' &&
    isShut(scene, state, hose.from.port) &&
    isShut(scene, state, hose.to.port)
  );
}

function isShut(scene: DrillScene, state: DrillState, port: string | null): boolean {
  if (port === null) return false;
  const opening = (id: string) => state.valves.find((valve) => valve.id === id)?.opening;
  if ((opening(`${port}.bleeder`) ?? 0) > 0) return false;
  const { pieceId } = splitPortRef(port);
  const piece = scene.plan.appliances.find(({ id }) => id === pieceId);
  // Behind an assist valve or on a steamer the hydrant's stem shuts, on a nozzle its bale.
  const on = piece?.kind === 'assist-valve' ? splitPortRef(piece.on).pieceId : pieceId;
  const shut = opening(port) ?? opening(`${pieceId}.bale`) ?? opening(`${on}.stem`) ?? 1;
  return shut < leastOpening;
}
