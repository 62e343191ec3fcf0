import { formatHoseSize, parseHoseSize } from '../../units/hose-size.ts';
import type { Quantity, UnitSystem } from '../../units/quantities.ts';
import type {
  Appliance,
  DepartmentValues,
  DraftSource,
  GroupTest,
  HoseSize,
  Hydrant,
  LimitValues,
  Line,
  Loss,
  Nozzle,
  Plan,
  Rig,
} from '../plan.ts';
import { writeLoss as lossText, writePumpPoint as pumpPointText } from './phrase-fields.ts';
import { formatVersion } from './schema.ts';
import { withoutDefaults } from './without-defaults.ts';
import { writtenQuantity } from './written-quantity.ts';

/** A written record before its defaults are left out. */
export type WrittenRecord = Record<string, unknown>;

interface Writing {
  /** Units beside the numbers (for people), or bare numbers in inside units (for programs). */
  units: UnitSystem | 'bare';
}

type Write = <T extends number | undefined>(
  value: T,
  quantity: Quantity,
) => T extends undefined ? undefined : string | number;

/**
 * The written form of a plan: written keys, defaults left out. Heights are always written,
 * so that nothing depends on where a height left out would be taken from.
 */
export function fromPlan(plan: Plan, { units }: Writing): WrittenRecord {
  if (units !== 'si') return withoutDefaults(writtenWhole(plan, units));
  // Defaults are known by their inside units.
  const kept = withoutDefaults(writtenWhole(plan, 'us'));
  return likewise(writtenWhole(plan, 'si'), kept) as WrittenRecord;
}

/** What stands in one record, of the keys that the other has, in that one's order. */
function likewise(written: unknown, kept: unknown): unknown {
  if (Array.isArray(kept)) {
    return kept.map((one, index) => likewise((written as unknown[])[index], one));
  }
  if (typeof kept !== 'object' || kept === null) return written;
  return Object.fromEntries(
    Object.entries(kept).map(([key, one]) => [key, likewise((written as WrittenRecord)[key], one)]),
  );
}

