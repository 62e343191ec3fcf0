/** From a situation and what was chosen for it to a page. */
import {
  askedOf,
  type Choice,
  coefficientFor,
  findingText,
  type LimitCheck,
  mishaps,
  type SupplyWay,
  settingsFor,
  type UnitSystem,
} from '@plugside/fireground';
import type { Fields, Stored } from '@plugside/records/model';
import type { BuildingSituation } from '@plugside/records/planning';
import { figuresIn } from '../sheet/figures.ts';
import type { Source } from '../sheet/notes.ts';
import { hoseWords, originWords } from '../words.ts';
import type { BuildingWaterPlan, PlanMap } from './data.ts';
import { legsOf, pumpsOf } from './legs.ts';
import { tankOf } from './tank.ts';
import { whatIfRows } from './what-if.ts';

export interface BuildingPlanRequest {
  building: Fields<'buildings'>;
  /** As made for the building, with its paths and notices. */
  situation: BuildingSituation;
  /** With its sentences in the units to print. */
  choice: Choice;
  /** Place of the way to print; the best where left out. */
  way?: number;
  /** "needed fire flow on record" where left out. */
  demandMethod?: string;
  /** Around the building, for the map. */
  streets: readonly Pick<Fields<'streets'>, 'name' | 'path' | 'footOnly'>[];
  hydrants: readonly Stored<'hydrants'>[];
  waters?: readonly Stored<'water-sources'>[];
  units?: UnitSystem;
}

/**
 * A building's water plan: the way chosen and the one after it, solved as they are in the choice,
 * and what can befall the first.
 * @throws RangeError where the situation has nothing to choose from, or no such way
 */
export function buildingPlanFor(request: BuildingPlanRequest): BuildingWaterPlan {
  const { building, choice, way: at = 0, units = 'us', situation: made } = request;
  const { situation } = made;
  const way = choice.ways[at];
  if (!situation || !way) {
    throw new RangeError(
      choice.ways.length === 0
        ? `${building.name} has no supply to print: ${choice.why}`
        : `way is ${at}; allowed: 0 to ${choice.ways.length - 1}. Name one of the ways chosen from.`,
    );
  }
  const others = choice.ways.filter((other) => other !== way);
  const [nextInRank] = others;
  const differing = others.filter((other) => differs(other, way));
  const next = differing.find((other) => apart(other, way)) ?? differing[0];
  const befall = mishaps(way, situation.demandGpm, { units });
  const tank = tankOf(way, situation, units);
  return {
    building: factsOf(building),
    invented: situation.invented,
    demand: {
      flowGpm: situation.demandGpm,
      method: request.demandMethod ?? 'needed fire flow on record',
    },
    asked: askedOf(situation),
    rigs: situation.rigs
      .map(({ rig, arrivesMin }) => ({ id: rig.id, name: rig.name ?? rig.id, arrivesMin }))
      .sort((one, two) => one.arrivesMin - two.arrivesMin),
    way,
    ...(nextInRank && { nextInRank }),
    ...(next && { next }),
    why:
      at === 0 ? choice.why : `Picked by hand. First in rank is another: ${choice.ways[0]!.title}.`,
    limits: limitsOf(way, situation.demandGpm),
    mishaps: befall,
    whatIf: whatIfRows(way, befall, units),
    ...(tank && { tank }),
    comesBy: (way.parts ?? []).flatMap(({ sourceId, sourceName }) => {
      const street = made.streets[sourceId];
      return street === undefined ? [] : [{ source: sourceName, street }];
    }),
    notices: made.notices
      .filter(({ level }) => level === 'caution')
      .map((found) => ({ level: 'caution' as const, text: findingText(found, units) })),
    map: mapOf(request, way, next),
    sources: sourcesOf(request, way),
  };
}

/** The next one is of use where the first one's water is lost. */
function differs(other: SupplyWay, way: SupplyWay): boolean {
  return other.sources.some((source) => !way.sources.includes(source));
}

/** None of the first one's water: whatever is lost of it, this stays. */
function apart(other: SupplyWay, way: SupplyWay): boolean {
  return other.sources.every((source) => !way.sources.includes(source));
}

