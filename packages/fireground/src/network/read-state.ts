/** What a solved network says about each piece of its plan. */
import {
  availableFlowGpm,
  fogReactionLb,
  hoseVolumeGal,
  PSI_PER_FT,
  smoothBoreReactionLb,
  velocityFtS,
} from '@plugside/hydraulics';
import { coefficientFor, hoseCatalogue } from '../catalogue/hose.ts';
import { hosePressureLimit, limitsFor } from '../catalogue/limits.ts';
import { nozzleRatedGpm } from '../catalogue/nozzles.ts';
import { capabilityAt, capabilityFor } from '../catalogue/pumps.ts';
import type { Hydrant, Line, Nozzle, Plan, Rig } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';
import type {
  ApplianceState,
  AssistValveState,
  HydrantState,
  LineState,
  NozzleState,
  PumpState,
  RigState,
  SupplyState,
} from '../questions/answers.ts';
import { nodeOfPort } from './pieces-to-links.ts';
import { hoseLink, type PlanNetwork } from './plan-network.ts';

/** Reads a solved plan network; pieces it does not cover are left out. */
export function readState(solved: PlanNetwork): SupplyState {
  const { plan, network } = solved;
  const links = new Set(network.linkIds);
  const nodes = new Set(network.nodeIds);
  const flow = (link: string) => (links.has(link) ? network.flowOf(link) : 0);
  const psi = (node: string) => (nodes.has(node) ? network.pressureOf(node) : 0);
  const reader: Reader = {
    solved,
    flow,
    psi,
    has: (id) => nodes.has(id),
    hasLink: (id) => links.has(id),
  };

  const lines = plan.lines
    .filter((line) => links.has(hoseLink(line)))
    .map((line) => lineState(reader, line));
  const rigs = plan.rigs
    .filter((rig) => nodes.has(`${rig.id}:intake`) || nodes.has(`${rig.id}:discharge`))
    .map((rig) => rigState(reader, rig, lines));
  const scene = plan.rigs.find((rig) => rig.id === plan.scene)!;
  return {
    lines,
    hydrants: plan.hydrants
      .filter((h) => nodes.has(`${h.id}:main`))
      .map((h) => hydrantState(reader, h)),
    assistValves: assistValveStates(reader),
    rigs,
    nozzles: plan.nozzles
      .filter((n) => links.has(`${n.id}:tip`))
      .map((n) => nozzleState(reader, n)),
    appliances: applianceStates(reader),
    sceneGpm: flowInto(plan, scene, lines),
    sceneIntakePsi: psi(`${scene.id}:intake`),
    residual: network.residual,
    iterations: network.iterations,
  };
}

interface Reader {
  solved: PlanNetwork;
  flow(link: string): number;
  psi(node: string): number;
  has(node: string): boolean;
  hasLink(link: string): boolean;
}

/** Net flow of hose into a rig's intakes [gpm]. */
function flowInto(plan: Plan, rig: Rig, lines: readonly LineState[]): number {
  let total = 0;
  for (const line of plan.lines) {
    if (splitPortRef(line.to).pieceId !== rig.id) continue;
    total += lines.find((state) => state.id === line.id)?.flowGpm ?? 0;
  }
  return total;
}

/** Elevation of a line's two ends [ft]. */
export function endElevations(plan: Plan, line: Line): { fromFt: number; toFt: number } {
  return { fromFt: portElevationFt(plan, line.from), toFt: portElevationFt(plan, line.to) };
}

function portElevationFt(plan: Plan, ref: string): number {
  const { pieceId, port } = splitPortRef(ref);
  for (const draft of plan.drafts) if (draft.id === pieceId) return draft.waterElevationFt;
  for (const appliance of plan.appliances) {
    if (appliance.id !== pieceId) continue;
    return appliance.kind === 'standpipe' && port.startsWith('outlet')
      ? appliance.outletElevationFt
      : appliance.elevationFt;
  }
  for (const piece of [...plan.hydrants, ...plan.rigs, ...plan.nozzles]) {
    if (piece.id === pieceId) return piece.elevationFt;
  }
  return 0;
}

