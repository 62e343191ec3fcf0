import {
  applianceLosses,
  assistValveLosses,
  hydrantLosses,
  rigLosses,
  usualSideOutlets,
} from '../catalogue/appliances.ts';
import type { NozzleMake } from '../catalogue/nozzles.ts';
import { usualDischarges, usualIntakes, usualRating } from '../catalogue/pumps.ts';
import type {
  AssistValve,
  DraftSource,
  HoseSize,
  Hydrant,
  Line,
  Manifold,
  Monitor,
  Nozzle,
  Plan,
  PortRef,
  Rig,
  RigRole,
  Siamese,
  SprinklerConnection,
  Standpipe,
  Wye,
} from '../plan/plan.ts';

/** New pieces with the catalogue's defaults; anything can be given instead. */

/** Flow-test numbers of a hydrant: all that must be known of it. */
export type HydrantTest = Pick<Hydrant, 'staticPsi' | 'residualPsi' | 'testGpm'>;

export function newHydrant(id: string, given: HydrantTest & Partial<Hydrant>): Hydrant {
  return {
    id,
    elevationFt: 0,
    sideOutlets: usualSideOutlets,
    steamerLoss: hydrantLosses.steamer.loss,
    sideLoss: hydrantLosses.side.loss,
    ...given,
  };
}

export function newDraft(id: string, given: Partial<DraftSource> = {}): DraftSource {
  return {
    id,
    waterElevationFt: 0,
    altitudeFt: 0,
    waterTempF: 60,
    strainerLoss: rigLosses.strainer.loss,
    ...given,
  };
}

/** A rig that holds `pdpPsi`; 150 psi where none is given. */
export function newRig(
  id: string,
  role: RigRole,
  { pdpPsi = 150, ...given }: Partial<Omit<Rig, 'id' | 'role'>> & { pdpPsi?: number } = {},
): Rig {
  return {
    id,
    role,
    elevationFt: 0,
    ratedGpm: usualRating,
    setting: { mode: 'governed', pdpPsi },
    intakes: usualIntakes,
    discharges: usualDischarges,
    passLoss: rigLosses.pass.loss,
    ...given,
  };
}

/** On the steamer of a hydrant, at its height. */
export function newAssistValve(
  id: string,
  hydrant: Pick<Hydrant, 'id' | 'elevationFt'>,
  handle: AssistValve['handle'],
  given: Partial<AssistValve> = {},
): AssistValve {
  return {
    id,
    kind: 'assist-valve',
    elevationFt: hydrant.elevationFt,
    on: `${hydrant.id}.steamer`,
    handle,
    clapperLoss: assistValveLosses.clapper.loss,
    suctionLoss: assistValveLosses.suction.loss,
    dischargeLoss: assistValveLosses.discharge.loss,
    ...given,
  };
}

export function newWye(id: string, given: Partial<Wye> = {}): Wye {
  return { id, kind: 'wye', elevationFt: 0, loss: applianceLosses.wye.loss, ...given };
}

export function newSiamese(id: string, given: Partial<Siamese> = {}): Siamese {
  const { loss } = applianceLosses.siamese;
  return { id, kind: 'siamese', elevationFt: 0, inlets: 2, loss, ...given };
}

export function newManifold(id: string, given: Partial<Manifold> = {}): Manifold {
  const { loss } = applianceLosses.manifold;
  return { id, kind: 'manifold', elevationFt: 0, inlets: 1, outlets: 4, loss, ...given };
}

export function newMonitor(id: string, given: Partial<Monitor> = {}): Monitor {
  const { loss } = applianceLosses.monitor;
  return { id, kind: 'monitor', elevationFt: 0, inlets: 1, loss, ...given };
}

export function newStandpipe(id: string, given: Partial<Standpipe> = {}): Standpipe {
  return {
    id,
    kind: 'standpipe',
    elevationFt: 0,
    inlets: 2,
    outlets: 2,
    outletElevationFt: 0,
    loss: applianceLosses.standpipe.loss,
    ...given,
  };
}

/** A sprinkler system that takes `demandGpm` at `basePsi` at its connection. */
export function newSprinklerConnection(
  id: string,
  given: Pick<SprinklerConnection, 'demandGpm' | 'basePsi'> & Partial<SprinklerConnection>,
): SprinklerConnection {
  return { id, kind: 'sprinkler', elevationFt: 0, inlets: 2, ...given };
}

export function newLine(
  id: string,
  from: PortRef,
  to: PortRef,
  hose: HoseSize,
  lengthFt: number,
  given: Partial<Line> = {},
): Line {
  return { id, from, to, hose, lengthFt, count: 1, valve: 'open', ...given };
}

/** An open nozzle of a make, for instance one of the catalogue's. */
export function newNozzle(
  id: string,
  make: NozzleMake,
  given: Partial<Pick<Nozzle, 'name' | 'elevationFt' | 'on' | 'open' | 'use'>> = {},
): Nozzle {
  return { id, elevationFt: 0, open: true, use: 'hand line', ...make, ...given };
}

/** A plan with nothing in it yet but its title and its scene. */
export function newPlan(given: Pick<Plan, 'title' | 'scene'> & Partial<Plan>): Plan {
  return {
    invented: false,
    hydrants: [],
    drafts: [],
    rigs: [],
    appliances: [],
    lines: [],
    nozzles: [],
    department: {},
    ...given,
  };
}
