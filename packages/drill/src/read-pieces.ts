import { splitPortRef } from '@plugside/fireground';
import type { Network } from '@plugside/hydraulics';
import { PSI_PER_FT } from '@plugside/hydraulics';
import { clapperStuck, engineIsDead } from './fault.ts';
import { onGrid } from './grid.ts';
import { heldPsi, isShutPump } from './held-pressure.ts';
import { nodeOfPort, portElevationFt } from './port-node.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import type { HoseState, PumpCondition, PumpState } from './state.ts';
import { leastOpening } from './valve-loss.ts';

/** Writes the network's pressures and flows into the state, on the grid; 0 where there is no water. */
export function readPieces(drill: Drill): void {
  const { scene, state, net } = drill;
  const { network } = net;
  const gpm = (link: string) => {
    const at = net.link(link);
    return at < 0 || !network ? 0 : onGrid(network.flowGpm[at]!);
  };
  const psi = (node: string) => {
    const at = net.node(node);
    return at < 0 || !network ? 0 : onGrid(network.pressurePsi[at]!);
  };
  const stoodPsi = state.hoses.map(({ from, to }) => Math.max(from.psi, to.psi));
  for (const hose of state.hoses) {
    hose.flowGpm = gpm(`${hose.id}:hose`);
    for (const end of ['from', 'to'] as const) {
      const { port } = hose[end];
      hose[end].psi = port === null ? 0 : psi(nodeOfPort(port));
      hose[end].gpm = Math.max(0, gpm(`${hose.id}:${end}`));
    }
  }
  keepHeld(drill, stoodPsi, psi);
  for (const hydrant of state.hydrants) {
    // The curve of a shared main carries others' water too.
    const shares = net.sharers.some((ids) => ids.includes(hydrant.id));
    hydrant.flowGpm = gpm(`${hydrant.id}:${shares ? 'stem' : 'curve'}`);
    const still = scene.plan.hydrants.find((one) => one.id === hydrant.id)!.staticPsi;
    hydrant.mainPsi = net.node(`${hydrant.id}:main`) < 0 ? still : psi(`${hydrant.id}:main`);
    hydrant.barrelPsi = psi(`${hydrant.id}:barrel`);
  }
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
  for (const pump of state.pumps) {
    readPump(drill, pump, gpm, psi, network);
    if (pump.intakePsi === 0 && pump.dischargePsi === 0 && pump.flowGpm === 0)
      readShutPump(drill, pump);
  }
  for (const nozzle of state.nozzles) {
    const piece = scene.plan.nozzles.find((one) => one.id === nozzle.id)!;
    const port = piece.on ?? `${piece.id}.inlet`;
    nozzle.flowGpm = Math.max(0, gpm(`${nozzle.id}:tip`));
    const rise = PSI_PER_FT * (piece.elevationFt - portElevationFt(scene.plan, port));
    nozzle.pressurePsi = nozzle.flowGpm > 0 ? onGrid(Math.max(0, psi(nodeOfPort(port)) - rise)) : 0;
  }
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
      if (isOnClapper(hose) !== onClapper || stood === 0) return;
      if (hose.from.psi > 0 || hose.to.psi > 0) return;
      const held = onGrid(heldPsi(scene, state, hose, stood, supplyOf));
      hose.from.psi = held;
      hose.to.psi = held;
    });
}

function readPump(
  drill: Drill,
  pump: PumpState,
  gpm: (link: string) => number,
  psi: (node: string) => number,
  network: Network | undefined,
): void {
  const id = pump.rigId;
  const link = `${id}:pump`;
  pump.flowGpm = gpm(link);
  pump.intakePsi = psi(`${id}:intake`);
  pump.dischargePsi = psi(`${id}:discharge`);
  pump.tankGpm = gpm(`${id}:tankToPump`);
  pump.reliefGpm = gpm(`${id}:relief`);
  pump.condition = conditionOf(drill, pump, drill.net.link(link) < 0 ? undefined : network);
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
