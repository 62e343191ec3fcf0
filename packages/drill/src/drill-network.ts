/**
 * The network behind one arrangement of a drill: which hose is on which port, which hose is full. It is
 * built when that changes; valves, settings and filling change in place. Pieces compile as they do in
 * a plan, so that a drill at rest has the plan's answer.
 */
import {
  addAppliance,
  addDraftSource,
  addHydrant,
  addNode,
  type Draft,
  type PortRef,
  pumpLinkOf,
  type Rig,
  splitPortRef,
  tankLoss,
} from '@plugside/fireground';
import { buildNetwork, type LinkSpec, type Network, NetworkError } from '@plugside/hydraulics';
import { bleederBoreIn, tankFillBoreIn } from './defaults.ts';
import { inEffect } from './fault.ts';
import { nozzleLinks } from './nozzle-links.ts';
import { nodeOfPort, portElevationFt } from './port-node.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState, HoseState } from './state.ts';
import { boreK } from './valve-loss.ts';
import { withWater } from './with-water.ts';

/** A pump cannot pull its intake under this: 20 inHg of vacuum where it lifts from a tank or open water … */
export const leastDraftIntakePsi = -9.8;
/** … and next to nothing where soft hose feeds it, which goes flat. Both ours. */
export const leastHoseIntakePsi = -2;

/** A link whose loss goes with a valve: `baseK + extra(opening)`. */
export interface ValvedLink {
  link: string;
  /** Index in the state's valves. */
  valve: number;
  baseK: number;
  boreIn: number;
  /** An opening to the air: its K [gpm/√psi] shrinks with the opening instead. */
  openK?: number;
}

export interface DrillNetwork {
  /** Left out: no water gets anywhere. */
  network: Network | undefined;
  /** The solver takes no such network. */
  refused: boolean;
  valved: ValvedLink[];
  /** Index of a link in `flowGpm`, of a node in `pressurePsi`; -1 where it is not in the network. */
  link(id: string): number;
  node(id: string): number;
}

/** The port's valve in the scene: index, or -1. */
export function valveIndex(scene: DrillScene, id: string): number {
  return scene.valves.findIndex((valve) => valve.id === id);
}

interface Making {
  scene: DrillScene;
  state: DrillState;
  draft: Draft;
  valved: ValvedLink[];
  used: (port: PortRef) => boolean;
}

/** Builds the network of a state's arrangement. */
export function buildDrillNetwork(scene: DrillScene, state: DrillState): DrillNetwork {
  const { plan } = scene;
  const ports = new Set<PortRef>(state.uncapped);
  for (const hose of state.hoses)
    for (const end of [hose.from, hose.to]) if (end.port !== null) ports.add(end.port);
  for (const one of plan.appliances) if (one.kind === 'assist-valve') ports.add(one.on);
  const used = (port: PortRef) => ports.has(port);
  const making: Making = { scene, state, draft: { nodes: new Map(), links: [] }, valved: [], used };

  for (const hydrant of plan.hydrants) addDrillHydrant(making, hydrant.id);
  for (const source of plan.drafts) addDraftSource(making.draft, source, used);
  for (const rig of plan.rigs) addDrillRig(making, rig);
  for (const appliance of plan.appliances) {
    addAppliance(making.draft, appliance, used);
    gateOutlets(making, appliance.id, appliance.elevationFt);
    if (appliance.kind === 'assist-valve') {
      if (used(`${appliance.id}.pump-suction`))
        valveOn(making, `${appliance.id}:suction`, `${appliance.id}.handle`);
      const inlet = making.draft.links.find((link) => link.id === `${appliance.id}:discharge`);
      // A clapper of its own: an empty hose may be coupled here while the supply flows.
      if (inlet?.kind === 'loss') inlet.check = true;
    }
  }
  state.hoses.forEach((hose, at) => {
    addHose(making, hose, at);
  });
  for (const nozzle of plan.nozzles) nozzleLinks(making.draft, plan, nozzle);
  for (const nozzle of plan.nozzles) valveOnNozzle(making, nozzle.id);
  for (const port of state.uncapped) addOpenPort(making, port);
  return built(making);
}

function built({ draft, valved }: Making): DrillNetwork {
  const spec = withWater({ nodes: [...draft.nodes.values()], links: draft.links });
  let network: Network | undefined;
  let refused = false;
  try {
    network = spec && buildNetwork(spec);
  } catch (error) {
    if (!(error instanceof NetworkError)) throw error;
    refused = true;
  }
  const links = new Map(network && spec?.links.map((link, at) => [link.id, at]));
  const nodes = new Map(network && spec?.nodes.map((node, at) => [node.id, at]));
  return {
    network,
    refused,
    valved: valved.filter(({ link }) => links.has(link)),
    link: (id) => links.get(id) ?? -1,
    node: (id) => nodes.get(id) ?? -1,
  };
}

