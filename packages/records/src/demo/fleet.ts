/** Stations, rigs and what they carry, and the tests of pumps and hose. */
import { capabilityFor, coefficientFor, type HoseSize } from '@plugside/fireground';
import type { FieldsIn } from '../model/index.ts';
import type { Chance } from './chance.ts';

/** Station ids are the stations' keys until they are stored. */
export function demoRigs(): FieldsIn<'rigs'>[] {
  const rigs: FieldsIn<'rigs'>[] = [
    {
      name: 'Engine 1',
      kind: 'engine',
      ratedGpm: 1500,
      tankGal: 750,
      intakes: 3,
      discharges: 7,
      intakeReliefPsi: 150,
      assistValve: true,
      hose: [
        { size: '5', lengthFt: 1000, where: 'supply bed' },
        { size: '3', lengthFt: 600, where: 'supply bed' },
        { size: '2-1/2', lengthFt: 250, where: 'preconnect' },
        { size: '1-3/4', lengthFt: 400, where: 'crosslays' },
      ],
      stationId: 'Station 1',
    },
    {
      name: 'Engine 2',
      kind: 'engine',
      ratedGpm: 1250,
      tankGal: 500,
      intakes: 3,
      discharges: 6,
      intakeReliefPsi: 150,
      hose: [
        { size: '4', lengthFt: 800, where: 'supply bed' },
        { size: '3', lengthFt: 800, where: 'supply bed' },
        { size: '1-3/4', lengthFt: 400, where: 'crosslays' },
      ],
      stationId: 'Station 1',
    },
    {
      name: 'Ladder 1',
      kind: 'aerial',
      ratedGpm: 2000,
      tankGal: 300,
      intakes: 3,
      discharges: 6,
      hose: [
        { size: '5', lengthFt: 500, where: 'supply bed' },
        { size: '1-3/4', lengthFt: 300, where: 'crosslays' },
      ],
      stationId: 'Station 1',
    },
    {
      name: 'Engine 3',
      kind: 'engine',
      ratedGpm: 1500,
      tankGal: 1000,
      intakes: 4,
      discharges: 7,
      intakeReliefPsi: 150,
      assistValve: true,
      hose: [
        { size: '5', lengthFt: 1200, where: 'supply bed' },
        { size: '2-1/2', lengthFt: 400, where: 'attack bed' },
        { size: '1-3/4', lengthFt: 400, where: 'crosslays' },
      ],
      stationId: 'Station 2',
    },
    {
      name: 'Tender 1',
      kind: 'tender',
      ratedGpm: 500,
      tankGal: 3000,
      intakes: 2,
      discharges: 3,
      hose: [
        { size: '4', lengthFt: 200, where: 'supply bed' },
        { size: '1-3/4', lengthFt: 150, where: 'crosslay' },
      ],
      stationId: 'Station 2',
    },
  ];
  const plate = { kind: 'maker', text: 'Plate on the rig, invented' } as const;
  const listed = { kind: 'department', text: 'Fleet list, invented' } as const;
  const origins = {
    ratedGpm: plate,
    tankGal: plate,
    ...Object.fromEntries(
      ['kind', 'intakes', 'discharges', 'assistValve', 'inService'].map((field) => [field, listed]),
    ),
  };
  return rigs.map((rig) => ({ assistValve: false, ...rig, origins, externalId: rig.name }));
}

/** In-service tests at the rating's stages, a little weaker each year. */
export function demoPumpTests(
  rigs: readonly FieldsIn<'rigs'>[],
  years: readonly number[],
  luck: Chance,
): FieldsIn<'pump-tests'>[] {
  return rigs.flatMap((rig) => {
    const ratedGpm = rig.ratedGpm!;
    const { points } = capabilityFor({ ratedGpm });
    const whenNew = luck.between(1.03, 1.08);
    const wearPerYear = rig.name === 'Engine 2' ? 0.028 : 0.006;
    return years.map((year, age) => {
      const condition = whenNew - wearPerYear * age;
      const stages = points.filter(([flowGpm]) => flowGpm <= ratedGpm);
      return {
        rigId: rig.name,
        testedOn: `${year}-03-${`${10 + luck.whole(0, 9)}`}`,
        points: stages.map(([flowGpm, netPsi]) => ({
          flowGpm: Math.round(flowGpm / 5) * 5,
          netPsi: Math.round(netPsi * condition + luck.error(1)),
        })),
        by: 'Workshop',
        externalId: `${rig.name} ${year}`,
      };
    });
  });
}

/** [size, each length ft, how many, on which rig, service-test psi] */
const lengths: [size: HoseSize, lengthFt: number, count: number, rig: string, testPsi: number][] = [
  ['5', 100, 10, 'Engine 1', 200],
  ['5', 100, 12, 'Engine 3', 200],
  ['5', 100, 5, 'Ladder 1', 200],
  ['4', 100, 8, 'Engine 2', 200],
  ['3', 50, 12, 'Engine 1', 400],
  ['1-3/4', 50, 8, 'Engine 1', 300],
  ['1-3/4', 50, 8, 'Engine 2', 300],
  ['1-3/4', 50, 8, 'Engine 3', 300],
];

