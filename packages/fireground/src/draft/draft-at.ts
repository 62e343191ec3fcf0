import {
  airPressurePsi,
  CAPACITY_BY_LIFT,
  capacityShareAtLift,
  DEPENDABLE_LIFT_FT,
  IN_HG_PER_PSI,
  practicalLiftFt,
  requireCount,
  requirePositive,
  requireWithin,
  theoreticalLiftFt,
  vapourPressurePsi,
} from '@plugside/hydraulics';
import { rigLosses } from '../catalogue/appliances.ts';
import { defaultLimitOrigins, defaultLimits } from '../catalogue/limits.ts';
import { newDraft, newLine, newPlan, newRig } from '../patterns/pieces.ts';
import type { HoseSize, Loss, Plan } from '../plan/plan.ts';
import type { LimitCheck, Notice } from '../questions/answers.ts';
import { mostWater } from '../questions/most-water.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';

/** A pump at the water's edge. What is left out is as in the rating test. */
export interface DraftPlace {
  /** Pump above the water [ft]; 10 where left out. */
  liftFt?: number;
  /** Above the sea [ft]. */
  altitudeFt?: number;
  /** 60 where left out [°F]. */
  waterTempF?: number;
  /** Hard suction: size, length of each [ft], like ones side by side, own friction coefficient. */
  suction?: { hose?: HoseSize; lengthFt?: number; count?: number; coefficient?: number };
  /** Strainer and foot valve of each suction. */
  strainerLoss?: Loss;
  /** Rated capacity [gpm], and its own test where there is one. */
  ratedGpm: number;
  capability?: readonly (readonly [flowGpm: number, netPsi: number])[];
  /** What it must discharge at [psi]; 150 where left out. */
  dischargePsi?: number;
  /** For the sentences; "Source engine" where left out. */
  pumpName?: string;
}

/** What a pump can do at draft. Figures in gpm, psi, inHg, ft. */
export interface DraftAnswer {
  mostGpm: number;
  /** What stops it there: the vacuum or the pump. */
  binding: LimitCheck[];
  /** Why there is no water; left out where there is some. */
  noneReason?: string;
  /** At the intake with `mostGpm` flowing; below 0 it draws. */
  intakePsi: number;
  vacuumInHg: number;
  /** Deepest vacuum counted on at this altitude and temperature. */
  vacuumLimitInHg: number;
  lift: { liftFt: number; theoreticalFt: number; practicalFt: number; dependableFt: number };
  /** The published share of rated capacity at this lift, as a flow [gpm]; null past 20 ft, where none is published. */
  ruleGpm: number | null;
  plan: Plan;
  notices: Notice[];
}

/** Water at which the usual vacuum limit is as it stands [°F]. */
const USUAL_WATER_F = 60;

/**
 * Most water that a pump gives at draft at a place, at a discharge pressure. The plan is solved as
 * any other; its vacuum limit is brought down with the air and with the water's own vapour.
 *   limit = 22 inHg·(air − vapour)/(air at the sea − vapour at 60 °F)
 * @param place lift [ft], altitude [ft], water [°F], suction, strainer, pump [gpm], discharge [psi]
 * @returns flow [gpm], intake [psi], vacuum and its limit [inHg], lifts [ft], what stops it
 * Valid: lift 0 to 30 ft, altitude 0 to 15,000 ft, water 32 to 140 °F. Hard suction is taken with the
 * friction of hose of its size: no table of suction friction was found in print.
 * Outside: throws QuantityError; NetworkError where the plan cannot be solved.
 * Source: mostWater; 22 inHg, Ch 11 Static Water Supply Sources study cards; that the limit falls with
 * air and vapour is ours.
 */
