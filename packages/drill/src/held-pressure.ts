import { splitPortRef } from '@plugside/fireground';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState, HoseState } from './state.ts';
import { leastOpening } from './valve-loss.ts';

/**
 * Pressure that a full hose keeps which no water presses on any more [psi]: what stood in it, where both its
 * ends are behind shut valves and no bleeder or drain lets it off; behind a clapper, no more than what stands
 * on the clapper's other side; 0 where it lets itself off. Height between the ends is left out.
 * @param stoodPsi what stood in it [psi >= 0]
 * @param supplyPsi what stands in the supply hose of an assist valve, by the valve's id [psi >= 0]
 */
export function heldPsi(
  scene: DrillScene,
  state: DrillState,
  hose: HoseState,
  stoodPsi: number,
  supplyPsi: (valveId: string) => number,
): number {
  if (hose.phase !== 'full') return 0;
  return Math.min(
    keptAt(scene, state, hose.from.port, stoodPsi, supplyPsi),
    keptAt(scene, state, hose.to.port, stoodPsi, supplyPsi),
  );
}

/** What one end keeps of it. */
function keptAt(
  scene: DrillScene,
  state: DrillState,
  port: string | null,
  stoodPsi: number,
  supplyPsi: (valveId: string) => number,
): number {
  if (port === null) return 0;
  const opening = (id: string) => state.valves.find((valve) => valve.id === id)?.opening;
  const isShut = (valve: string) => (opening(valve) ?? 1) < leastOpening;
  if ((opening(`${port}.bleeder`) ?? 0) > 0) return 0;
  const { pieceId, port: name } = splitPortRef(port);
  const piece = scene.plan.appliances.find(({ id }) => id === pieceId);
  if (piece?.kind !== 'assist-valve') {
    // On a steamer the hydrant's stem shuts, on a nozzle its bale.
    const shut = opening(port) ?? opening(`${pieceId}.bale`) ?? opening(`${pieceId}.stem`) ?? 1;
    if (shut < leastOpening) return stoodPsi;
    return hasRules(scene, 3) && isShutPump(scene, state, port) ? stoodPsi : 0;
  }
  const stem = `${splitPortRef(piece.on).pieceId}.stem`;
  if (!hasRules(scene, 3)) return isShut(stem) ? stoodPsi : 0;
  const clapper = state.assistValves.find(({ id }) => id === pieceId)?.clapper;
  switch (name) {
    case 'pump-discharge':
      // Its clapper lets water on into the supply, and none back.
      return Math.min(stoodPsi, supplyPsi(pieceId));
    case 'pump-suction':
      if (isShut(`${pieceId}.handle`) || clapper === 'stuck shut') return stoodPsi;
      // Past the handle the other clapper lets it on into the supply.
      return Math.min(stoodPsi, supplyPsi(pieceId));
    default:
      // Both clappers hold what is in the supply, but one that sticks open: then the hydrant's stem does.
      return clapper !== 'stuck open' || isShut(stem) ? stoodPsi : 0;
  }
}

/**
 * Whether a port leads into a pump that is shut all round but for it: every other port that hose is or was
 * on, and its tank fill. The tank itself is behind a check.
 */
export function isShutPump(scene: DrillScene, state: DrillState, port: string): boolean {
  const { pieceId } = splitPortRef(port);
  if (!state.pumps.some(({ rigId }) => rigId === pieceId)) return false;
  const used = new Set([
    ...state.uncapped,
    ...state.hoses.flatMap(({ from, to }) => [from.port, to.port]),
  ]);
  return scene.valves.every(({ id, kind, pieceId: owner }) => {
    if (owner !== pieceId || id === port) return true;
    const counts = kind === 'tank fill' || used.has(id);
    return !counts || state.valves.find((one) => one.id === id)!.opening < leastOpening;
  });
}
