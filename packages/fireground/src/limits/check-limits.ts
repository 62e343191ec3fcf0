/** A solved plan against every limit that concerns it. */
import { airPressurePsi, IN_HG_PER_PSI } from '@plugside/hydraulics';
import { hoseCatalogue } from '../catalogue/hose.ts';
import { hosePressureLimit, limitsFor, type PlanLimits } from '../catalogue/limits.ts';
import { capabilityFor } from '../catalogue/pumps.ts';
import type { Line, Origin, Plan, Rig } from '../plan/plan.ts';
import { describeLine, nameOf, pieceOf, splitPortRef } from '../plan/ports.ts';
import type {
  LimitCheck,
  LimitKind,
  LineState,
  RigState,
  SupplyState,
} from '../questions/answers.ts';
import { formatHoseSize } from '../units/hose-size.ts';

/** A margin under this [psi, gpm …] counts as used up. */
const BINDS_WITHIN = 0.02;

/**
 * Every limit that the pieces in a state are under, with the room left.
 * @returns in the order sources, intakes, hose, pumps, nozzles
 */
export function checkLimits(plan: Plan, state: SupplyState): LimitCheck[] {
  const limits = limitsFor(plan);
  return [
    ...mainChecks(plan, state, limits),
    ...state.rigs.flatMap((rig) => intakeChecks(plan, rig, limits)),
    ...hoseChecks(plan, state, limits),
    ...state.rigs.flatMap((rig) => capabilityChecks(plan, rig)),
    ...scenePumpChecks(plan, state),
    ...nozzleChecks(plan, state, limits),
  ];
}

interface Given {
  kind: LimitKind;
  piece: string;
  label: string;
  value: number;
  limit: number;
  sense: 'min' | 'max';
  unit: LimitCheck['unit'];
  scale: number;
  weight?: LimitCheck['weight'];
  origin: Origin;
}

function check({ scale, weight = 'hard', ...given }: Given): LimitCheck {
  const margin = given.sense === 'min' ? given.value - given.limit : given.limit - given.value;
  return {
    ...given,
    id: `${given.kind}:${given.piece}`,
    margin,
    marginFraction: margin / scale,
    binds: Math.abs(margin) <= BINDS_WITHIN,
    passed: margin < -BINDS_WITHIN,
    weight,
  };
}

function mainChecks(plan: Plan, state: SupplyState, limits: PlanLimits): LimitCheck[] {
  return state.hydrants.map((hydrant) =>
    check({
      kind: 'main residual',
      piece: hydrant.id,
      label: `Main at ${nameOf(pieceOf(plan, hydrant.id)!)}`,
      value: hydrant.mainPsi,
      limit: limits.mainResidualPsi,
      sense: 'min',
      unit: 'psi',
      scale: 50,
      origin: limits.origins.mainResidualPsi,
    }),
  );
}

/** The least intake pressure [psi] for a rig by its role. */
export function leastIntake(
  rig: Pick<Rig, 'role'>,
  limits: PlanLimits,
): { kind: LimitKind; psi: number; origin: Origin } {
  if (rig.role === 'booster') {
    return {
      kind: 'booster intake',
      psi: limits.boosterIntakePsi,
      origin: limits.origins.boosterIntakePsi,
    };
  }
  return {
    kind: rig.role === 'relay' ? 'relay intake' : 'attack intake',
    psi: limits.hoseFedIntakePsi,
    origin: limits.origins.hoseFedIntakePsi,
  };
}

