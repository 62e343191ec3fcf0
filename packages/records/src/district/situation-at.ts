import type { Terrain } from '../elevation/index.ts';
import type { Stored } from '../model/index.ts';
import {
  type BuildingSituation,
  comingRigs,
  departmentCoefficients,
  departmentLimits,
  hoseTestsAhead,
  situationForBuilding,
} from '../planning/index.ts';
import { NotFoundError, type RecordStore } from '../store/index.ts';
import { frontageOf, type HoseRoute, hoseRoutes, type Place } from '../streets/index.ts';
import { districtRoads, districtStreets } from './district-streets.ts';
import { everyRecord } from './every-record.ts';
import { hydrantsWithTests } from './hydrants-with-tests.ts';
import { readDistrict } from './read-district.ts';
import { straightNear } from './straight-near.ts';

export interface SituationAtOptions {
  /** What must reach the building [gpm]; its record's needed fire flow where left out. */
  demandGpm?: number | undefined;
  /** Usable hydrants with a flow test looked at, the nearest by hose; 10 where left out. 1 to 40. */
  hydrants?: number | undefined;
  /** Ground for heights that records lack, and between the ends of a lay. */
  terrain?: Pick<Terrain, 'elevationFt'> | undefined;
}

const USUAL_HYDRANTS = 10;
/** Places with open water looked at, the nearest by hose. */
const WATERS = 3;

export interface SituationAt extends BuildingSituation {
  building: Stored<'buildings'>;
}

/**
 * What there is to work with at a building, from everything on record: hydrants and open water by
 * hose length along the streets, rigs by their stations, the department's own coefficients.
 *
 * @throws NotFoundError for no such building; RangeError for a number of hydrants out of range
 */
export async function situationAt(
  store: RecordStore,
  buildingId: string,
  { demandGpm, hydrants: count = USUAL_HYDRANTS, terrain }: SituationAtOptions = {},
): Promise<SituationAt> {
  if (!Number.isInteger(count) || count < 1 || count > 40) {
    throw new RangeError(`hydrants is ${count}; give a whole number from 1 to 40.`);
  }
  const building = await store.get('buildings', buildingId);
  if (!building) throw new NotFoundError('buildings', buildingId.slice(0, 40));
  const [
    network,
    { invented },
    hydrants,
    waters,
    stations,
    rigs,
    pumpTests,
    hoseTests,
    settings,
    appliances,
    hose,
  ] = await Promise.all([
    districtStreets(store),
    readDistrict(store),
    everyRecord(store, 'hydrants'),
    everyRecord(store, 'water-sources'),
    everyRecord(store, 'stations'),
    everyRecord(store, 'rigs'),
    everyRecord(store, 'pump-tests'),
    everyRecord(store, 'hose-tests'),
    everyRecord(store, 'settings'),
    everyRecord(store, 'appliances'),
    everyRecord(store, 'hose'),
  ]);
  const frontage = frontageOf(building);
  const near = await hydrantsWithTests(store, network, hydrants, building, count);
  const nearWaters =
    waters.length === 0 ? [] : hoseRoutes(network, building, waters, { count: WATERS, frontage });
  const roads =
    stations.length === 0 ? [] : hoseRoutes(await districtRoads(store), building, stations);
  const { coming, notices } = comingRigs({
    rigs,
    pumpTests,
    appliances,
    hose,
    roadFtByStation: new Map(roads.map(({ target, lengthFt }) => [target.id, lengthFt])),
  });
  const coefficients = departmentCoefficients(hoseTests);
  const limits = departmentLimits(settings);
  const made = situationForBuilding({
    building,
    ...(demandGpm !== undefined && { demandGpm }),
    hydrants: near.map(({ route, ...one }) => ({
      ...one,
      record: route.target,
      route: wayOf(route),
    })),
    notByStreet: straightNear(network, hydrants, building),
    waters: nearWaters.map((route) => ({ record: route.target, route: wayOf(route) })),
    rigs: coming,
    ...(terrain && {
      elevationAt: (longitude: number, latitude: number) =>
        terrain.elevationFt(longitude, latitude),
    }),
    department: {
      ...(Object.keys(coefficients).length > 0 && { coefficients }),
      ...(Object.keys(limits).length > 0 && { limits }),
    },
    invented,
    today: new Date().toISOString().slice(0, 10),
  });
  return {
    ...made,
    building,
    notices: [...notices, ...hoseTestsAhead(hoseTests), ...made.notices],
  };
}

const wayOf = ({ lengthFt, path, placeStreet }: HoseRoute<Place>) => ({
  lengthFt,
  path,
  ...(placeStreet !== undefined && { street: placeStreet }),
});
