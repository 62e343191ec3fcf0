/** One solve of a drill's network: every valve, setting and front as it stands, then every pressure and flow. */
import { type Network, NetworkError } from '@plugside/hydraulics';
import { buildDrillNetwork } from './drill-network.ts';
import { clapperStuck, engineIsDead } from './fault.ts';
import { frontAt, frontRisePsi } from './hose-front.ts';
import { readPieces } from './read-pieces.ts';
import type { Drill } from './running-drill.ts';
import { leastOpening, partOpenLossFactor } from './valve-loss.ts';

/** Gallons in a tank that its suction cannot draw; ours. */
export const deadTankGal = 1;

/** Air in a pump that takes half of its pressure [gal]; ours. */
export const CHOKING_AIR_GAL = 5;

/**
 * Solves the network as the state has it, and writes pressures and flows into the state. Where nothing
 * that counts has changed since the last solve, its answer stands.
 * @returns false where the solver gave up: pressures and flows stand as they were
 */
export function solveFlows(drill: Drill): boolean {
  if (drill.stale || drill.applied.length === 0) {
    if (drill.stale) drill.net = buildDrillNetwork(drill.scene, drill.state);
    drill.stale = false;
    const { scene } = drill;
    const size = drill.net.valved.length + 4 * scene.hoses.length + 3 * scene.pumps.length;
    drill.applied = new Float64Array(size + scene.plan.appliances.length).fill(Number.NaN);
  }
  const { network } = drill.net;
  if (!network) {
    readPieces(drill);
    return !drill.net.refused;
  }
  if (!apply(drill, network)) return true;
  try {
    // From nothing, so that the answer hangs on the state alone and not on how it came about.
    network.forget();
    network.solve();
  } catch (error) {
    if (!(error instanceof NetworkError)) throw error;
    drill.applied.fill(Number.NaN);
    return false;
  }
  readPieces(drill);
  return true;
}

/** @returns whether anything was set that was not so before */
function apply(drill: Drill, network: Network): boolean {
  const { scene, state, net, applied } = drill;
  let at = 0;
  let changed = false;
  /** Whether a value differs from the one last set. */
  const differs = (value: number): boolean => {
    const same = applied[at] === value;
    applied[at++] = value;
    if (!same) changed = true;
    return !same;
  };
  for (const { link, valve, baseK, boreIn, openK } of net.valved) {
    const { opening } = state.valves[valve]!;
    if (!differs(opening)) continue;
    network.setShut(link, opening < leastOpening);
    if (opening < leastOpening) continue;
    const factor =
      openK === undefined
        ? baseK + partOpenLossFactor(opening, boreIn)
        : 1 / (openK * opening * openK * opening);
    network.setLossFactor(link, factor);
  }
  state.hoses.forEach((hose, index) => {
    for (const end of ['from', 'to'] as const) {
      const present = net.places.hoses[index]![end].front >= 0;
      const front = present ? frontAt(drill, index, end) : undefined;
      const rise = present ? frontRisePsi(drill, index, end) : 0;
      if (differs(front?.lossFactor ?? 0) && front)
        network.setLossFactor(`${hose.id}:${end}`, front.lossFactor);
      if (differs(front ? front.airPsi + rise : 0) && front)
        network.setFixedPsi(`${hose.id}:air-${end}`, front.airPsi + rise);
    }
  });
  state.pumps.forEach((pump, index) => {
    const place = net.places.pumps[index]!;
    const tank = state.tanks.find((one) => one.rigId === pump.rigId);
    const present = place.pump >= 0;
    const runs = present && pump.inGear && pump.primed && !engineIsDead(state, pump.rigId);
    const share = 1 - 0.5 * Math.min(1, pump.airGal / CHOKING_AIR_GAL);
    const setting = pump.mode === 'governed' ? pump.pdpPsi * share : pump.speed * Math.sqrt(share);
    const mode = differs(runs ? (pump.mode === 'governed' ? 1 : 2) : 0);
    const set = differs(setting);
    if (present && (mode || set)) {
      const link = `${pump.rigId}:pump`;
      if (!runs) network.setIdle(link);
      else if (pump.mode === 'governed') network.setPdpPsi(link, setting);
      else network.setSpeed(link, Math.max(0.05, setting));
    }
    const empty = tank !== undefined && tank.gal <= deadTankGal;
    const turned = differs(empty ? 1 : 0);
    if (place.tankToPump < 0) return;
    const tankLink = `${pump.rigId}:tankToPump`;
    // Its valve may have moved above, and opened what an empty tank shuts.
    if (empty) network.setShut(tankLink, true);
    else if (turned) {
      const valve = state.valves.find((one) => one.id === `${pump.rigId}.tankToPump`);
      network.setShut(tankLink, (valve?.opening ?? 0) < leastOpening);
    }
  });
  for (const appliance of scene.plan.appliances) {
    if (appliance.kind !== 'assist-valve') continue;
    const stuck = clapperStuck(scene.plan, state, appliance.id) === 'shut';
    if (differs(stuck ? 1 : 0) && net.link(`${appliance.id}:clapper`) >= 0)
      network.setShut(`${appliance.id}:clapper`, stuck);
  }
  return changed;
}
