/** Each piece of a plan as nodes and links of a network. */
import { type LinkSpec, type NodeSpec, PSI_PER_FT, type PumpLink } from '@plugside/hydraulics';
import { nozzleK } from '../catalogue/nozzles.ts';
import { capabilityFor } from '../catalogue/pumps.ts';
import type {
  Appliance,
  AssistValve,
  DraftSource,
  Hydrant,
  Loss,
  Nozzle,
  Plan,
  PortRef,
  Rig,
} from '../plan/plan.ts';
import type { SharedMain } from './shared-mains.ts';

/** Collects nodes and links; a node asked for twice is made once. */
export interface Draft {
  nodes: Map<string, NodeSpec>;
  links: LinkSpec[];
}

/** Tank-to-pump piping: 10 psi at 500 gpm, ours; the apparatus standard asks that 500 gpm get through (from memory). */
export const tankLoss: Loss = { lossPsi: 10, atGpm: 500 };

/** Rise above its setting of an intake relief that wastes 500 gpm; ours, makers' curves differ. */
const reliefRise = { risePsi: 10, atGpm: 500 };

export function addNode(
  draft: Draft,
  id: string,
  elevationFt: number,
  more?: Partial<NodeSpec>,
): string {
  if (!draft.nodes.has(id)) draft.nodes.set(id, { id, elevationFt, ...more });
  return id;
}

function addLoss(
  draft: Draft,
  id: string,
  from: string,
  to: string,
  loss: Loss,
  more?: { check?: boolean; shut?: boolean },
): void {
  draft.links.push({ kind: 'loss', id, from, to, ...loss, ...more });
}

const NO_LOSS: Loss = { lossPsi: 0, atGpm: 1000 };

/** A hydrant on a main of its own. */
export function addHydrant(draft: Draft, hydrant: Hydrant, used: (port: PortRef) => boolean): void {
  const { id, elevationFt, staticPsi, residualPsi, testGpm } = hydrant;
  const source = addNode(draft, `${id}:source`, elevationFt, { fixedPsi: staticPsi });
  const main = addNode(draft, `${id}:main`, elevationFt);
  draft.links.push({
    kind: 'supplyCurve',
    id: `${id}:curve`,
    from: source,
    to: main,
    staticPsi,
    residualPsi,
    testGpm,
  });
  addOutlets(draft, hydrant, main, used);
}

/** Hydrants that share a main: one source, with what they share and what each has of its own behind it. */
export function addSharedMain(
  draft: Draft,
  shared: SharedMain,
  used: (port: PortRef) => boolean,
): void {
  const { hydrants, headFt, stretches } = shared;
  const { id: first, elevationFt } = hydrants[0]!;
  // No higher than its own water: a hydrant on a hill may stand above what another's test says.
  const sourceFt = Math.min(elevationFt, headFt);
  const fixedPsi = (headFt - sourceFt) * PSI_PER_FT;
  const source = addNode(draft, `${first}:source`, sourceFt, { fixedPsi });
  const nodeAt = (end: string) => (end === 'source' ? source : `${end}:main`);
  for (const { from, to, loss } of stretches) {
    const hydrant = hydrants.find(({ id }) => id === to);
    const node = addNode(draft, nodeAt(to), hydrant?.elevationFt ?? elevationFt);
    const ends = { id: `${to}:curve`, from: nodeAt(from), to: node };
    // Two tests alike leave nothing between them.
    if (loss.lossPsi < LEAST_LOSS_PSI) addLoss(draft, ends.id, ends.from, node, NO_LOSS);
    else {
      const { lossPsi: staticPsi, atGpm: testGpm } = loss;
      draft.links.push({ kind: 'supplyCurve', ...ends, staticPsi, residualPsi: 0, testGpm });
    }
  }
  for (const hydrant of hydrants) addOutlets(draft, hydrant, `${hydrant.id}:main`, used);
}

