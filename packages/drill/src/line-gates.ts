/** Lines that want less than their pump holds for others: their discharges are gated. */
import { attackSettings, type Plan, splitPortRef } from '@plugside/fireground';
import { NetworkError } from '@plugside/hydraulics';
import type { DrillScene } from './scene.ts';
import { openingForLossFactor } from './valve-loss.ts';

/** A discharge is gated where its line wants so much less than its pump holds [psi]; ours. */
const GATES_FROM_PSI = 10;

/** What stands behind the gate of such a line once its nozzle flows. */
export interface LineGate {
  /** Pressure at its discharge that gives its nozzles their rated pressure and flow [psi]. */
  psi: number;
  /** That flow [gpm]. */
  gpm: number;
}

/**
 * The lines from the pump at the scene that are gated when all of them flow, by id: those that want at least
 * 10 psi less than the pump holds, or than what the line that wants the most does where it is not governed.
 * What a line wants is its nozzle's rated pressure, what its hose loses at the rated flow, and its rise, as
 * the plan's network has it.
 */
export function lineGates(plan: Plan): ReadonlyMap<string, LineGate> {
  const gates = new Map<string, LineGate>();
  const rig = plan.rigs.find(({ id }) => id === plan.scene);
  if (!rig) return gates;
  const isFromIt = (id: string) =>
    splitPortRef(plan.lines.find((line) => line.id === id)!.from).pieceId === rig.id;
  const { pdpPsi, gate } = settingsOf(plan);
  const holdsPsi = rig.setting.mode === 'governed' ? rig.setting.pdpPsi : pdpPsi;
  for (const { line, lossPsi, atGpm } of gate) {
    const psi = pdpPsi - lossPsi;
    if (isFromIt(line) && holdsPsi - psi >= GATES_FROM_PSI) gates.set(line, { psi, gpm: atGpm });
  }
  return gates;
}

/** All lines at their rating; nothing to gate where the network cannot be worked out. */
function settingsOf(plan: Plan): Pick<ReturnType<typeof attackSettings>, 'pdpPsi' | 'gate'> {
  try {
    return attackSettings({
      ...plan,
      lines: plan.lines.map((line) => ({ ...line, valve: 'open' })),
      nozzles: plan.nozzles.map((nozzle) => ({ ...nozzle, open: true })),
    });
  } catch (error) {
    if (!(error instanceof NetworkError)) throw error;
    return { pdpPsi: 0, gate: [] };
  }
}

/**
 * How far open a discharge stands that takes a pump's pressure down to what its line wants.
 * @param pumpPsi what the pump holds [psi, over `gate.psi`]
 * @param boreIn bore of the discharge's valve [in > 0]
 * @returns opening [0 … 1]
 */
export function gatedOpening(gate: LineGate, pumpPsi: number, boreIn: number): number {
  return openingForLossFactor((pumpPsi - gate.psi) / (gate.gpm * gate.gpm), boreIn);
}

/**
 * How far a discharge is opened for the hose on it: part of the way for one that is gated in this scene, else
 * all of it. @param pumpPsi what the pump holds [psi >= 0]
 */
export function openingOnto(
  scene: DrillScene,
  hose: string | undefined,
  valve: string,
  pumpPsi: number,
): number {
  if (scene.hoses.find(({ id }) => id === hose)?.gatedPsi === undefined) return 1;
  const gate = lineGates(scene.plan).get(hose!);
  const boreIn = scene.valves.find(({ id }) => id === valve)?.boreIn;
  if (!gate || boreIn === undefined || pumpPsi <= gate.psi) return 1;
  return gatedOpening(gate, pumpPsi, boreIn);
}
