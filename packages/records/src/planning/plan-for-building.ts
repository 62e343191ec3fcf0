import {
  type AttackLineOptions,
  addAttackLines,
  boostedAtHydrant,
  type DepartmentValues,
  type Plan,
} from '@plugside/fireground';
import type { Fields } from '../model/index.ts';
import type { LonLat } from '../streets/ellipsoid.ts';
import { fromWater } from './from-water.ts';
import { withHoseInService } from './hose-in-service.ts';
import { type HoseToLay, hoseToLay } from './hose-to-lay.ts';
import { hydrantFromRecord } from './hydrant-from-record.ts';
import { ft, notice, type PlanningNotice, psi } from './notice.ts';
import { type PickedRig, rigFromRecord } from './rig-from-record.ts';
import { type ElevationAt, terrainAlong } from './terrain-along.ts';
import { testsAhead } from './tests-ahead.ts';

export interface BuildingPlanRequest {
  building: Pick<
    Fields<'buildings'>,
    'name' | 'longitude' | 'latitude' | 'elevationFt' | 'neededGpm'
  >;
  hydrant: Fields<'hydrants'>;
  /** The flow test that its curve is taken from. */
  test: Fields<'flow-tests'> | undefined;
  /** All its tests: those dated ahead of today are told. Left out: none. */
  tests?: readonly Pick<Fields<'flow-tests'>, 'testedOn'>[];
  /** Lays from the hydrant to the building and pumps there. */
  attack: PickedRig;
  /** Pumps at the hydrant; left out: a forward lay on hydrant pressure. */
  booster?: PickedRig;
  /** Street between hydrant and building, from either end; hose is laid over it in whole sections. */
  route: { lengthFt: number; path?: readonly LonLat[] };
  /** Ground between, and the height of an end whose record has none. */
  elevationAt?: ElevationAt;
  department?: DepartmentValues;
  /** Two usual hand lines where left out. */
  attackLines?: readonly AttackLineOptions[];
  /** Made-up records: the plan is marked so. */
  invented?: boolean;
  /** ISO date, to be told when the test is old. */
  today?: string;
}

export interface BuildingPlan {
  /** None where an `error` is among the notices. */
  plan: Plan | undefined;
  /** The hose picked for the lay, and how much of it is laid. */
  hose: HoseToLay;
  /** Street under it [ft]. */
  streetFt: number;
  /** Building's height above the hydrant [ft]; 0 where it is not known. */
  riseFt: number;
  notices: PlanningNotice[];
}

/** As plan files allow. */
const LONGEST_TITLE = 120;
/** 100 psi at the nozzle and 70 lost in 200 ft of 1¾ in at 150 gpm. */
const USUAL_ATTACK_PSI = 170;

/**
 * The plan that takes water from a hydrant to a building: a forward lay, or boosted at the hydrant
 * where a booster is picked. Hydrant from its flow test, hose from what the rigs carry, as many whole
 * sections as the route takes, heights from the records and the ground, pumps from their own tests,
 * demand from the building. Ids as in `boostedAtHydrant`; names are the records'. What had to be
 * assumed is said in the notices. Never throws for what records may hold: a hydrant without a usable flow
 * test gives no plan and an `error` that says so.
 */
