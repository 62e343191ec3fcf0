import type {
  Appliance,
  DepartmentValues,
  DraftSource,
  GroupTest,
  Hydrant,
  LimitValues,
  Line,
  Nozzle,
  Plan,
  Rig,
} from '../plan.ts';
import { heightsLeftOut } from './heights.ts';
import type { WrittenPlan } from './schema.ts';

/** Keys whose value is undefined are left out, so that a plan read is the plan written. */
function present<T extends object>(record: T): T {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as T;
}

/** A plan from its parsed written form. Heights left out are taken as `heightsLeftOut` says. */
export function toPlan(written: WrittenPlan): Plan {
  const heightOf = heightsLeftOut(written);
  return present({
    title: written.title,
    note: written.note,
    invented: written.invented,
    scene: written.scene,
    demandGpm: written.demand,
    sceneEngines: written['scene-engines']?.map(({ name, takes, lines }) =>
      present({ name, mostGpm: takes, lines }),
    ),
    hydrants: written.hydrants.map((hydrant) => toHydrant(hydrant, heightOf(hydrant.id))),
    groupTests: written['group-tests']?.map(toGroupTest),
    drafts: written.drafts.map((draft) => toDraft(draft, heightOf(draft.id))),
    rigs: written.rigs.map((rig) => toRig(rig, heightOf(rig.id))),
    appliances: written.appliances.map((part) => toAppliance(part, heightOf(part.id))),
    lines: written.lines.map(toLine),
    nozzles: written.nozzles.map((nozzle) => toNozzle(nozzle, heightOf(nozzle.id))),
    department: toDepartment(written.department),
  });
}

function toHydrant(written: WrittenPlan['hydrants'][number], elevationFt: number): Hydrant {
  return present({
    id: written.id,
    name: written.name,
    elevationFt,
    staticPsi: written.static,
    residualPsi: written.residual,
    testGpm: written.flow,
    testedOn: written.tested,
    main: written.main,
    mainFedFrom: written['main-fed-from'],
    sideOutlets: written['side-outlets'],
    steamerLoss: written['steamer-loss'],
    sideLoss: written['side-loss'],
  });
}

function toGroupTest(written: NonNullable<WrittenPlan['group-tests']>[number]): GroupTest {
  return present({
    hydrants: written.hydrants,
    elevationFt: written.elevation,
    staticPsi: written.static,
    residualPsi: written.residual,
    testGpm: written.flow,
    testedOn: written.tested,
  });
}

function toDraft(written: WrittenPlan['drafts'][number], elevationFt: number): DraftSource {
  return present({
    id: written.id,
    name: written.name,
    waterElevationFt: elevationFt,
    altitudeFt: written.altitude,
    waterTempF: written.temperature,
    strainerLoss: written['strainer-loss'],
  });
}

function toRig(written: WrittenPlan['rigs'][number], elevationFt: number): Rig {
  return present({
    id: written.id,
    name: written.name,
    role: written.role,
    elevationFt,
    ratedGpm: written.rated,
    capability: written['pump-test'],
    setting: written.setting,
    protectIntakePsi: written['protect-intake'],
    intakes: written.intakes,
    discharges: written.discharges,
    intakeLoss: written['intake-loss'],
    passLoss: written['pass-loss'],
    tankGal: written.tank,
    tankValve: written['tank-valve'],
    intakeReliefPsi: written['intake-relief'],
  });
}

function toAppliance(written: WrittenPlan['appliances'][number], elevationFt: number): Appliance {
  const base = { id: written.id, name: written.name, elevationFt };
  switch (written.kind) {
    case 'assist-valve':
      return present({
        ...base,
        kind: written.kind,
        on: written['sits-on'],
        handle: written.handle,
        clapperLoss: written['clapper-loss'],
        suctionLoss: written['suction-loss'],
        dischargeLoss: written['discharge-loss'],
        clapperStuck: written['clapper-stuck'],
      });
    case 'wye':
      return present({ ...base, kind: written.kind, loss: written.loss });
    case 'siamese':
    case 'monitor': {
      const { kind, inlets, loss } = written;
      return present({ ...base, kind, inlets, loss });
    }
    case 'manifold': {
      const { kind, inlets, outlets, loss } = written;
      return present({ ...base, kind, inlets, outlets, loss });
    }
    case 'standpipe': {
      const { kind, inlets, outlets, loss } = written;
      const outletElevationFt = written['outlet-elevation'];
      return present({ ...base, kind, inlets, outlets, outletElevationFt, loss });
    }
    case 'sprinkler': {
      const { kind, inlets, demand: demandGpm, base: basePsi } = written;
      return present({ ...base, kind, inlets, demandGpm, basePsi });
    }
  }
}

function toLine(written: WrittenPlan['lines'][number]): Line {
  return present({
    id: written.id,
    name: written.name,
    from: written.from,
    to: written.to,
    hose: written.hose,
    lengthFt: written.length,
    count: written.count,
    coefficient: written.coefficient,
    coefficientOrigin: written['coefficient-origin'],
    valve: written.valve,
    check: written.check,
    terrain: written.terrain?.map((point) => ({
      alongFt: point.along,
      elevationFt: point.elevation,
    })),
    limitPsi: written.limit,
  });
}

function toNozzle(written: WrittenPlan['nozzles'][number], elevationFt: number): Nozzle {
  const { id, name, open, use, pressure: ratedPsi } = written;
  const base = { id, name, elevationFt, on: written['sits-on'], open, use };
  switch (written.kind) {
    case 'smooth-bore':
      return present({ ...base, kind: written.kind, tipIn: written.tip, ratedPsi });
    case 'fog':
      return present({ ...base, kind: written.kind, ratedGpm: written.flow, ratedPsi });
    case 'selectable': {
      const { kind, settings: settingsGpm, selected: selectedGpm } = written;
      return present({ ...base, kind, settingsGpm, selectedGpm, ratedPsi });
    }
    case 'automatic': {
      const { kind, least: leastGpm, greatest: greatestGpm } = written;
      return present({ ...base, kind, ratedPsi, leastGpm, greatestGpm });
    }
  }
}

function toDepartment(written: WrittenPlan['department']): DepartmentValues {
  const coefficients = written.hose?.map(
    ({ size, coefficient, origin }) => [size, { coefficient, origin }] as const,
  );
  return present({
    coefficients: coefficients && Object.fromEntries(coefficients),
    limits: written.limits && toLimits(written.limits),
    limitsOrigin: written['limits-origin'],
  });
}

function toLimits(written: NonNullable<WrittenPlan['department']['limits']>): Partial<LimitValues> {
  return present({
    mainResidualPsi: written['main-residual'],
    boosterIntakePsi: written['booster-intake'],
    hoseFedIntakePsi: written['hose-fed-intake'],
    supplyHosePsi: written['supply-hose'],
    attackHosePsi: written['attack-hose'],
    hilltopPsi: written.hilltop,
    greatestIntakePsi: written['greatest-intake'],
    nozzleLeastFraction: written['nozzle-least'],
    nozzleGreatestFraction: written['nozzle-greatest'],
    hoseVelocityFtS: written['hose-velocity'],
    draftVacuumInHg: written['draft-vacuum'],
    leastDischargePsi: written['least-discharge'],
  });
}
