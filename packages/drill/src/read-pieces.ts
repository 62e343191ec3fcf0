import type { Network } from '@plugside/hydraulics';
import { PSI_PER_FT } from '@plugside/hydraulics';
import { clapperStuck, engineIsDead } from './fault.ts';
import { onGrid } from './grid.ts';
import { holdsPressure } from './held-pressure.ts';
import { nodeOfPort, portElevationFt } from './port-node.ts';
import type { Drill } from './running-drill.ts';
import type { PumpCondition, PumpState } from './state.ts';

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
  for (const hose of state.hoses) {
    hose.flowGpm = gpm(`${hose.id}:hose`);
    const stood = Math.max(hose.from.psi, hose.to.psi);
    for (const end of ['from', 'to'] as const) {
      const { port } = hose[end];
      hose[end].psi = port === null ? 0 : psi(nodeOfPort(port));
      hose[end].gpm = Math.max(0, gpm(`${hose.id}:${end}`));
    }
    const now = Math.max(hose.from.psi, hose.to.psi);
    if (now < stood && now === 0 && holdsPressure(scene, state, hose)) {
      hose.from.psi = stood;
      hose.to.psi = stood;
    }
  }
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
  for (const pump of state.pumps) readPump(drill, pump, gpm, psi, network);
  for (const nozzle of state.nozzles) {
    const piece = scene.plan.nozzles.find((one) => one.id === nozzle.id)!;
    const port = piece.on ?? `${piece.id}.inlet`;
    nozzle.flowGpm = Math.max(0, gpm(`${nozzle.id}:tip`));
    const rise = PSI_PER_FT * (piece.elevationFt - portElevationFt(scene.plan, port));
    nozzle.pressurePsi = nozzle.flowGpm > 0 ? onGrid(Math.max(0, psi(nodeOfPort(port)) - rise)) : 0;
  }
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