export function planForBuilding(request: BuildingPlanRequest): BuildingPlan {
  const { building, hydrant, route } = request;
  const streetFt = Math.max(1, Math.round(route.lengthFt));
  const today = request.today ?? new Date().toISOString().slice(0, 10);
  const outOfService: PlanningNotice[] = [];
  const sound = (picked: PickedRig): PickedRig => ({
    ...picked,
    rig: withHoseInService(picked.rig, picked.lengths ?? [], today, outOfService),
  });
  const attack = sound(request.attack);
  const booster = request.booster && sound(request.booster);
  const beds = booster ? [attack.rig, booster.rig] : [attack.rig];
  const hose = hoseToLay(streetFt, beds);
  const notices = [
    ...outOfService,
    ...hose.notices,
    ...testsAhead(`The flow test of ${hydrant.name}`, request.tests ?? [], today),
  ];
  const heights = endHeights(request, notices);
  const riseFt = heights.endFt - heights.startFt;
  const { hydrant: planHydrant, steamer } = hydrantFromRecord(
    'H1',
    hydrant,
    request.test,
    heights.startFt,
    notices,
    request.today,
  );
  if (!planHydrant) return { plan: undefined, hose, streetFt, riseFt, notices };
  // As ways to supply have it: a valve goes on for the engine that is to pump there.
  const assistValve = steamer && booster !== undefined && beds.some((rig) => rig.assistValve);
  const brings = broughtBy(request)?.rig.name ?? '';
  if (assistValve) {
    notices.push(
      notice('fact', 'on-valve')`The lay leaves the hydrant through the assist valve of ${brings}.`,
    );
  } else if (steamer && attack.rig.assistValve) {
    notices.push(
      notice(
        'fact',
        'valve-left-off',
      )`The assist valve of ${brings} is left off: with no engine at the hydrant it would only cost pressure. Plan an engine there to count it.`,
    );
  }
  const drawn = boostedAtHydrant({
    title: `${building.name} from ${hydrant.name}`.slice(0, LONGEST_TITLE),
    hydrant: planHydrant,
    assistValve,
    lay: { hose: hose.hose, count: hose.count, lengthFt: hose.laidFt, riseFt },
    booster: booster ? {} : null,
  });
  // What is laid past the street's length lies at its end: hills stay at their place.
  const terrain =
    request.elevationAt && route.path
      ? terrainAlong(fromWater(route.path, hydrant), streetFt, heights, request.elevationAt)
      : [];
  const rigs = drawn.rigs.map((rig) =>
    rig.role === 'attack'
      ? rigFromRecord(
          { ...rig, setting: { mode: 'governed', pdpPsi: USUAL_ATTACK_PSI } },
          attack,
          heights.endFt,
          notices,
        )
      : rigFromRecord(rig, booster!, heights.startFt, notices),
  );
  const { neededGpm } = building;
  if (!neededGpm) {
    notices.push(
      notice(
        'caution',
        'no-needed-flow',
      )`${building.name} has no needed fire flow on record: the plan asks for what its hand lines take.`,
    );
  }
  const plan: Plan = {
    ...drawn,
    invented: request.invented ?? false,
    ...(neededGpm && { demandGpm: neededGpm }),
    hydrants: [planHydrant],
    rigs,
    appliances: drawn.appliances.map((part) => ({
      ...part,
      ...(part.kind === 'assist-valve' && { name: `Assist valve of ${brings}` }),
      ...(part.kind === 'assist-valve' && broughtBy(request)?.valve?.losses),
      elevationFt: heights.startFt,
    })),
    lines: drawn.lines.map((line) => ({
      ...line,
      from: steamer ? line.from : line.from.replace('H1.steamer', 'H1.side1'),
      ...(line.id === 'lay' && terrain.length > 0 && { terrain }),
    })),
    department: request.department ?? {},
  };
  return {
    plan: addAttackLines(plan, 'A1', request.attackLines ?? [{}, {}]),
    hose,
    streetFt,
    riseFt,
    notices,
  };
}

/** Whose assist valve goes on: the engine's that lays, else the one's that pumps there. */
function broughtBy({ attack, booster }: BuildingPlanRequest): PickedRig | undefined {
  return attack.rig.assistValve ? attack : booster;
}

/** Heights of the lay's ends [ft]: the records' own, else the ground's; level where one is missing. */
function endHeights(
  { hydrant, building, elevationAt }: BuildingPlanRequest,
  notices: PlanningNotice[],
): { startFt: number; endFt: number } {
  const own = [hydrant, building].map(({ elevationFt }) => elevationFt);
  const ground = [hydrant, building].map(({ longitude, latitude }) =>
    elevationAt?.(longitude, latitude),
  );
  // Two heights of one kind before one of each: a survey and a model may count from different zeros.
  for (const pair of [own, ground, [own[0] ?? ground[0], own[1] ?? ground[1]]]) {
    const [startFt, endFt] = pair;
    if (startFt === undefined || endFt === undefined) continue;
    if (pair !== own && pair !== ground) {
      notices.push(
        notice(
          'caution',
          'mixed-heights',
        )`One end's height is from its record, the other's from the ground model; they may count from different zeros.`,
      );
    }
    return { startFt, endFt };
  }
  const known = own[0] ?? ground[0] ?? own[1] ?? ground[1] ?? 0;
  notices.push(
    notice(
      'caution',
      'no-heights',
    )`The heights of ${hydrant.name} and ${building.name} are not both known: the plan takes the ground as level. Each ${ft(100)} of rise costs ${psi(43.4)}.`,
  );
  return { startFt: known, endFt: known };
}
