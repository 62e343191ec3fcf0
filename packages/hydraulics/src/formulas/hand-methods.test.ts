import { describe, expect, test } from 'vitest';
import { handMethodPsiPer100Ft, supplyHandMethodPsiPer100Ft } from './hand-methods.ts';
import { hoseFrictionPsi } from './hose-friction.ts';
import { pumpDischargePsi } from './pdp.ts';
import { handMethodPdpRows } from './published/friction.ts';
import { misses, titled } from './published/published-row.ts';

describe('hand method', () => {
  test.each(titled(handMethodPdpRows))('%s', (_, row) => {
    const { flowGpm, n, lengthFt, nozzlePsi } = row.given;
    const frictionPsi = (handMethodPsiPer100Ft(flowGpm, n) * lengthFt) / 100;
    expect(misses(row, { pdpPsi: pumpDischargePsi({ nozzlePsi, frictionPsi }) })).toEqual([]);
  });

  test('150 gpm in 1¾ in: 35 psi in 100 ft, as by the coefficient 15.5 (Hydraulics study cards)', () => {
    expect(handMethodPsiPer100Ft(150, 3)).toBe(35);
    expect(Math.abs(hoseFrictionPsi(15.5, 150, 100) - 35)).toBeLessThanOrEqual(0.5);
  });

  test('supply rule stays within a fifth of C = 0.2 from 700 to 1,500 gpm (Hydraulics study cards)', () => {
    for (let flow = 700; flow <= 1500; flow += 100) {
      const share = supplyHandMethodPsiPer100Ft(flow) / hoseFrictionPsi(0.2, flow, 100);
      expect(Math.abs(share - 1)).toBeLessThanOrEqual(0.2);
    }
  });

  test('refuses flows at which the rules go negative', () => {
    expect(() => handMethodPsiPer100Ft(30, 3)).toThrow('use the coefficient law');
    expect(() => supplyHandMethodPsiPer100Ft(99)).toThrow('flowGpm is 99');
  });
});
