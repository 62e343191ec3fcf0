import {
  type DepartmentValues,
  type FillPlace,
  findingText,
  flowTestResult,
  type HydrantAtHand,
  newDraft,
  newRig,
  type Origin,
  type RespondingRig,
  type Situation,
  type UntestedHydrant,
  type WaterAtHand,
} from '@plugside/fireground';
import { type Fields, originOf } from '../model/index.ts';
import type { LonLat, Place } from '../streets/ellipsoid.ts';
import { fromWater } from './from-water.ts';
import { groupTests, type NamedHydrant } from './group-tests.ts';
import { heightsFrom } from './heights.ts';
import { supplyHoseAboard } from './hose-to-lay.ts';
import { hydrantFromRecord, testDoubts } from './hydrant-from-record.ts';
import { ft, notice, type PlanningNotice } from './notice.ts';
import { type PickedRig, rigFromRecord } from './rig-from-record.ts';
import { type ElevationAt, terrainAlong } from './terrain-along.ts';
import { testsAhead } from './tests-ahead.ts';

/** The way between the building and where water is, along the streets. */
export interface WaterRoute {
  lengthFt: number;
  path: readonly LonLat[];
  /** The street that it takes at the building, where that has a name. */
  street?: string;
}

/** A hydrant that is near a building and not by street. */
export interface NotByStreet {
  name: string;
  /** In a straight line [ft]. */
  straightFt: number;
  /** By street [ft]; undefined where no street leads there. */
  streetFt: number | undefined;
}

export interface NearHydrantRecord {
  record: Fields<'hydrants'> & { id: string };
  /** The flow test that plans use. */
  test: Fields<'flow-tests'> | undefined;
  /**
   * All its tests: those in which several hydrants flowed tell what a shared main gives, and those
   * dated ahead of today are told. Left out: none.
   */
  tests?: readonly Fields<'flow-tests'>[];
  route: WaterRoute;
}

export interface NearWaterRecord {
  record: Fields<'water-sources'> & { id: string };
  route: WaterRoute;
}

export interface ComingRig extends PickedRig {
  rig: PickedRig['rig'] & { id: string };
  arrivesMin: number;
}

export interface SituationRequest {
  building: Fields<'buildings'>;
  /** What must reach it [gpm]; the record's needed fire flow where left out. */
  demandGpm?: number;
  hydrants: readonly NearHydrantRecord[];
  waters: readonly NearWaterRecord[];
  /** Hydrants near it in a straight line alone; left out: none. */
  notByStreet?: readonly NotByStreet[];
  /** In order of arrival. */
  rigs: readonly ComingRig[];
  /** Where a pump at the water stands above it [ft]; 10 where left out. */
  liftFt?: number;
  elevationAt?: ElevationAt;
  department?: DepartmentValues;
  /** Made-up records: marked so. */
  invented?: boolean;
  /** ISO date, to be told when a test is old. */
  today?: string;
}

export interface BuildingSituation {
  /** None where an `error` is among the notices. */
  situation: Situation | undefined;
  /** Records behind the situation's ids (`H1`, `W1`, `E1`). */
  recordIds: Record<string, string>;
  /** By the same ids: the way from the water to the building. */
  paths: Record<string, readonly LonLat[]>;
  /** By the same ids: the street that the hose takes at the building, where that has a name. */
  streets: Record<string, string>;
  notices: PlanningNotice[];
}

/** Farther than this a tender brings water sooner than hose does [ft]; the longest lay looked at. */
export const longestLayFt = 4000;
/** The lift of the rating test. */
const USUAL_LIFT_FT = 10;
/** A pump's intake stands this much above the water at least; more than the rating allows for is another source's bank. */
const LEAST_LIFT_FT = 3;
const GREATEST_LIFT_FT = 25;
const FEET_PER_MILE = 5280;
/** A rig fills from a strong hydrant at this: a tender's usual greatest ("Highway Hydraulics", Fire Apparatus). */
const GREATEST_FILL_GPM = 1000;
/** Places to fill that are looked at. */
const HYDRANTS_TO_FILL = 3;
const WATERS_TO_FILL = 2;
/** Weaker hydrants are no place to fill tenders. */
const LEAST_FILL_GPM = 250;

/**
 * What there is to work with at a building, from the records: its demand, hydrants and open water
 * by hose length along the streets, the rigs in order of arrival. Ids are short; `recordIds` tells
 * whose they are. What had to be assumed is in the notices. Never throws for what records may hold:
 * without demand or rigs there is no situation and an `error` says so.
 */
