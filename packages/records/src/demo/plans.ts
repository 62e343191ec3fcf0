/** A few plans made the way a department makes them: building, nearest usable hydrant by hose, rigs. */
import { writePlan } from '@plugside/fireground';
import { type Fields, type FieldsIn, recordSchemas } from '../model/index.ts';
import { departmentCoefficients, planForBuilding } from '../planning/index.ts';
import { buildStreetNetwork, hoseStreets, usableHydrants } from '../streets/index.ts';
import { demoElevationFt } from './ground.ts';

/** What the plans are made from; references hold external ids. */
export interface PlanningRows {
  buildings: readonly FieldsIn<'buildings'>[];
  hydrants: readonly FieldsIn<'hydrants'>[];
  streets: readonly FieldsIn<'streets'>[];
  rigs: readonly FieldsIn<'rigs'>[];
  'flow-tests': readonly FieldsIn<'flow-tests'>[];
  'pump-tests': readonly FieldsIn<'pump-tests'>[];
  'hose-tests': readonly FieldsIn<'hose-tests'>[];
}

type Building = FieldsIn<'buildings'>;

/** The neediest of a kind. */
const wanted: readonly {
  is: (building: Building) => boolean;
  attack: string;
  booster?: string;
}[] = [
  { is: ({ occupancy }) => occupancy === 'timber yard', attack: 'Engine 1', booster: 'Engine 3' },
  { is: ({ occupancy, storeys }) => occupancy === 'hotel' && storeys === 5, attack: 'Engine 1' },
  {
    is: ({ occupancy, elevationFt }) => occupancy === 'dwelling' && elevationFt! > 140,
    attack: 'Engine 3',
    booster: 'Engine 1',
  },
  { is: ({ occupancy }) => occupancy === 'cold store', attack: 'Engine 3', booster: 'Engine 2' },
];

export function demoPlans(rows: PlanningRows): FieldsIn<'plans'>[] {
  const network = buildStreetNetwork(hoseStreets(rows.streets));
  const department = {
    coefficients: departmentCoefficients(
      rows['hose-tests'].map((test) => recordSchemas['hose-tests'].parse(test)),
    ),
  };
  const pickedRig = (name: string) => ({
    rig: parsedRig(rows.rigs.find((rig) => rig.name === name)!),
    pumpTests: rows['pump-tests'].filter(({ rigId }) => rigId === name) as Fields<'pump-tests'>[],
  });
  return wanted.flatMap(({ is, attack, booster }, i) => {
    const building = neediest(rows.buildings.filter(is));
    if (!building) return [];
    const route = usableHydrants(network, rows.hydrants, building, { count: 1 }).at(-1);
    const newest = rows['flow-tests']
      .filter(({ hydrantId }) => hydrantId === route?.target.name)
      .reduce((a, b) => (a.testedOn > b.testedOn ? a : b));
    if (!route) return [];
    const { plan } = planForBuilding({
      building,
      hydrant: recordSchemas.hydrants.parse(route.target),
      test: newest as Fields<'flow-tests'>,
      attack: pickedRig(attack),
      booster: booster ? pickedRig(booster) : undefined,
      route,
      elevationAt: demoElevationFt,
      department,
      invented: true,
    });
    if (!plan) return [];
    return {
      name: plan.title,
      text: writePlan(plan),
      buildingId: building.externalId,
      hydrantIds: [route.target.name],
      rigIds: booster ? [attack, booster] : [attack],
      path: [...route.path]
        .reverse()
        .map(([longitude, latitude]): [number, number] => [longitude, latitude]),
      externalId: `plan ${i + 1}`,
    };
  });
}

/** Its station is not known by an id yet, and a plan does not ask. */
function parsedRig({ stationId: _, ...rig }: FieldsIn<'rigs'>): Fields<'rigs'> {
  return recordSchemas.rigs.parse(rig);
}

function neediest(buildings: readonly Building[]): Building | undefined {
  return [...buildings].sort((a, b) => b.neededGpm! - a.neededGpm!)[0];
}
