import { expect, test } from 'vitest';
import { mostWater, newHydrant, newLine, newPlan, newRig } from '../index.ts';
import { supplyAsSet } from '../supply/as-set.ts';

// A 500-gpm pump has its wall at 750 gpm; a strong hydrant pushes more than that through it.
test('a small pump before the scene is not counted on past its wall, not even to make up its own loss', () => {
  const plan = newPlan({
    title: 'Passing',
    scene: 'A',
    hydrants: [newHydrant('H', { staticPsi: 80, residualPsi: 70, testGpm: 3000 })],
    rigs: [newRig('B', 'booster', { ratedGpm: 500 }), newRig('A', 'attack')],
    lines: [
      newLine('suction', 'H.steamer', 'B.intake1', '5', 25),
      newLine('lay', 'B.discharge1', 'A.intake1', '5', 700),
    ],
  });
  const most = mostWater(plan);
  expect(most.flowGpm).toBeGreaterThan(750);
  // Set so, the supply gives what it is said to give.
  expect(supplyAsSet(most.plan, most.flowGpm).flowGpm).toBeCloseTo(most.flowGpm, 1);
});