export function demoHose(years: readonly number[], luck: Chance): FieldsIn<'hose'>[] {
  let number = 0;
  const all = lengths.flatMap(([size, lengthFt, count, rigId, testPsi]) =>
    Array.from({ length: count }, (): FieldsIn<'hose'> => {
      number += 1;
      const name = `L-${`${number}`.padStart(3, '0')}`;
      const failed = luck.happens(0.03);
      const tested = years.map((year, i) => ({
        testedOn: `${year}-04-${`${12 + luck.whole(0, 3)}`}`,
        psi: testPsi,
        passed: !(failed && i === years.length - 1),
      }));
      return {
        name,
        size,
        lengthFt,
        inServiceOn: `${luck.whole(2012, 2022)}-06-01`,
        rigId,
        serviceTests: tested,
        ...(failed && { retiredOn: tested[tested.length - 1]!.testedOn }),
        externalId: name,
      };
    }),
  );
  // What was retired has been replaced: the beds are full.
  const replacements = all
    .filter(({ retiredOn }) => retiredOn !== undefined)
    .map(({ size, lengthFt, rigId, retiredOn, serviceTests = [] }, at): FieldsIn<'hose'> => {
      const name = `L-${`${number + at + 1}`.padStart(3, '0')}`;
      const { psi } = serviceTests[0]!;
      return {
        name,
        size,
        lengthFt,
        inServiceOn: retiredOn,
        rigId,
        serviceTests: [{ testedOn: retiredOn!, psi, passed: true }],
        externalId: name,
      };
    });
  return [...all, ...replacements];
}

/** What the department's own hose loses, against the catalogue's coefficient. */
const ownHose: [
  size: HoseSize,
  share: number,
  flows: number[],
  lengthFt: number,
  adopted: boolean,
][] = [
  ['5', 0.86, [500, 750, 1000, 1250, 1500], 1000, true],
  ['4', 0.95, [400, 600, 800, 1000], 800, false],
  ['1-3/4', 0.82, [100, 125, 150, 175, 200], 200, true],
];

export function demoHoseTests(luck: Chance): FieldsIn<'hose-tests'>[] {
  return ownHose.map(([size, share, flows, lengthFt, adopted]) => {
    const { coefficient } = coefficientFor({ department: {} }, { hose: size });
    return {
      size,
      testedOn: '2025-05-20',
      adopted,
      points: flows.map((flowGpm) => {
        const lossPsi = share * coefficient * (flowGpm / 100) ** 2 * (lengthFt / 100);
        return {
          flowGpm,
          lossPsi: Math.max(0.5, Math.round(2 * (lossPsi + luck.error(0.4))) / 2),
          lengthFt,
        };
      }),
      by: 'A watch',
      externalId: `${size} 2025`,
    };
  });
}

export function demoNozzles(): FieldsIn<'nozzles'>[] {
  const nozzles: FieldsIn<'nozzles'>[] = [
    { name: 'Low-pressure fog', kind: 'fog', ratedPsi: 50, ratedGpm: 150 },
    { name: 'Crosslay fog', kind: 'fog', ratedPsi: 100, ratedGpm: 150 },
    { name: 'Crosslay tip', kind: 'smooth-bore', ratedPsi: 50, tipIn: 0.9375 },
    { name: 'Big line tip', kind: 'smooth-bore', ratedPsi: 50, tipIn: 1.125 },
    {
      name: 'Deck fog',
      kind: 'automatic',
      use: 'master stream',
      ratedPsi: 100,
      leastGpm: 250,
      greatestGpm: 1250,
    },
    { name: 'Deck tip', kind: 'smooth-bore', use: 'master stream', ratedPsi: 80, tipIn: 1.5 },
  ];
  return nozzles.map((nozzle) => ({ ...nozzle, externalId: nozzle.name }));
}

export function demoAppliances(): FieldsIn<'appliances'>[] {
  const appliances: FieldsIn<'appliances'>[] = [
    {
      name: 'Assist valve, Engine 1',
      kind: 'assist-valve',
      loss: { lossPsi: 11, atGpm: 1000 },
      suctionLoss: { lossPsi: 7, atGpm: 1000 },
      dischargeLoss: { lossPsi: 3, atGpm: 1000 },
    },
    { name: 'Gated wye', kind: 'wye', loss: { lossPsi: 10, atGpm: 350 } },
    { name: 'Manifold', kind: 'manifold', loss: { lossPsi: 10, atGpm: 1000 } },
    { name: 'Ground monitor', kind: 'monitor', loss: { lossPsi: 15, atGpm: 800 } },
  ];
  return appliances.map((appliance) => ({ ...appliance, externalId: appliance.name }));
}