export function draftAt(place: DraftPlace, options: { units?: UnitSystem } = {}): DraftAnswer {
  const { liftFt = 10, altitudeFt = 0, waterTempF = USUAL_WATER_F, ratedGpm } = place;
  const { hose = '6', lengthFt = 20, count = 1, coefficient } = place.suction ?? {};
  const { dischargePsi = 150, strainerLoss = rigLosses.strainer.loss } = place;
  requireWithin('liftFt', liftFt, [0, 30], 'ft', 'No pump lifts water higher. Move nearer to it.');
  requireWithin('altitudeFt', altitudeFt, [0, 15_000], 'ft');
  requireWithin('waterTempF', waterTempF, [32, 140], '°F');
  requireWithin('suction.lengthFt', lengthFt, [0, 200], 'ft');
  requireCount('suction.count', count, 1);
  requireWithin('suction.count', count, [1, 6], 'suctions');
  if (coefficient !== undefined) requirePositive('suction.coefficient', coefficient, '');
  requireWithin('ratedGpm', ratedGpm, [20, 10_000], 'gpm');
  requireWithin('dischargePsi', dischargePsi, [20, 400], 'psi');

  const airPsi = airPressurePsi(altitudeFt);
  const vacuumLimitInHg = vacuumLimit(altitudeFt, waterTempF);
  const plan = newPlan({
    title: 'At draft',
    scene: 'A1',
    drafts: [
      newDraft('D1', {
        waterElevationFt: 0 - liftFt,
        altitudeFt,
        waterTempF,
        // A strainer on each suction: together they lose as one does with its share of the flow.
        strainerLoss: { ...strainerLoss, atGpm: strainerLoss.atGpm * count },
      }),
    ],
    rigs: [
      newRig('S1', 'relay', {
        name: place.pumpName ?? 'Source engine',
        ratedGpm,
        ...(place.capability && { capability: place.capability }),
        pdpPsi: dischargePsi,
      }),
      newRig('A1', 'attack', { name: 'Attack engine' }),
    ],
    lines: [
      newLine('suction', 'D1.water', 'S1.intake1', hose, lengthFt, {
        count,
        ...(coefficient !== undefined && { coefficient }),
      }),
      // Nothing between: what the next intake is asked to stand at is the discharge pressure.
      newLine('lay', 'S1.discharge1', 'A1.intake1', '6', 0, { limitPsi: 1000 }),
    ],
    department: {
      limits: {
        hoseFedIntakePsi: dischargePsi,
        // The solver takes the limit down by the air alone.
        draftVacuumInHg: (vacuumLimitInHg * airPressurePsi(0)) / airPsi,
      },
      limitsOrigin: {
        ...defaultLimitOrigins.draftVacuumInHg,
        text: `${defaultLimitOrigins.draftVacuumInHg.text}; less with altitude and warm water`,
      },
    },
  });
  const answer = mostWater(plan, options);
  const intakePsi = answer.state.rigs.find(({ id }) => id === 'S1')!.intakePsi;
  const theoreticalFt = theoreticalLiftFt(airPsi, vapourPressurePsi(waterTempF));
  const lift = {
    liftFt,
    theoreticalFt,
    practicalFt: practicalLiftFt(theoreticalFt),
    dependableFt: DEPENDABLE_LIFT_FT,
  };
  const farthestFt = CAPACITY_BY_LIFT[CAPACITY_BY_LIFT.length - 1]![0];
  return {
    mostGpm: answer.flowGpm,
    binding: answer.binding.filter(({ piece }) => piece === 'S1'),
    ...(answer.noneReason !== undefined && { noneReason: answer.noneReason }),
    intakePsi,
    vacuumInHg: Math.max(0, -intakePsi * IN_HG_PER_PSI),
    vacuumLimitInHg,
    lift,
    ruleGpm: liftFt <= farthestFt ? capacityShareAtLift(liftFt) * ratedGpm : null,
    plan: answer.plan,
    notices: noticesAt(lift, options.units ?? 'us'),
  };
}

/** Deepest vacuum to count on [inHg] at an altitude [ft] and water temperature [°F]. */
function vacuumLimit(altitudeFt: number, waterTempF: number): number {
  const push = airPressurePsi(altitudeFt) - vapourPressurePsi(waterTempF);
  const usualPush = airPressurePsi(0) - vapourPressurePsi(USUAL_WATER_F);
  return Math.max(1, (defaultLimits.draftVacuumInHg * push) / usualPush);
}

function noticesAt(lift: DraftAnswer['lift'], units: UnitSystem): Notice[] {
  const say = sayIn(units);
  const notices: Notice[] = [];
  if (lift.liftFt > lift.practicalFt) {
    notices.push({
      level: 'caution',
      text: `The lift of ${say.full(lift.liftFt, 'length')} is more than the ${say.full(lift.practicalFt, 'length')} to be had in practice here. Move nearer to the water, or use a portable or floating pump.`,
    });
  } else if (lift.liftFt > lift.dependableFt) {
    notices.push({
      level: 'caution',
      text: `The lift of ${say.full(lift.liftFt, 'length')} is more than the ${say.full(lift.dependableFt, 'length')} that every pump in order is depended on for. Try it before you count on it.`,
    });
  }
  notices.push(
    {
      level: 'caution',
      text: 'Keep the strainer covered and off the bottom, every suction joint tight, and the prime within the time its maker allows.',
    },
    {
      level: 'fact',
      text: "Suction hose is taken with the friction of supply hose of its size, and the strainer with a usual loss: no printed table was found. The pump's own suction test settles both.",
    },
  );
  return notices;
}