export function situationForBuilding(request: SituationRequest): BuildingSituation {
  const { building, rigs, elevationAt, department = {}, invented = false } = request;
  const notices: PlanningNotice[] = [];
  const recordIds: Record<string, string> = {};
  const paths: Record<string, readonly LonLat[]> = {};
  const streets: Record<string, string> = {};
  const demandGpm = request.demandGpm ?? building.neededGpm;
  if (!demandGpm) {
    notices.push(
      notice(
        'error',
        'no-demand',
      )`${building.name} has no needed fire flow on record. Work out its demand, or give the flow.`,
    );
  }
  if (!rigs.some(({ rig }) => rig.kind === 'engine' || rig.kind === 'aerial')) {
    notices.push(
      notice(
        'error',
        'no-rigs',
      )`No engine in service is on record to respond. Enter the rigs, or pick others.`,
    );
  }
  const hydrantHeights = heightsFrom(
    building,
    request.hydrants.map(({ record }) => record),
    elevationAt,
  );
  const waterHeights = heightsFrom(
    building,
    request.waters.map(({ record }) => record),
    elevationAt,
  );
  const level = [...hydrantHeights.known, ...waterHeights.known].filter((known) => !known).length;
  if (level > 0) {
    notices.push(
      notice(
        'caution',
        'no-heights',
      )`The height of ${building.name} or of ${`${level}`} of the places with water near it is not known: those lays are taken as level.`,
    );
  }
  const { sceneFt } = hydrantHeights;
  const groundOf = (
    route: WaterRoute,
    from: { longitude: number; latitude: number },
    ft: number,
  ) => {
    const path = fromWater(route.path, from);
    const terrain = elevationAt
      ? terrainAlong(path, route.lengthFt, { startFt: ft, endFt: sceneFt }, elevationAt)
      : [];
    return { path, lengthFt: Math.max(1, Math.round(route.lengthFt)), terrain };
  };

  const hydrants: HydrantAtHand[] = [];
  const untested: UntestedHydrant[] = [];
  const named: NamedHydrant[] = [];
  const fillPlaces: FillPlace[] = [];
  request.hydrants.forEach(({ record, test, tests = [], route }, index) => {
    const id = `H${index + 1}`;
    const heightFt = hydrantHeights.othersFt[index]!;
    // What one hydrant lacks is told where it is looked at, not for each of ten here.
    const noPlan: PlanningNotice[] = [];
    const { hydrant, steamer } = hydrantFromRecord(id, record, test, heightFt, noPlan);
    const ahead = testsAhead(`The flow test of ${record.name}`, tests, request.today);
    if (!hydrant) {
      notices.push(...ahead);
      if (route.lengthFt <= longestLayFt && record.status !== 'out of service') {
        const lengthFt = Math.round(route.lengthFt);
        untested.push({ name: record.name, lengthFt, why: whyNotCounted(noPlan, test) });
      }
      return;
    }
    const { path, lengthFt, terrain } = groundOf(route, record, heightFt);
    recordIds[id] = record.id;
    paths[id] = path;
    if (route.street !== undefined) streets[id] = route.street;
    named.push({ id, record, elevationFt: heightFt });
    const out = record.status === 'out of service';
    const doubts = [...(test ? testDoubts(record, test, request.today) : []), ...ahead];
    if (lengthFt <= longestLayFt) {
      hydrants.push({
        hydrant,
        steamer,
        lengthFt,
        ...(terrain.length > 0 && { terrain }),
        ...(out && { outOfService: record.statusReason ?? 'no reason on record' }),
        ...(doubts.length > 0 && { doubts }),
      });
    }
    const fillGpm = Math.min(GREATEST_FILL_GPM, (test && flowTestResult(test).q20Gpm) || 0);
    if (!out && fillGpm >= LEAST_FILL_GPM) {
      fillPlaces.push({ id, name: record.name, roadMi: lengthFt / FEET_PER_MILE, fillGpm });
    }
  });

  const waters: WaterAtHand[] = [];
  request.waters.forEach(({ record, route }, index) => {
    const id = `W${index + 1}`;
    const heightFt = waterHeights.othersFt[index]!;
    const lift =
      request.liftFt === undefined
        ? liftAt(record, heightFt - sceneFt, building, elevationAt)
        : { liftFt: request.liftFt, liftOrigin: { kind: 'department' as const, text: 'As given' } };
    const { access } = record;
    const { path, lengthFt, terrain } = groundOf(route, record, heightFt);
    recordIds[id] = record.id;
    paths[id] = path;
    if (route.street !== undefined) streets[id] = route.street;
    // Too far for hose is not too far for tenders.
    fillPlaces.push({
      id,
      name: record.name,
      roadMi: lengthFt / FEET_PER_MILE,
      fillGpm: GREATEST_FILL_GPM,
      kind: 'open water',
      liftFt: lift.liftFt,
      ...(access && { access }),
    });
    if (lengthFt > longestLayFt) return;
    waters.push({
      draft: newDraft(id, {
        name: record.name,
        waterElevationFt: heightFt,
        altitudeFt: Math.max(0, Math.min(15000, heightFt)),
      }),
      ...lift,
      lengthFt,
      ...(terrain.length > 0 && { terrain }),
      ...(access && { access }),
      ...(record.usableGal !== undefined && { usableGal: record.usableGal }),
    });
  });

  const coming = rigs.map(({ rig, pumpTests, valve, arrivesMin }, index): RespondingRig => {
    const id = `E${index + 1}`;
    recordIds[id] = rig.id;
    const drawn = newRig(id, 'attack');
    return {
      rig: rigFromRecord(drawn, { rig, pumpTests: pumpTests ?? [] }, sceneFt, notices),
      kind: rig.kind,
      arrivesMin,
      hose: supplyHoseAboard(rig),
      assistValve: rig.assistValve,
      ...(rig.kind === 'aerial' && rig.ratedGpm !== undefined && { pumpKnown: true }),
      ...(valve && { valveLosses: valve.losses }),
    };
  });
  if (request.hydrants.length > 0 && hydrants.length === 0 && waters.length === 0) {
    notices.push(
      notice(
        'caution',
        'no-water-near',
      )`No hydrant with a flow test and no open water is within hose of ${building.name}.`,
    );
  }
  if (request.notByStreet && request.notByStreet.length > 0) {
    notices.push(notByStreetNotice(building.name, request.notByStreet));
  }
  const together = groupTests(
    named,
    request.hydrants.flatMap(({ tests }) => tests ?? []),
  );
  const failed = notices.some(({ level: one }) => one === 'error');
  if (failed || !demandGpm) {
    return { situation: undefined, recordIds, paths, streets, notices };
  }
  return {
    situation: {
      title: building.name,
      invented,
      scene: { name: building.name, elevationFt: sceneFt },
      demandGpm,
      rigs: coming,
      hydrants,
      ...(untested.length > 0 && { untested }),
      ...(together.length > 0 && { groupTests: together }),
      waters,
      fillPlaces: nearestOf(fillPlaces),
      department,
    },
    recordIds,
    paths,
    streets,
    notices,
  };
}