function lineState(reader: Reader, line: Line): LineState {
  const { plan } = reader.solved;
  const { coefficient, origin } = coefficientFor(plan, line);
  const flowGpm = reader.flow(hoseLink(line));
  const perLineGpm = flowGpm / line.count;
  const inletPsi = reader.psi(nodeOfPort(plan, line.from));
  const outletPsi = reader.psi(nodeOfPort(plan, line.to));
  const { fromFt, toFt } = endElevations(plan, line);
  const elevationPsi = (toFt - fromFt) * PSI_PER_FT;
  const frictionPsi = (coefficient * perLineGpm * Math.abs(perLineGpm) * line.lengthFt) / 1e6;
  const valveLossPsi =
    typeof line.valve === 'object'
      ? (line.valve.gated.lossPsi * flowGpm * Math.abs(flowGpm)) / line.valve.gated.atGpm ** 2
      : 0;
  const { diameterIn } = hoseCatalogue[line.hose];
  const hoseInletPsi = line.valve === 'shut' ? outletPsi : inletPsi - valveLossPsi;
  const hilltopPsi = leastBetweenPsi(line, hoseInletPsi, frictionPsi, fromFt);
  return {
    id: line.id,
    flowGpm,
    perLineGpm,
    inletPsi,
    outletPsi,
    frictionPsi,
    elevationPsi,
    valveLossPsi,
    coefficient,
    coefficientOrigin: origin,
    velocityFtS: velocityFtS(Math.abs(perLineGpm), diameterIn),
    volumeGal: hoseVolumeGal(diameterIn, line.lengthFt) * line.count,
    greatestPsi: greatestAlongPsi(line, hoseInletPsi, outletPsi, frictionPsi, fromFt),
    ...(hilltopPsi !== undefined && { hilltopPsi }),
    limitPsi: hosePressureLimit(plan, line).limitPsi,
  };
}

/**
 * Greatest pressure [psi] along a hose: at an end, or in a dip between.
 * @param inletPsi behind the valve at its upstream end
 * @param fromFt elevation of that end
 */
export function greatestAlongPsi(
  line: Line,
  inletPsi: number,
  outletPsi: number,
  frictionPsi: number,
  fromFt: number,
): number {
  let greatest = Math.max(inletPsi, outletPsi);
  for (const point of line.terrain ?? []) {
    greatest = Math.max(greatest, psiAt(point, line, inletPsi, frictionPsi, fromFt));
  }
  return greatest;
}

/**
 * Least pressure at the heights between a hose's ends [psi]; undefined where none is known.
 * @param inletPsi behind the valve at its upstream end
 * @param fromFt elevation of that end
 */
export function leastBetweenPsi(
  line: Line,
  inletPsi: number,
  frictionPsi: number,
  fromFt: number,
): number | undefined {
  let least: number | undefined;
  for (const point of line.terrain ?? []) {
    const psi = psiAt(point, line, inletPsi, frictionPsi, fromFt);
    if (least === undefined || psi < least) least = psi;
  }
  return least;
}

function psiAt(
  { alongFt, elevationFt }: NonNullable<Line['terrain']>[number],
  { lengthFt }: Line,
  inletPsi: number,
  frictionPsi: number,
  fromFt: number,
): number {
  const share = lengthFt > 0 ? alongFt / lengthFt : 0;
  return inletPsi - frictionPsi * share - PSI_PER_FT * (elevationFt - fromFt);
}

function hydrantState(reader: Reader, hydrant: Hydrant): HydrantState {
  const { plan } = reader.solved;
  const floor = limitsFor(plan).mainResidualPsi;
  const ports = [
    'steamer',
    ...Array.from({ length: hydrant.sideOutlets }, (_, n) => `side${n + 1}`),
  ];
  const outlets = ports
    .filter((port) => reader.has(`${hydrant.id}.${port}`))
    .map((port) => ({
      port,
      flowGpm: reader.flow(`${hydrant.id}:${port}`),
      psi: reader.psi(`${hydrant.id}.${port}`),
    }));
  return {
    id: hydrant.id,
    // Its stretch of a shared main carries others' water too.
    flowGpm: outlets.reduce((gpm, outlet) => gpm + outlet.flowGpm, 0),
    mainPsi: reader.psi(`${hydrant.id}:main`),
    outlets,
    availableGpm: hydrant.staticPsi > floor ? availableFlowGpm(hydrant, floor) : 0,
  };
}

function assistValveStates(reader: Reader): AssistValveState[] {
  const { plan, network } = reader.solved;
  const states: AssistValveState[] = [];
  for (const valve of plan.appliances) {
    if (valve.kind !== 'assist-valve' || !reader.hasLink(`${valve.id}:clapper`)) continue;
    const clapper = network.stateOf(`${valve.id}:clapper`);
    const state: AssistValveState = {
      id: valve.id,
      handle: valve.handle,
      clapper: valve.clapperStuck === 'shut' ? 'stuck shut' : clapper === 'open' ? 'open' : 'shut',
      hydrantPsi: reader.psi(valve.on),
      supplyPsi: reader.psi(`${valve.id}.supply`),
      clapperGpm: reader.flow(`${valve.id}:clapper`),
      suctionGpm: reader.flow(`${valve.id}:suction`),
      dischargeGpm: reader.flow(`${valve.id}:discharge`),
    };
    if (reader.has(`${valve.id}.pump-suction`))
      state.suctionPsi = reader.psi(`${valve.id}.pump-suction`);
    if (reader.has(`${valve.id}.pump-discharge`))
      state.dischargePsi = reader.psi(`${valve.id}.pump-discharge`);
    states.push(state);
  }
  return states;
}

