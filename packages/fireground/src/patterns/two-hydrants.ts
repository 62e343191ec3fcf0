import { usualRating } from '../catalogue/pumps.ts';
import type { Plan } from '../plan/plan.ts';
import { type AttackLineOptions, addAttackLines } from './attack-lines.ts';
import { usualHydrant } from './boosted-at-hydrant.ts';
import { fillLay, type LayOptions } from './lay.ts';
import { type HydrantTest, newHydrant, newLine, newPlan, newRig } from './pieces.ts';

export interface HydrantLay extends LayOptions {
  hydrant?: HydrantTest;
}

export interface TwoHydrantsOptions {
  title?: string;
  /** Each hydrant with its own lay. `riseFt`: the engine above that hydrant. */
  first?: HydrantLay;
  second?: HydrantLay;
  attack?: { ratedGpm?: number; pdpPsi?: number };
  attackLines?: readonly AttackLineOptions[];
}

/**
 * Two hydrants into two intakes of one engine. Their mains are left open: named alike in the plan,
 * they give less. The engine is at 0 ft. Ids: `H1`, `H2`, `A1`; lines `lay1`, `lay2`.
 */
export function twoHydrants(options: TwoHydrantsOptions = {}): Plan {
  const given = [options.first ?? {}, options.second ?? {}];
  const lays = given.map(fillLay);
  const hydrants = given.map(({ hydrant }, index) =>
    // 0 − rise would be −0 on level ground.
    newHydrant(`H${index + 1}`, {
      ...(hydrant ?? usualHydrant),
      elevationFt: 0 - (lays[index]?.riseFt ?? 0),
    }),
  );
  const lines = lays.map((lay, index) =>
    newLine(
      `lay${index + 1}`,
      `H${index + 1}.steamer`,
      `A1.intake${index + 1}`,
      lay.hose,
      lay.lengthFt,
      { count: lay.count },
    ),
  );
  const plan = newPlan({
    title: options.title ?? 'Two hydrants',
    scene: 'A1',
    hydrants,
    rigs: [
      newRig('A1', 'attack', {
        name: 'Attack engine',
        ratedGpm: options.attack?.ratedGpm ?? usualRating,
        pdpPsi: options.attack?.pdpPsi,
      }),
    ],
    lines,
  });
  return options.attackLines ? addAttackLines(plan, 'A1', options.attackLines) : plan;
}
