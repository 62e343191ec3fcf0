import { splitPortRef } from '@plugside/fireground';
import type { Network } from '@plugside/hydraulics';
import { PSI_PER_FT } from '@plugside/hydraulics';
import { clapperStuck, engineIsDead } from './fault.ts';
import { onGrid } from './grid.ts';
import { heldPsi, isShutPump } from './held-pressure.ts';
import { portElevationFt } from './port-node.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import type { HoseState, PumpCondition, PumpState } from './state.ts';
import { leastOpening } from './valve-loss.ts';

/** Writes the network's pressures and flows into the state, on the grid; 0 where there is no water. */
export function readPieces(drill: Drill): void {
  const { scene, state, net } = drill;
  const { network, places } = net;
  const gpmAt = (link: number) => (link < 0 || !network ? 0 : onGrid(network.flowGpm[link]!));
  const psiAt = (node: number) => (node < 0 || !network ? 0 : onGrid(network.pressurePsi[node]!));
  const gpm = (link: string) => gpmAt(net.link(link));
  const psi = (node: string) => psiAt(net.node(node));
  const stoodPsi = state.hoses.map(({ from, to }) => Math.max(from.psi, to.psi));
  state.hoses.forEach((hose, at) => {
    const place = places.hoses[at]!;
    hose.flowGpm = gpmAt(place.flow);
    for (const end of ['from', 'to'] as const) {
      hose[end].psi = psiAt(place[end].node);
      hose[end].gpm = Math.max(0, gpmAt(place[end].front));
    }
  });
  keepHeld(drill, stoodPsi, psi);
  state.hydrants.forEach((hydrant, at) => {
    const { flow, main, barrel } = places.hydrants[at]!;
    hydrant.flowGpm = gpmAt(flow);
    hydrant.mainPsi = main < 0 ? scene.plan.hydrants[at]!.staticPsi : psiAt(main);
    hydrant.barrelPsi = psiAt(barrel);
  });
  for (const valve of state.assistValves) {
    const piece = scene.plan.appliances.find((one) => one.id === valve.id);
    if (piece?.kind !== 'assist-valve') continue;
    valve.hydrantPsi = psi(piece.on);
    valve.supplyPsi = psi(`${valve.id}.supply`);
    valve.suctionPsi = psi(`${valve.id}.pump-suction`);
    valve.dischargePsi = psi(`${valve.id}.pump-discharge`);
    valve.clapperGpm = gpm(`${valve.id}:clapper`);
    valve.suctionGpm = gpm(`${valve.id}:suction`);
    valve.dischargeGpm = gpm(`${valve.id}:discharge`);
    const stuck = clapperStuck(scene.plan, state, valve.id);
    if (stuck) valve.clapper = stuck === 'open' ? 'stuck open' : 'stuck shut';
    else valve.clapper = valve.clapperGpm > 0.01 ? 'open' : 'shut';
  }
  state.pumps.forEach((pump, at) => {
    const place = places.pumps[at]!;
    pump.flowGpm = gpmAt(place.pump);
    pump.intakePsi = psiAt(place.intake);
    pump.dischargePsi = psiAt(place.discharge);
    pump.tankGpm = gpmAt(place.tankToPump);
    pump.reliefGpm = gpmAt(place.relief);
    pump.condition = conditionOf(drill, pump, place.pump < 0 ? undefined : network);
    if (pump.intakePsi === 0 && pump.dischargePsi === 0 && pump.flowGpm === 0)
      readShutPump(drill, pump);
  });
  state.nozzles.forEach((nozzle, at) => {
    const piece = scene.plan.nozzles[at]!;
    const { tip, node } = places.nozzles[at]!;
    nozzle.flowGpm = Math.max(0, gpmAt(tip));
    if (nozzle.flowGpm === 0) {
      nozzle.pressurePsi = 0;
      return;
    }
    const heightFt = portElevationFt(scene.plan, piece.on ?? `${piece.id}.inlet`);
    const rise = PSI_PER_FT * (piece.elevationFt - heightFt);
    nozzle.pressurePsi = onGrid(Math.max(0, psiAt(node) - rise));
  });
}

/** Hose that nothing presses on any more keeps what its valves and clappers hold of what stood in it. */
function keepHeld(
  { scene, state }: Drill,
  stoodPsi: readonly number[],
  psi: (node: string) => number,
): void {
  const supplyOf = (valveId: string) => {
    const port = `${valveId}.supply`;
    const on = state.hoses.find(({ from, to }) => from.port === port || to.port === port);
    const stands = on?.phase === 'full' ? Math.max(on.from.psi, on.to.psi) : 0;
    return Math.max(stands, psi(port));
  };
  const isOnClapper = ({ from, to }: HoseState) =>
    [from.port, to.port].some((port) => port !== null && /\.pump-(suction|discharge)$/.test(port));
  // What a supply hose keeps counts for those that are on its clappers.
  for (const onClapper of [false, true])
    state.hoses.forEach((hose, at) => {
      const stood = stoodPsi[at]!;
      if (stood === 0 || hose.from.psi > 0 || hose.to.psi > 0) return;
      if (isOnClapper(hose) !== onClapper) return;
      const held = onGrid(heldPsi(scene, state, hose, stood, supplyOf));
      hose.from.psi = held;
      hose.to.psi = held;
    });
}

/** A pump that is shut all round stands at what the hose on its open port keeps. */
function readShutPump({ scene, state }: Drill, pump: PumpState): void {
  if (!hasRules(scene, 3)) return;
  for (const { from, to, phase } of state.hoses)
    for (const { port, psi } of [from, to]) {
      if (phase !== 'full' || psi === 0 || port === null) continue;
      if (splitPortRef(port).pieceId !== pump.rigId || !isShutPump(scene, state, port)) continue;
      const { opening } = state.valves.find(({ id }) => id === port)!;
      if (opening < leastOpening) continue;
      pump.intakePsi = psi;
      pump.dischargePsi = psi;
    }
}

function conditionOf(
  { scene, state }: Drill,
  pump: PumpState,
  network: Network | undefined,
): PumpCondition {
  if (engineIsDead(state, pump.rigId)) return 'dead';
  if (!pump.primed) return 'lost prime';
  if (!pump.inGear) return 'out of gear';
  if (!network) return 'no flow';
  switch (network.stateOf(`${pump.rigId}:pump`)) {
    case 'holding':
      return 'pumping';
    case 'at capability':
      return 'at capability';
    case 'passing':
    case 'not pumping':
      return 'passing';
    case 'protecting intake': {
      // Its own governor's floor, or the least that a pump can draw.
      const own = scene.plan.rigs.find((rig) => rig.id === pump.rigId)?.protectIntakePsi;
      return own !== undefined && pump.intakePsi > own - 0.1 && own > 0
        ? 'at capability'
        : 'cavitating';
    }
    default:
      return 'no flow';
  }
}
