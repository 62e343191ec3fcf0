/** Ports with water pressing at them, and hose that pours. */
import { type PortRef, splitPortRef } from '@plugside/fireground';
import type { DrillScene } from './scene.ts';
import type { DrillState, HoseState } from './state.ts';
import { leastOpening } from './valve-loss.ts';

/** Pressure that throws water and holds a coupling fast [psi]; ours. */
export const THROWS_PSI = 3;
/** Flow out of a hose that nobody can couple [gpm]; ours. */
const POURS_GPM = 5;

export interface LivePort {
  /** What would come out [psi]. */
  psi: number;
  /** The valve that has to be shut first. */
  valve: string;
}

/** What presses at a port that is free, past its open valve; undefined where nobody would get wet. */
export function livePort(
  scene: DrillScene,
  state: DrillState,
  port: PortRef,
): LivePort | undefined {
  const { pieceId, port: name } = splitPortRef(port);
  const opening = (id: string) => state.valves.find((one) => one.id === id)?.opening;
  const live = (psi: number | undefined, valve: string): LivePort | undefined =>
    psi !== undefined && psi > THROWS_PSI && (opening(valve) ?? 0) >= leastOpening
      ? { psi, valve }
      : undefined;
  const hydrant = state.hydrants.find(({ id }) => id === pieceId);
  if (hydrant)
    return live(hydrant.barrelPsi, opening(port) === undefined ? `${pieceId}.stem` : port);
  const pump = state.pumps.find(({ rigId }) => rigId === pieceId);
  if (pump) return live(name.startsWith('intake') ? pump.intakePsi : pump.dischargePsi, port);
  const assist = state.assistValves.find(({ id }) => id === pieceId);
  if (assist) {
    const piece = scene.plan.appliances.find(({ id }) => id === pieceId);
    const stem =
      piece?.kind === 'assist-valve' ? `${splitPortRef(piece.on).pieceId}.stem` : `${pieceId}.stem`;
    if (name === 'supply') return live(assist.hydrantPsi, stem);
    // Its pump-discharge inlet has a clapper of its own.
    return name === 'pump-suction' ? live(assist.hydrantPsi, `${pieceId}.handle`) : undefined;
  }
  const feeding = state.hoses.filter(
    ({ to, phase }) =>
      phase === 'full' && to.port !== null && splitPortRef(to.port).pieceId === pieceId,
  );
  return live(Math.max(0, ...feeding.map(({ to }) => to.psi)), port);
}

/** Whether water runs out of a hose at a loose or broken end. */
export function pours(hose: HoseState): boolean {
  return hose.phase !== 'full' && hose.from.gpm + hose.to.gpm >= POURS_GPM;
}