function intakeChecks(plan: Plan, rig: RigState, limits: PlanLimits): LimitCheck[] {
  const piece = plan.rigs.find((candidate) => candidate.id === rig.id)!;
  const name = nameOf(piece);
  if (rig.drafting) {
    const altitudeFt = Math.max(0, ...plan.drafts.map((draft) => draft.altitudeFt));
    const limit = (limits.draftVacuumInHg * airPressurePsi(altitudeFt)) / airPressurePsi(0);
    return [
      check({
        kind: 'draft vacuum',
        piece: rig.id,
        label: `Vacuum at ${name}'s intake`,
        value: Math.max(0, -rig.intakePsi * IN_HG_PER_PSI),
        limit,
        sense: 'max',
        unit: 'inHg',
        scale: 15,
        origin: limits.origins.draftVacuumInHg,
      }),
    ];
  }
  const fed = Object.keys(rig.intakeGpm).length > 0;
  if (!fed) return [];
  // A booster that nothing runs through (handle at hydrant) has no intake to judge.
  if (rig.role === 'booster' && rig.flowGpm < 0.5 && rig.intakePsi === 0) return [];
  const { kind, psi, origin } = leastIntake(piece, limits);
  return [
    check({
      kind,
      piece: rig.id,
      label: `${name}'s intake`,
      value: rig.intakePsi,
      limit: psi,
      sense: 'min',
      unit: 'psi',
      scale: 50,
      origin,
    }),
  ];
}

/** A height between the ends with less pressure than at either. */
function isHilltop(
  plan: Plan,
  piece: Line,
  state: LineState,
): state is LineState & { hilltopPsi: number } {
  const { hilltopPsi, inletPsi, outletPsi } = state;
  if (hilltopPsi === undefined || piece.valve === 'shut' || isHardSuction(plan, piece))
    return false;
  return hilltopPsi < Math.min(inletPsi, outletPsi);
}

/** Hose under vacuum by design: from open water to a pump. */
export function isHardSuction(plan: Plan, { from }: Pick<Line, 'from'>): boolean {
  return plan.drafts.some(({ id }) => id === splitPortRef(from).pieceId);
}

function hoseChecks(plan: Plan, state: SupplyState, limits: PlanLimits): LimitCheck[] {
  return state.lines.flatMap((line) => {
    const piece = plan.lines.find((candidate) => candidate.id === line.id)!;
    const size = formatHoseSize(piece.hose);
    const where = describeLine(plan, piece);
    const { limitPsi, origin } = hosePressureLimit(plan, piece);
    const supply = hoseCatalogue[piece.hose].limitClass === 'supply';
    const checks = [
      check({
        kind: 'hose pressure',
        piece: line.id,
        label: `${supply ? 'Supply hose' : 'Hose'}, ${size}, ${where}`,
        value: line.greatestPsi,
        limit: limitPsi,
        sense: 'max',
        unit: 'psi',
        scale: 100,
        origin,
      }),
    ];
    if (isHilltop(plan, piece, line)) {
      checks.push(
        check({
          kind: 'hilltop pressure',
          piece: line.id,
          label: `Hilltop on ${where}`,
          value: line.hilltopPsi,
          limit: limits.hilltopPsi,
          sense: 'min',
          unit: 'psi',
          scale: 50,
          origin: limits.origins.hilltopPsi,
        }),
      );
    }
    if (line.velocityFtS > limits.hoseVelocityFtS * 0.5) {
      checks.push(
        check({
          kind: 'hose velocity',
          piece: line.id,
          label: `Velocity in ${size}, ${where}`,
          value: line.velocityFtS,
          limit: limits.hoseVelocityFtS,
          sense: 'max',
          unit: 'ft/s',
          scale: 20,
          weight: 'caution',
          origin: limits.origins.hoseVelocityFtS,
        }),
      );
    }
    return checks;
  });
}

const RATED: Origin = {
  kind: 'standard',
  text: 'Pump rating: 100 % at 150 psi, 70 % at 200, 50 % at 250 net',
};
const PAST_RATING: Origin = {
  kind: 'common practice',
  text: 'Past the rating: what pumps on a strong hydrant are known to do; prove it by test',
};
const TESTED: Origin = { kind: 'measured', text: "The rig's own pump test" };