function writtenWhole(plan: Plan, units: Writing['units']): WrittenRecord {
  const system = units === 'si' ? 'si' : 'us';
  const say = (value: number, quantity: Quantity) => writtenQuantity(value, quantity, system);
  const write = ((value: number | undefined, quantity: Quantity) => {
    if (value === undefined || units === 'bare') return value;
    return say(value, quantity);
  }) as Write;
  const writeLoss = (loss: Loss) => lossText(loss, say);
  const writePumpPoint = (point: readonly [number, number]) => pumpPointText(point, say);
  const hoseSize = (size: string) => {
    if (units === 'bare' || size === '3-3') return size;
    const metric = formatHoseSize(size as HoseSize, 'si');
    return units === 'si' && parseHoseSize(metric) === size ? metric : `${size} in`;
  };

  const hydrant = (part: Hydrant) => ({
    id: part.id,
    name: part.name,
    elevation: write(part.elevationFt, 'length'),
    static: write(part.staticPsi, 'pressure'),
    residual: write(part.residualPsi, 'pressure'),
    flow: write(part.testGpm, 'flow'),
    tested: part.testedOn,
    main: part.main,
    'main-fed-from': part.mainFedFrom,
    'side-outlets': part.sideOutlets,
    'steamer-loss': writeLoss(part.steamerLoss),
    'side-loss': writeLoss(part.sideLoss),
  });

  const groupTest = (test: GroupTest) => ({
    hydrants: [...test.hydrants],
    elevation: write(test.elevationFt, 'length'),
    static: write(test.staticPsi, 'pressure'),
    residual: write(test.residualPsi, 'pressure'),
    flow: write(test.testGpm, 'flow'),
    tested: test.testedOn,
  });

  const draft = (part: DraftSource) => ({
    id: part.id,
    name: part.name,
    elevation: write(part.waterElevationFt, 'length'),
    altitude: write(part.altitudeFt, 'length'),
    temperature: write(part.waterTempF, 'temperature'),
    'strainer-loss': writeLoss(part.strainerLoss),
  });

  const setting = (part: Rig['setting']) => {
    if (part.mode === 'governed') return write(part.pdpPsi, 'pressure');
    return part.mode === 'throttled' ? `throttled ${part.speedFraction}` : 'idle';
  };

  const rig = (part: Rig) => ({
    id: part.id,
    name: part.name,
    role: part.role,
    elevation: write(part.elevationFt, 'length'),
    rated: write(part.ratedGpm, 'flow'),
    'pump-test': part.capability?.map(writePumpPoint),
    setting: setting(part.setting),
    'protect-intake': write(part.protectIntakePsi, 'pressure'),
    intakes: part.intakes,
    discharges: part.discharges,
    'intake-loss': part.intakeLoss && writeLoss(part.intakeLoss),
    'pass-loss': writeLoss(part.passLoss),
    tank: write(part.tankGal, 'volume'),
    'tank-valve': part.tankValve,
    'intake-relief': write(part.intakeReliefPsi, 'pressure'),
  });

  const appliance = (part: Appliance): WrittenRecord => {
    const base = {
      id: part.id,
      name: part.name,
      kind: part.kind,
      elevation: write(part.elevationFt, 'length'),
    };
    switch (part.kind) {
      case 'assist-valve':
        return {
          ...base,
          'sits-on': part.on,
          handle: part.handle,
          'clapper-loss': writeLoss(part.clapperLoss),
          'suction-loss': writeLoss(part.suctionLoss),
          'discharge-loss': writeLoss(part.dischargeLoss),
          'clapper-stuck': part.clapperStuck,
        };
      case 'wye':
        return { ...base, loss: writeLoss(part.loss) };
      case 'siamese':
      case 'monitor':
        return { ...base, inlets: part.inlets, loss: writeLoss(part.loss) };
      case 'manifold':
        return { ...base, inlets: part.inlets, outlets: part.outlets, loss: writeLoss(part.loss) };
      case 'standpipe':
        return {
          ...base,
          inlets: part.inlets,
          outlets: part.outlets,
          'outlet-elevation': write(part.outletElevationFt, 'length'),
          loss: writeLoss(part.loss),
        };
      case 'sprinkler':
        return {
          ...base,
          inlets: part.inlets,
          demand: write(part.demandGpm, 'flow'),
          base: write(part.basePsi, 'pressure'),
        };
    }
  };

  const line = (part: Line) => ({
    id: part.id,
    name: part.name,
    from: part.from,
    to: part.to,
    hose: hoseSize(part.hose),
    length: write(part.lengthFt, 'length'),
    count: part.count,
    coefficient: part.coefficient,
    'coefficient-origin': part.coefficientOrigin,
    valve: typeof part.valve === 'string' ? part.valve : `gated ${writeLoss(part.valve.gated)}`,
    check: part.check,
    terrain: part.terrain?.map((point) => ({
      along: write(point.alongFt, 'length'),
      elevation: write(point.elevationFt, 'length'),
    })),
    limit: write(part.limitPsi, 'pressure'),
  });

  const nozzle = (part: Nozzle): WrittenRecord => {
    const base = {
      id: part.id,
      name: part.name,
      kind: part.kind,
      elevation: write(part.elevationFt, 'length'),
      'sits-on': part.on,
      open: part.open,
      use: part.use,
      pressure: write(part.ratedPsi, 'pressure'),
    };
    switch (part.kind) {
      case 'smooth-bore':
        return { ...base, tip: write(part.tipIn, 'diameter') };
      case 'fog':
        return { ...base, flow: write(part.ratedGpm, 'flow') };
      case 'selectable':
        return {
          ...base,
          settings: part.settingsGpm.map((gpm) => write(gpm, 'flow')),
          selected: write(part.selectedGpm, 'flow'),
        };
      case 'automatic':
        return {
          ...base,
          least: write(part.leastGpm, 'flow'),
          greatest: write(part.greatestGpm, 'flow'),
        };
    }
  };

  const limits = (values: Partial<LimitValues>) => ({
    'main-residual': write(values.mainResidualPsi, 'pressure'),
    'booster-intake': write(values.boosterIntakePsi, 'pressure'),
    'hose-fed-intake': write(values.hoseFedIntakePsi, 'pressure'),
    'supply-hose': write(values.supplyHosePsi, 'pressure'),
    'attack-hose': write(values.attackHosePsi, 'pressure'),
    hilltop: write(values.hilltopPsi, 'pressure'),
    'greatest-intake': write(values.greatestIntakePsi, 'pressure'),
    'nozzle-least': values.nozzleLeastFraction,
    'nozzle-greatest': values.nozzleGreatestFraction,
    'hose-velocity': write(values.hoseVelocityFtS, 'velocity'),
    'draft-vacuum': write(values.draftVacuumInHg, 'vacuum'),
    'least-discharge': write(values.leastDischargePsi, 'pressure'),
  });

  const department = (values: DepartmentValues) => ({
    hose:
      values.coefficients &&
      Object.entries(values.coefficients).map(([size, { coefficient, origin }]) => ({
        size: hoseSize(size),
        coefficient,
        origin,
      })),
    limits: values.limits && limits(values.limits),
    'limits-origin': values.limitsOrigin,
  });

  return {
    plugside: formatVersion,
    title: plan.title,
    note: plan.note,
    invented: plan.invented,
    scene: plan.scene,
    demand: write(plan.demandGpm, 'flow'),
    'scene-engines': plan.sceneEngines?.map(({ name, mostGpm, lines }) => ({
      name,
      takes: write(mostGpm, 'flow'),
      ...(lines && { lines: [...lines] }),
    })),
    hydrants: plan.hydrants.map(hydrant),
    'group-tests': plan.groupTests?.map(groupTest),
    drafts: plan.drafts.map(draft),
    rigs: plan.rigs.map(rig),
    appliances: plan.appliances.map(appliance),
    lines: plan.lines.map(line),
    nozzles: plan.nozzles.map(nozzle),
    department: department(plan.department),
  };
}