/** The link's loss goes with a valve from now on; its loss when open is what it was compiled with. */
function valveOn({ scene, draft, valved }: Making, link: string, valveId: string): void {
  const spec = draft.links.find((one) => one.id === link);
  const valve = valveIndex(scene, valveId);
  if (spec?.kind !== 'loss' || valve < 0) return;
  // Handles and gates move in the drill, whatever the plan has them at.
  spec.shut = false;
  const baseK = spec.lossPsi / (spec.atGpm * spec.atGpm);
  valved.push({ link, valve, baseK, boreIn: scene.valves[valve]!.boreIn });
}

function addDrillHydrant(making: Making, id: string): void {
  const { scene, state, draft, used } = making;
  const hydrant = scene.plan.hydrants.find((one) => one.id === id)!;
  const weak = state.faults.find(
    (fault) => fault.kind === 'hydrant weak' && fault.hydrant === id && inEffect(state, fault),
  );
  const share = weak?.kind === 'hydrant weak' ? weak.share : 1;
  const first = draft.links.length;
  addHydrant(draft, { ...hydrant, testGpm: hydrant.testGpm * share }, used);
  const barrel = addNode(draft, `${id}:barrel`, hydrant.elevationFt);
  for (const link of draft.links.slice(first)) {
    if (link.kind !== 'loss') continue;
    // Outlets stand behind the stem.
    link.from = barrel;
  }
  draft.links.push(openLoss(`${id}:stem`, `${id}:main`, barrel));
  valveOn(making, `${id}:stem`, `${id}.stem`);
  for (let side = 1; side <= hydrant.sideOutlets; side++)
    valveOn(making, `${id}:side${side}`, `${id}.side${side}`);
}

function openLoss(id: string, from: string, to: string): LinkSpec {
  return { kind: 'loss', id, from, to, lossPsi: 0, atGpm: 1000 };
}

function addDrillRig(making: Making, rig: Rig): void {
  const { scene, state, draft, valved, used } = making;
  const { id, elevationFt } = rig;
  const intake = addNode(draft, `${id}:intake`, elevationFt);
  const discharge = addNode(draft, `${id}:discharge`, elevationFt);
  let lifts = false;
  for (let n = 1; n <= rig.intakes; n++) {
    const port = `${id}.intake${n}`;
    if (!used(port)) continue;
    const node = addNode(draft, port, elevationFt);
    const loss = rig.intakeLoss ?? { lossPsi: 0, atGpm: 1000 };
    draft.links.push({ kind: 'loss', id: `${id}:intake${n}`, from: node, to: intake, ...loss });
    valveOn(making, `${id}:intake${n}`, port);
    openToAir(making, `${port}:bleeder`, node, `${port}.bleeder`, 0.9 * boreK(bleederBoreIn));
    if (fromOpenWater(scene, state, port)) lifts = true;
  }
  for (let n = 1; n <= rig.discharges; n++) {
    const port = `${id}.discharge${n}`;
    if (!used(port)) continue;
    draft.links.push(openLoss(`${id}:discharge${n}`, discharge, addNode(draft, port, elevationFt)));
    valveOn(making, `${id}:discharge${n}`, port);
  }
  const pump = pumpLinkOf(rig, false);
  if (rig.tankGal) {
    const valve = valveIndex(scene, `${id}.tankToPump`);
    if (state.valves[valve]!.opening > 0 || state.valves[valve]!.target > 0) {
      lifts = true;
      const tank = addNode(draft, `${id}:tank`, elevationFt, { fixedPsi: 0 });
      const link = `${id}:tankToPump`;
      draft.links.push({
        kind: 'loss',
        id: link,
        from: tank,
        to: intake,
        ...tankLoss,
        check: true,
      });
      valveOn(making, link, `${id}.tankToPump`);
    }
    const fill = valveIndex(scene, `${id}.tankFill`);
    if (state.valves[fill]!.opening > 0 || state.valves[fill]!.target > 0)
      openToAir(making, `${id}:tankFill`, discharge, `${id}.tankFill`, 0.7 * boreK(tankFillBoreIn));
  }
  const floor = lifts ? leastDraftIntakePsi : leastHoseIntakePsi;
  pump.protectIntakePsi = Math.max(floor, pump.protectIntakePsi ?? floor);
  // Built to be governed or throttled, as its operator changes it.
  if (pump.pdpPsi === undefined) pump.pdpPsi = 0;
  pump.speedFraction = 1;
  pump.idle = false;
  draft.links.push(pump);
  if (rig.intakeReliefPsi !== undefined)
    draft.links.push({
      kind: 'relief',
      id: `${id}:relief`,
      from: intake,
      settingPsi: rig.intakeReliefPsi,
      risePsi: 10,
      atGpm: 500,
    });

  function openToAir(
    { scene: { valves } }: Making,
    link: string,
    node: string,
    valveId: string,
    openK: number,
  ): void {
    const valve = valves.findIndex((one) => one.id === valveId);
    const now = state.valves[valve]!;
    if (now.opening === 0 && now.target === 0) return;
    draft.links.push({ kind: 'nozzle', id: link, from: node, k: openK });
    valved.push({ link, valve, baseK: 0, boreIn: valves[valve]!.boreIn, openK });
  }
}