/** What is missing of a hydrant, and what to do. */
function whyNotCounted(
  found: readonly PlanningNotice[],
  test: Fields<'flow-tests'> | undefined,
): string {
  if (found.some(({ code }) => code === 'no-outlet')) {
    return 'It has no outlet on record: enter its outlets, then it counts.';
  }
  return test
    ? `Its flow test of ${test.testedOn} gives no supply curve: see what is wrong with it, or test it anew.`
    : 'It has no flow test on record: test it, then it counts.';
}

/** "H-1 stands 200 ft from …": near, and not by street. */
function notByStreetNotice(building: string, places: readonly NotByStreet[]): PlanningNotice {
  const parts = places.flatMap(({ name, straightFt, streetFt }, at) => [
    `${at > 0 ? '; ' : ''}${name}, `,
    ft(straightFt),
    ' in a straight line and ',
    ...(streetFt === undefined ? ['no street leads there'] : [ft(streetFt), ' by street']),
  ]);
  const one: PlanningNotice = {
    level: 'caution',
    code: 'near-not-by-street',
    parts: [
      `Near ${building}, not by street: `,
      ...parts,
      '. If hose can be laid across, it is the nearer water: look on the ground.',
    ],
    text: '',
  };
  return { ...one, text: findingText(one, 'us') };
}

/** The nearest of each kind: beyond them the road only grows. */
function nearestOf(places: readonly FillPlace[]): FillPlace[] {
  const water = ({ kind }: FillPlace) => kind === 'open water';
  return [
    ...places.filter((place) => !water(place)).slice(0, HYDRANTS_TO_FILL),
    ...places.filter(water).slice(0, WATERS_TO_FILL),
  ];
}

/**
 * The lift at a water [ft]: its record's, else as its access notes have it, else the bank above the
 * water where the ground is known and says something that a pump can lift, else the rating test's.
 */
function liftAt(
  water: Fields<'water-sources'>,
  aboveSceneFt: number,
  scene: Place,
  elevationAt: ElevationAt | undefined,
): Pick<WaterAtHand, 'liftFt' | 'liftOrigin'> {
  if (water.liftFt !== undefined) {
    return { liftFt: water.liftFt, liftOrigin: originOnRecord(water, 'liftFt') };
  }
  const noted = /\blift (\d+(?:\.\d+)?) ft\b/i.exec(water.access ?? '');
  if (noted) {
    const text = `Access notes on record: ${noted[0]}`;
    return { liftFt: Number(noted[1]), liftOrigin: { kind: 'department', text } };
  }
  const usual = { liftFt: USUAL_LIFT_FT };
  const bankFt = elevationAt?.(water.longitude, water.latitude);
  const groundFt = elevationAt?.(scene.longitude, scene.latitude);
  if (bankFt === undefined || groundFt === undefined) return usual;
  const liftFt = Math.round(bankFt - groundFt - aboveSceneFt);
  if (liftFt < LEAST_LIFT_FT || liftFt > GREATEST_LIFT_FT) return usual;
  const text = 'Bank above the water by the heights of the ground';
  return { liftFt, liftOrigin: { kind: 'estimated', text } };
}

/** Where a value of a water's record comes from, as plans tell it. */
function originOnRecord(water: Fields<'water-sources'>, field: string): Origin {
  const origin = originOf('water-sources', water, field);
  if (!origin) return { kind: 'department', text: 'On record' };
  const { kind, text, date } = origin;
  return {
    kind: kind === 'imported' ? 'department' : kind,
    text: `On record: ${text}`,
    ...(date !== undefined && { date }),
  };
}