const PUMP_STATES: Record<string, PumpState> = {
  holding: 'holding',
  'at capability': 'at capability',
  passing: 'passing',
  'not pumping': 'not pumping',
  'protecting intake': 'protecting intake',
};

function rigState(reader: Reader, rig: Rig, lines: readonly LineState[]): RigState {
  const { plan, network } = reader.solved;
  const pump = `${rig.id}:pump`;
  const pumped = reader.hasLink(pump);
  const intakePsi = reader.psi(`${rig.id}:intake`);
  const flowGpm = pumped ? reader.flow(pump) : 0;
  const pdpPsi = reader.has(`${rig.id}:discharge`) ? reader.psi(`${rig.id}:discharge`) : intakePsi;
  const net = capabilityFor(rig).points;
  const speed = rig.setting.mode === 'throttled' ? rig.setting.speedFraction : 1;
  const capability = capabilityAt(rig, Math.max(0, flowGpm) / speed) * speed * speed;
  const netPsi = pdpPsi - intakePsi;
  const intakeGpm: Record<string, number> = {};
  let drafting = false;
  for (const line of plan.lines) {
    const to = splitPortRef(line.to);
    if (to.pieceId !== rig.id) continue;
    const state = lines.find((candidate) => candidate.id === line.id);
    if (!state) continue;
    intakeGpm[to.port] = state.flowGpm;
    if (plan.drafts.some((draft) => draft.id === splitPortRef(line.from).pieceId)) drafting = true;
  }
  const tankGpm = reader.flow(`${rig.id}:tankToPump`);
  const last = net[net.length - 1]![0] * speed;
  const state: RigState = {
    id: rig.id,
    role: rig.role,
    setting: rig.setting,
    intakePsi,
    pdpPsi,
    netPsi,
    flowGpm,
    intakeGpm,
    state: pumped ? (PUMP_STATES[network.stateOf(pump)] ?? 'no flow') : 'no flow',
    capabilityPsi: flowGpm > last + 1e-6 ? 0 : capability,
    capabilityFraction:
      netPsi <= 0
        ? 0
        : capability > 0
          ? Math.min(1, Math.max(netPsi / capability, flowGpm >= last - 1e-3 ? 1 : 0))
          : 1,
    beyondRating: flowGpm > rig.ratedGpm + 0.5,
    drafting,
    tankGpm,
    reliefGpm: reader.flow(`${rig.id}:relief`),
  };
  if (tankGpm > 0.5 && rig.tankGal) state.tankMinutes = rig.tankGal / tankGpm;
  return state;
}

function nozzleState(reader: Reader, nozzle: Nozzle): NozzleState {
  const { plan } = reader.solved;
  const flowGpm = reader.flow(`${nozzle.id}:tip`);
  const node = nozzle.on ? nodeOfPort(plan, nozzle.on) : `${nozzle.id}.inlet`;
  const nodeFt = nozzle.on ? portElevationFt(plan, nozzle.on) : nozzle.elevationFt;
  const pressurePsi = nozzle.open
    ? reader.psi(node) - PSI_PER_FT * (nozzle.elevationFt - nodeFt)
    : 0;
  const pressing = Math.max(0, pressurePsi);
  return {
    id: nozzle.id,
    flowGpm,
    pressurePsi,
    ratedGpm: nozzleRatedGpm(nozzle),
    ratedPsi: nozzle.ratedPsi,
    reactionLb:
      nozzle.kind === 'smooth-bore'
        ? smoothBoreReactionLb(nozzle.tipIn, pressing)
        : fogReactionLb(Math.max(0, flowGpm), pressing),
  };
}

function applianceStates(reader: Reader): ApplianceState[] {
  const { plan } = reader.solved;
  const states: ApplianceState[] = [];
  for (const appliance of plan.appliances) {
    const { id, kind } = appliance;
    if (kind === 'assist-valve') continue;
    const body = kind === 'sprinkler' ? `${id}:heads` : `${id}:body`;
    if (!reader.hasLink(body)) continue;
    states.push({
      id,
      kind,
      flowGpm: reader.flow(body),
      inletPsi: reader.psi(kind === 'wye' ? `${id}.inlet` : `${id}:in`),
      outletPsi: kind === 'sprinkler' ? 0 : reader.psi(`${id}:out`),
    });
  }
  return states;
}