/** Under this a stretch of main loses nothing [psi]. */
const LEAST_LOSS_PSI = 1e-6;

function addOutlets(
  draft: Draft,
  hydrant: Hydrant,
  main: string,
  used: (port: PortRef) => boolean,
): void {
  const { id, elevationFt } = hydrant;
  if (used(`${id}.steamer`)) {
    addLoss(
      draft,
      `${id}:steamer`,
      main,
      addNode(draft, `${id}.steamer`, elevationFt),
      hydrant.steamerLoss,
    );
  }
  for (let side = 1; side <= hydrant.sideOutlets; side++) {
    const port = `${id}.side${side}`;
    if (used(port))
      addLoss(
        draft,
        `${id}:side${side}`,
        main,
        addNode(draft, port, elevationFt),
        hydrant.sideLoss,
      );
  }
}

export function addDraftSource(
  draft: Draft,
  source: DraftSource,
  used: (port: PortRef) => boolean,
): void {
  const port = `${source.id}.water`;
  if (!used(port)) return;
  const surface = addNode(draft, `${source.id}:surface`, source.waterElevationFt, { fixedPsi: 0 });
  addLoss(
    draft,
    `${source.id}:strainer`,
    surface,
    addNode(draft, port, source.waterElevationFt),
    source.strainerLoss,
  );
}

/** @param ideal pumps without a capability limit: for searches that ask what setting would do and check the pump after */
export function pumpLinkOf(rig: Rig, ideal: boolean): PumpLink {
  const link: PumpLink = {
    kind: 'pump',
    id: `${rig.id}:pump`,
    from: `${rig.id}:intake`,
    to: `${rig.id}:discharge`,
    capability: ideal
      ? [
          [0, 2000],
          [100000, 2000],
        ]
      : capabilityFor(rig).points,
    passLoss: rig.passLoss,
  };
  if (!ideal && rig.protectIntakePsi !== undefined) link.protectIntakePsi = rig.protectIntakePsi;
  if (rig.setting.mode === 'governed') link.pdpPsi = rig.setting.pdpPsi;
  else if (ideal && rig.setting.mode === 'throttled') link.pdpPsi = 150;
  else if (rig.setting.mode === 'throttled') link.speedFraction = rig.setting.speedFraction;
  else link.idle = true;
  return link;
}

export function addRigIntake(draft: Draft, rig: Rig, used: (port: PortRef) => boolean): void {
  const intake = addNode(draft, `${rig.id}:intake`, rig.elevationFt);
  for (let n = 1; n <= rig.intakes; n++) {
    const port = `${rig.id}.intake${n}`;
    if (rig.intakeLoss && used(port)) {
      addLoss(
        draft,
        `${rig.id}:intake${n}`,
        addNode(draft, port, rig.elevationFt),
        intake,
        rig.intakeLoss,
      );
    }
  }
}

export function addRigPump(draft: Draft, rig: Rig, ideal: boolean): void {
  addNode(draft, `${rig.id}:discharge`, rig.elevationFt);
  draft.links.push(pumpLinkOf(rig, ideal));
  if (rig.tankGal && rig.tankValve === 'open') {
    const tank = addNode(draft, `${rig.id}:tank`, rig.elevationFt, { fixedPsi: 0 });
    addLoss(draft, `${rig.id}:tankToPump`, tank, `${rig.id}:intake`, tankLoss, { check: true });
  }
  if (rig.intakeReliefPsi !== undefined) {
    draft.links.push({
      kind: 'relief',
      id: `${rig.id}:relief`,
      from: `${rig.id}:intake`,
      settingPsi: rig.intakeReliefPsi,
      ...reliefRise,
    });
  }
}