/** Whether the hose on an intake comes from open water. */
function fromOpenWater(scene: DrillScene, state: DrillState, port: PortRef): boolean {
  return state.hoses.some(
    (hose) =>
      hose.to.port === port &&
      hose.from.port !== null &&
      scene.plan.drafts.some((one) => one.id === splitPortRef(hose.from.port!).pieceId),
  );
}

/** Outlets that share a chamber, each behind its own gate. */
function gateOutlets(making: Making, id: string, elevationFt: number): void {
  const { scene, draft, used } = making;
  for (const valve of scene.valves) {
    if (valve.pieceId !== id || valve.kind !== 'appliance gate' || !used(valve.id)) continue;
    const out = draft.nodes.get(`${id}:out`);
    const node = addNode(draft, valve.id, out?.elevationFt ?? elevationFt);
    draft.links.push(openLoss(`${valve.id}:gate`, `${id}:out`, node));
    valveOn(making, `${valve.id}:gate`, valve.id);
  }
}

function addHose({ scene, state, draft }: Making, hose: HoseState, at: number): void {
  const { coefficient, lengthFt, count } = scene.hoses[at]!;
  const line = scene.plan.lines.find((one) => one.id === hose.id);
  const end = (port: PortRef) => {
    const node = nodeOfPort(port);
    if (!draft.nodes.has(node)) addNode(draft, node, portElevationFt(scene.plan, port));
    return node;
  };
  if (hose.phase === 'full' && hose.from.port !== null && hose.to.port !== null) {
    const kinked = state.faults.find(
      (fault) => fault.kind === 'hose kinked' && fault.hose === hose.id && inEffect(state, fault),
    );
    const factor = kinked?.kind === 'hose kinked' ? kinked.factor : 1;
    const link: LinkSpec = {
      kind: 'hose',
      id: `${hose.id}:hose`,
      from: end(hose.from.port),
      to: end(hose.to.port),
      coefficient: coefficient * factor,
      lengthFt,
      lines: count,
    };
    if (line?.check) link.check = true;
    draft.links.push(link);
    return;
  }
  for (const side of ['from', 'to'] as const) {
    const { port } = hose[side];
    if (port === null) continue;
    if (line?.check && side === 'to') continue;
    const node = end(port);
    const elevationFt = draft.nodes.get(node)!.elevationFt ?? 0;
    const air = addNode(draft, `${hose.id}:air-${side}`, elevationFt, { fixedPsi: 0 });
    // The loss is set before every solve.
    draft.links.push({
      kind: 'loss',
      id: `${hose.id}:${side}`,
      from: node,
      to: air,
      lossPsi: 1,
      atGpm: 100,
      check: true,
    });
  }
}

function valveOnNozzle({ scene, draft, valved }: Making, id: string): void {
  const tip = draft.links.find((link) => link.id === `${id}:tip`);
  const valve = valveIndex(scene, `${id}.bale`);
  if (!tip || valve < 0) return;
  tip.shut = false;
  const { boreIn } = scene.valves[valve]!;
  if (tip.kind === 'nozzle') valved.push({ link: tip.id, valve, baseK: 0, boreIn, openK: tip.k });
  else valved.push({ link: `${id}:bale`, valve, baseK: 0, boreIn });
}

/** A port that a hose was taken off pours out while its valve is open, unless a clapper or check holds it. */
function addOpenPort({ scene, draft }: Making, port: PortRef): void {
  const node = nodeOfPort(port);
  const { port: name } = splitPortRef(port);
  if (!draft.nodes.has(node) || name.startsWith('inlet') || name === 'pump-discharge') return;
  if (name.startsWith('intake')) return;
  const boreIn = scene.valves.find((valve) => valve.id === port)?.boreIn ?? 4;
  draft.links.push({ kind: 'nozzle', id: `${port}:open`, from: node, k: 0.9 * boreK(boreIn) });
}
