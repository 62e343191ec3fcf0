import { portTaken } from './coupling.ts';
import type { Fault } from './fault.ts';
import { livePort, pours, THROWS_PSI } from './live-ports.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import { hoseWords } from './words/piece-words.ts';

/** Why a hose cannot be found on another port now; undefined where it can. */
export function couplingBar(
  scene: DrillScene,
  state: DrillState,
  { hose: id, port }: Extract<Fault, { kind: 'wrong port' }>,
): string | undefined {
  const hose = state.hoses.find((one) => one.id === id)!;
  const taken = portTaken(scene, state, port);
  if (taken !== undefined) return taken;
  if (Math.max(hose.from.psi, hose.to.psi) > THROWS_PSI || pours(hose))
    return `${hoseWords(scene, id)} has water under pressure: nobody finds it elsewhere. Take a hose that is not charged.`;
  return livePort(scene, state, port)
    ? `${port} is live. Take a port that no water presses at.`
    : undefined;
}