function addAssistValve(draft: Draft, valve: AssistValve, used: (port: PortRef) => boolean): void {
  const { id, elevationFt } = valve;
  const supply = addNode(draft, `${id}.supply`, elevationFt);
  addLoss(draft, `${id}:clapper`, valve.on, supply, valve.clapperLoss, {
    check: true,
    shut: valve.clapperStuck === 'shut',
  });
  if (used(`${id}.pump-suction`)) {
    const suction = addNode(draft, `${id}.pump-suction`, elevationFt);
    addLoss(draft, `${id}:suction`, valve.on, suction, valve.suctionLoss, {
      shut: valve.handle !== 'boost',
    });
  }
  if (used(`${id}.pump-discharge`)) {
    const discharge = addNode(draft, `${id}.pump-discharge`, elevationFt);
    addLoss(draft, `${id}:discharge`, discharge, supply, valve.dischargeLoss);
  }
}

/** Inlets with clappers into one point. */
function addInlets(
  draft: Draft,
  appliance: Appliance,
  inlets: number,
  into: string,
  used: (port: PortRef) => boolean,
): void {
  for (let n = 1; n <= inlets; n++) {
    const port = `${appliance.id}.inlet${n}`;
    if (used(port)) {
      addLoss(
        draft,
        `${appliance.id}:inlet${n}`,
        addNode(draft, port, appliance.elevationFt),
        into,
        NO_LOSS,
        { check: true },
      );
    }
  }
}

export function addAppliance(
  draft: Draft,
  appliance: Appliance,
  used: (port: PortRef) => boolean,
): void {
  const { id, elevationFt } = appliance;
  switch (appliance.kind) {
    case 'assist-valve':
      addAssistValve(draft, appliance, used);
      return;
    case 'wye':
      addLoss(
        draft,
        `${id}:body`,
        addNode(draft, `${id}.inlet`, elevationFt),
        addNode(draft, `${id}:out`, elevationFt),
        appliance.loss,
      );
      return;
    case 'siamese':
    case 'manifold':
    case 'monitor':
    case 'standpipe': {
      addInlets(draft, appliance, appliance.inlets, addNode(draft, `${id}:in`, elevationFt), used);
      const outFt = appliance.kind === 'standpipe' ? appliance.outletElevationFt : elevationFt;
      addLoss(draft, `${id}:body`, `${id}:in`, addNode(draft, `${id}:out`, outFt), appliance.loss);
      return;
    }
    case 'sprinkler':
      addInlets(draft, appliance, appliance.inlets, addNode(draft, `${id}:in`, elevationFt), used);
      draft.links.push({
        kind: 'nozzle',
        id: `${id}:heads`,
        from: `${id}:in`,
        k: appliance.demandGpm / Math.sqrt(appliance.basePsi),
      });
  }
}

export function addNozzle(draft: Draft, nozzle: Nozzle, node: string): void {
  const base = {
    id: `${nozzle.id}:tip`,
    from: node,
    elevationFt: nozzle.elevationFt,
    shut: !nozzle.open,
  };
  if (nozzle.kind === 'automatic') {
    const { ratedPsi, leastGpm, greatestGpm } = nozzle;
    draft.links.push({ kind: 'automaticNozzle', ratedPsi, leastGpm, greatestGpm, ...base });
  } else {
    draft.links.push({ kind: 'nozzle', k: nozzleK(nozzle), ...base });
  }
}

/**
 * The node behind a port. Ports that share a chamber (a rig's discharges, a wye's outlets) share a node.
 * @param plan the plan, for each rig's intake loss
 */
export function nodeOfPort(plan: Plan, ref: PortRef): string {
  const point = ref.lastIndexOf('.');
  const id = ref.slice(0, point);
  const port = ref.slice(point + 1);
  if (port.startsWith('discharge')) return `${id}:discharge`;
  if (port.startsWith('intake')) {
    const rig = plan.rigs.find((candidate) => candidate.id === id);
    return rig?.intakeLoss ? ref : `${id}:intake`;
  }
  if (port.startsWith('outlet') || port === 'tip') return `${id}:out`;
  return ref;
}
