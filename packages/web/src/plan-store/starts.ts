/** Where a new plan can start: the patterns, and three worked examples with invented data. */
import { addMasterStream, type Plan, patternList, relay, twoHydrants } from '@plugside/fireground';
import { firstPlan } from './first-plan.ts';

export interface Start {
  id: string;
  kind: 'pattern' | 'example';
  text: string;
  make(): Plan;
}

function named(plan: Plan, names: Record<string, string>): Plan {
  const name = <T extends { id: string; name?: string }>(one: T): T =>
    names[one.id] ? { ...one, name: names[one.id] } : one;
  return {
    ...plan,
    invented: true,
    hydrants: plan.hydrants.map(name),
    rigs: plan.rigs.map(name),
    appliances: plan.appliances.map(name),
  };
}

const ridgeRelay = (): Plan =>
  named(
    relay({
      title: 'Barn on Ridge Road, relay uphill',
      hydrant: { staticPsi: 68, residualPsi: 54, testGpm: 1250 },
      pumps: 4,
      lay: { hose: '5', lengthFt: 3600, riseFt: 120 },
      attackLines: [{}, {}, { hose: '2-1/2', nozzle: { kind: 'smooth-bore', tipIn: 1.25, ratedPsi: 50 } }],
    }),
    { H1: 'Hydrant 20', P1: 'Engine 1', P2: 'Engine 2', P3: 'Engine 5', P4: 'Engine 9' },
  );

const millTwoHydrants = (): Plan =>
  named(
    addMasterStream(
      twoHydrants({
        title: 'Old mill, two hydrants and a master stream',
        first: { hydrant: { staticPsi: 72, residualPsi: 58, testGpm: 1300 }, hose: '5', lengthFt: 500, riseFt: 8 },
        second: { hydrant: { staticPsi: 60, residualPsi: 40, testGpm: 900 }, hose: '4', lengthFt: 800, riseFt: -6 },
        attackLines: [{ hose: '2-1/2', nozzle: { kind: 'smooth-bore', tipIn: 1.125, ratedPsi: 50 } }],
      }),
      'A1',
    ),
    { H1: 'Hydrant 31', H2: 'Hydrant 44', A1: 'Engine 3' },
  );

export const starts: readonly Start[] = [
  ...patternList.map((one): Start => ({ id: one.id, kind: 'pattern', text: one.label, make: one.make })),
  { id: 'quarry', kind: 'example', text: 'Cold store: a booster with side lines, uphill', make: firstPlan },
  { id: 'ridge', kind: 'example', text: 'Ridge barn: a relay of four pumps', make: ridgeRelay },
  { id: 'mill', kind: 'example', text: 'Old mill: two hydrants and a master stream', make: millTwoHydrants },
];