/** A pump has two ends to its capability: net pressure at the flow, and the flow itself. The nearer counts. */
function capabilityChecks(plan: Plan, rig: RigState): LimitCheck[] {
  if (rig.setting.mode === 'idle' || rig.flowGpm <= 0) return [];
  const adds = rig.netPsi > 0.01;
  // One that only makes up for what it loses is at work all the same, and can do so to its most.
  const { lossPsi, atGpm } = pieceOfRig(plan, rig).passLoss;
  if (!adds && rig.netPsi <= 0.01 - lossPsi * (rig.flowGpm / atGpm) ** 2) return [];
  const byFlow = pumpFlowCheck(plan, rig);
  if (byFlow.margin <= BINDS_WITHIN) return [byFlow];
  if (!adds) return [];
  const byNet = check({
    ...capabilityOf(plan, rig),
    value: rig.netPsi,
    limit: rig.capabilityPsi,
    unit: 'psi',
    scale: 100,
  });
  return [byNet.marginFraction <= byFlow.marginFraction ? byNet : byFlow];
}

/** A pump's flow against the most that it adds pressure to [gpm]. */
export function pumpFlowCheck(plan: Plan, rig: RigState): LimitCheck {
  const piece = pieceOfRig(plan, rig);
  const { points } = capabilityFor(piece);
  const speed = rig.setting.mode === 'throttled' ? rig.setting.speedFraction : 1;
  return check({
    ...capabilityOf(plan, rig),
    value: rig.flowGpm,
    limit: points[points.length - 1]![0] * speed,
    unit: 'gpm',
    scale: piece.ratedGpm,
  });
}

function capabilityOf(plan: Plan, rig: RigState) {
  const piece = pieceOfRig(plan, rig);
  return {
    kind: 'pump capability' as const,
    piece: rig.id,
    label: `${nameOf(piece)}'s capability`,
    sense: 'max' as const,
    origin: piece.capability ? TESTED : rig.beyondRating ? PAST_RATING : RATED,
  };
}

function pieceOfRig(plan: Plan, { id }: RigState): Rig {
  return plan.rigs.find((candidate) => candidate.id === id)!;
}

const AT_SCENE: Origin = {
  kind: 'estimated',
  text: "What the plan's engines at the scene put out, by their pumps and the pressure of their lines",
};

/** All the water goes through the pumps of the engines at the scene. */
function scenePumpChecks({ scene, sceneEngines = [] }: Plan, state: SupplyState): LimitCheck[] {
  const limit = scenePumpGpm(sceneEngines);
  if (limit === undefined) return [];
  return [
    check({
      kind: 'scene pumps',
      piece: scene,
      label: scenePumpLabel(sceneEngines.map(({ name }) => name)),
      value: state.sceneGpm,
      limit,
      sense: 'max',
      unit: 'gpm',
      scale: limit,
      origin: AT_SCENE,
    }),
  ];
}

/** What the engines at a scene take together [gpm]; undefined where they are not counted. */
export function scenePumpGpm(engines: Plan['sceneEngines'] = []): number | undefined {
  return engines.length > 0 ? engines.reduce((sum, { mostGpm }) => sum + mostGpm, 0) : undefined;
}

/** "Engine 1's pump at the fire". */
export function scenePumpLabel(names: readonly string[]): string {
  if (names.length < 2) return `${names.join('')}'s pump at the fire`;
  return `The pumps of ${names.slice(0, -1).join(', ')} and ${names.at(-1)} at the fire`;
}

function nozzleChecks(plan: Plan, state: SupplyState, limits: PlanLimits): LimitCheck[] {
  return state.nozzles.flatMap((nozzle) => {
    const piece = plan.nozzles.find((candidate) => candidate.id === nozzle.id)!;
    if (!piece.open) return [];
    const low = nozzle.pressurePsi < nozzle.ratedPsi;
    const origin = low ? limits.origins.nozzleLeastFraction : limits.origins.nozzleGreatestFraction;
    return [
      check({
        kind: 'nozzle pressure',
        piece: nozzle.id,
        label: nameOf(piece),
        value: nozzle.pressurePsi,
        limit: nozzle.ratedPsi * (low ? limits.nozzleLeastFraction : limits.nozzleGreatestFraction),
        sense: low ? 'min' : 'max',
        unit: 'psi',
        scale: 50,
        weight: 'caution',
        origin,
      }),
    ];
  });
}
