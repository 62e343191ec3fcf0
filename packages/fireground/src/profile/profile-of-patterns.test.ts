import { PSI_PER_FT } from '@plugside/hydraulics';
import { describe, expect, test } from 'vitest';
import { patternList } from '../patterns/pattern-list.ts';
import { solveNow } from '../questions/what-now.ts';
import { profileOf } from './profile-of.ts';

describe('every pattern, solved', () => {
  test.each(patternList)(
    '$id: water falls by friction and height along hose, and rises only at pumps',
    (pattern) => {
      const plan = pattern.make();
      const state = solveNow(plan);
      const { supply, attack } = profileOf(plan, state);
      const scene = state.rigs.find(({ id }) => id === plan.scene)!;
      expect(supply.length).toBeGreaterThan(0);
      for (const { stations } of supply) {
        expect(stations[0]!.kind === 'main' || stations[0]!.kind === 'water').toBe(true);
        expect(stations.at(-1)).toMatchObject({ piece: plan.scene, kind: 'discharge' });
        expect(stations.at(-1)!.psi).toBeCloseTo(scene.pdpPsi, 6);
      }
      for (const { stations } of attack) expect(stations[0]!.psi).toBeCloseTo(scene.pdpPsi, 6);
      for (const { stations, spans, regions } of [...supply, ...attack]) {
        expect(spans).toHaveLength(stations.length - 1);
        expect(regions).toHaveLength(spans.length);
        for (const [index, span] of spans.entries()) {
          const [a, b] = [stations[index]!, stations[index + 1]!];
          const climbPsi = PSI_PER_FT * (b.elevationFt - a.elevationFt);
          if (span.kind === 'pump') continue;
          expect(b.psi + climbPsi, `${a.piece} to ${b.piece}`).toBeLessThanOrEqual(a.psi + 1e-6);
        }
      }
    },
  );
});
