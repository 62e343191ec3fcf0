import type { FieldsIn, Kind } from '../model/index.ts';
import { placeBuildings } from './buildings.ts';
import { chance } from './chance.ts';
import {
  demoAppliances,
  demoHose,
  demoHoseTests,
  demoNozzles,
  demoPumpTests,
  demoRigs,
} from './fleet.ts';
import { runFlowTests } from './flow-tests.ts';
import { districtCentre, lonLatOf } from './ground.ts';
import { placeHydrants } from './hydrant-places.ts';
import { hydrantRecords } from './hydrant-records.ts';
import { mainNames } from './main-names.ts';
import { demoPlans } from './plans.ts';
import { solvedMains } from './solved-mains.ts';
import { placeStations } from './stations.ts';
import type { Stretch, TownMap } from './town-map.ts';
import { planTown, waterSources } from './town-plan.ts';
import { demoWaterSources } from './water-sources.ts';

/** Rows of every kind. A field that refers to another record holds that record's `externalId`. */
export type DemoRows = { [K in Kind]: FieldsIn<K>[] };

export interface DemoDistrict {
  name: string;
  rows: DemoRows;
}

export const demoName = 'Quillmere';
const YEARS = [2024, 2025, 2026];

/**
 * An invented district: a town of 1,500 buildings on looped mains with dead ends, a weak hill, a
 * strong works side, and a country edge with a river and a pond. It lies in the open South
 * Pacific; every name in it is made up. Streets and mains are the same for every seed; hydrants'
 * places, buildings and readings are not. The same seed gives the same rows on every machine.
 *
 * Flow tests are read off the mains, solved for each of three years, with the errors of gauges. In
 * the last year one main is left shut, as happens.
 * @param seed whole number
 */
export function demoDistrict(seed = 1): DemoDistrict {
  const town = planTown();
  const luck = (topic: number) => chance(seed * 101 + topic);
  const places = placeHydrants(town, luck(1));
  const years = YEARS.map((year, age) => ({
    year,
    mains: solvedMains(town, waterSources(town), {
      demandShare: 1 + 0.06 * age,
      roughnessShare: 0.97 - 0.015 * age,
      shut: age === YEARS.length - 1 ? leftShut(town) : undefined,
    }),
  }));
  const flowTests = runFlowTests(places, years, luck(2));
  const hydrants = hydrantRecords(places, luck(3), mainNames(town, places));
  const { stations, buildings } = placeStations(placeBuildings(town, luck(4)));
  const streets = town.streets.map(({ name, line, class: kind, footOnly }, i) => ({
    name,
    path: line.map(lonLatOf),
    class: kind,
    footOnly,
    externalId: `S-${`${i + 1}`.padStart(3, '0')}`,
  }));
  const rigs = demoRigs();
  const pumpTests = demoPumpTests(rigs, YEARS, luck(5));
  const hoseTests = demoHoseTests(luck(6));
  const rows: DemoRows = {
    stations,
    hydrants,
    'water-sources': demoWaterSources(),
    'flow-tests': flowTests.map((test) => ({
      ...test,
      externalId: `${test.hydrantId} ${test.testedOn}`,
    })),
    rigs,
    'pump-tests': pumpTests,
    hose: demoHose(YEARS, luck(7)),
    'hose-tests': hoseTests,
    nozzles: demoNozzles(),
    appliances: demoAppliances(),
    streets,
    buildings,
    plans: demoPlans({
      buildings,
      hydrants,
      streets,
      rigs,
      'flow-tests': flowTests,
      'pump-tests': pumpTests,
      'hose-tests': hoseTests,
    }),
    settings: [
      {
        name: 'district',
        value: { name: demoName, invented: true, seed, centre: { ...districtCentre } },
        note: 'Invented, to try things on: no such town, department or people.',
        externalId: 'district',
      },
    ],
  };
  return { name: demoName, rows: marked(rows, `Invented district, seed ${seed}`) };
}

/** The western main of the long street. */
function leftShut(town: TownMap): Stretch | undefined {
  const ends = [town.node([-2800, 0]), town.node([-2100, 0])];
  return town.stretches.find(({ from, to }) => ends.includes(from) && ends.includes(to));
}

/** Every row says which list it is from, and so that it is invented. */
function marked(rows: DemoRows, externalSource: string): DemoRows {
  return Object.fromEntries(
    Object.entries(rows).map(([kind, list]) => [
      kind,
      list.map((row) => ({ ...row, externalSource })),
    ]),
  ) as DemoRows;
}
