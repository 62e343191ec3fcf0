/** What the app opens with the first time: an invented evolution that shows what a booster does. */
import { boostedAtHydrant, type Plan } from '@plugside/fireground';

export function firstPlan(): Plan {
  const plan = boostedAtHydrant({
    title: 'Cold store on Quarry Lane',
    hydrant: { staticPsi: 62, residualPsi: 44, testGpm: 1060 },
    lay: { hose: '5', lengthFt: 900, riseFt: 35 },
    booster: { ratedGpm: 1500, sideLines: [{ hose: '3' }, { hose: '5' }] },
    attackLines: [
      {},
      { hose: '1-3/4', nozzle: { kind: 'smooth-bore', tipIn: 0.9375, ratedPsi: 50 } },
      { hose: '2-1/2', nozzle: { kind: 'smooth-bore', tipIn: 1.25, ratedPsi: 50 } },
    ],
  });
  const names: Record<string, string> = { B1: 'Engine 7', A1: 'Engine 3' };
  return {
    ...plan,
    invented: true,
    hydrants: plan.hydrants.map((one) => ({ ...one, name: 'Hydrant 114' })),
    rigs: plan.rigs.map((one) => ({ ...one, name: names[one.id] ?? one.name })),
  };
}