function factsOf(building: Fields<'buildings'>): BuildingWaterPlan['building'] {
  const { name, address, storeys, areaFt2, construction, occupancy } = building;
  const { exposures, sprinklered, standpipe } = building;
  return {
    name,
    ...(address && { address }),
    ...(storeys !== undefined && { storeys }),
    ...(areaFt2 !== undefined && { areaFt2 }),
    ...(construction && { construction }),
    ...(occupancy && { occupancy }),
    ...(exposures !== undefined && { exposures }),
    ...(sprinklered !== undefined && { sprinklered }),
    ...(standpipe !== undefined && { standpipe }),
  };
}

/** Every hard limit with the room left at what the way is set to. */
function limitsOf(way: SupplyWay, demandGpm: number): LimitCheck[] {
  if (!way.plan) return [...way.binding];
  const { limits } = settingsFor(way.plan, Math.min(demandGpm, way.mostGpm));
  // A suction hose is judged by its vacuum.
  const suction = way.plan.lines.filter(({ from }) =>
    way.plan!.drafts.some(({ id }) => from.startsWith(`${id}.`)),
  );
  return limits
    .filter(({ weight, piece }) => weight === 'hard' && suction.every(({ id }) => id !== piece))
    .sort((a, b) => a.marginFraction - b.marginFraction);
}

/** Hydrants farther from the drawing's middle than this are not drawn [degrees of latitude]. */
const AROUND_DEGREES = 0.012;

function mapOf(request: BuildingPlanRequest, way: SupplyWay, next?: SupplyWay): PlanMap {
  const { building, situation: made, streets, units = 'us' } = request;
  const { longitude, latitude } = building;
  const idOf = new Map(Object.entries(made.recordIds).map(([id, record]) => [record, id]));
  const used = (recordId: string) => way.sources.includes(idOf.get(recordId) ?? '');
  const near = (place: { longitude: number; latitude: number }) =>
    Math.abs(place.latitude - latitude) < AROUND_DEGREES &&
    Math.abs(place.longitude - longitude) < AROUND_DEGREES / Math.cos((latitude * Math.PI) / 180);
  return {
    streets: streets.map(({ name, path, footOnly }) => ({ name, path, footOnly })),
    ...(building.footprint && { footprint: building.footprint }),
    building: [longitude, latitude],
    hydrants: request.hydrants
      .filter((hydrant) => used(hydrant.id) || near(hydrant))
      .map((hydrant) => ({
        name: hydrant.name,
        at: [hydrant.longitude, hydrant.latitude] as const,
        used: used(hydrant.id),
        ...(hydrant.status === 'out of service' && { outOfService: true }),
      })),
    waters: (request.waters ?? [])
      .filter((water) => used(water.id) || near(water))
      .map((water) => ({
        name: water.name,
        at: [water.longitude, water.latitude] as const,
        used: used(water.id),
      })),
    lays: [...legsOf(way, made, units), ...(next ? legsOf(next, made, units, true) : [])],
    pumps: pumpsOf(way, made.paths),
  };
}

function sourcesOf(request: BuildingPlanRequest, way: SupplyWay): Source[] {
  const { situation, choice, units = 'us' } = request;
  const { full } = figuresIn(units);
  const list: Source[] = [
    {
      what: `Demand ${full(choice.demandGpm, 'flow')}`,
      from: request.demandMethod ?? 'the building’s needed fire flow on record',
    },
  ];
  for (const hydrant of way.plan?.hydrants ?? []) {
    list.push({
      what: `${hydrant.name ?? hydrant.id}: ${full(hydrant.staticPsi, 'pressure')} static, ${full(hydrant.residualPsi, 'pressure')} at ${full(hydrant.testGpm, 'flow')}`,
      from: hydrant.testedOn ? `flow test of ${hydrant.testedOn}` : 'flow test without a date',
    });
  }
  const { department } = situation.situation!;
  for (const hose of new Set((way.plan?.lines ?? []).map((line) => line.hose))) {
    const { coefficient, origin } = coefficientFor({ department }, { hose });
    list.push({
      what: hoseWords(hose, coefficient, units),
      from: originWords(origin, units),
    });
  }
  list.push({
    what: 'Times',
    from: 'arrivals by road from the stations, tasks by common practice: drill your own',
  });
  return list;
}
