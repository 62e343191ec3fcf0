import { describe, expect, test } from 'vitest';
import {
  applianceFlowGpm,
  applianceLossPsi,
  lossFactor,
  outletLoss,
  ruledApplianceLossPsi,
} from './appliance-loss.ts';
import { hydrantValveLossRows } from './published/boosting.ts';
import { applianceLossRows, applianceLossRows2 } from './published/discharge-pressure.ts';
import { misses, titled } from './published/published-row.ts';

describe('"x psi at y gpm"', () => {
  test.each(titled(hydrantValveLossRows))('%s', (_, row) => {
    const { flowGpm, hydrantResidualPsi, pumpInletPsi, hoseLossPsi } = row.given;
    const valveLossPsi = hydrantResidualPsi - pumpInletPsi - hoseLossPsi;
    const kPsiPer100gpm2 = lossFactor({ lossPsi: valveLossPsi, atGpm: flowGpm }) * 100 ** 2;
    expect(misses(row, { valveLossPsi, kPsiPer100gpm2 })).toEqual([]);
  });

  test('the same valve at 1,300 gpm: 36 psi printed, 39 by the square of flow (published: a four-way hydrant valve maker’s flow test)', () => {
    const loss = applianceLossPsi({ lossPsi: 23, atGpm: 1000 }, 1300);
    expect(Math.abs(loss - 36)).toBeLessThanOrEqual(3);
  });

  test('the flow for a loss turns the loss for a flow round', () => {
    const loss = { lossPsi: 8, atGpm: 1000 };
    expect(applianceFlowGpm(loss, applianceLossPsi(loss, 1777))).toBeCloseTo(1777, 9);
  });

  test('an outlet loses its own velocity pressure: 40 psi at 1,061 gpm in a rounded 2½ in one (published: engineers’ forum quoting NFPA 291)', () => {
    expect(Math.abs(outletLoss(2.5, 0.9, 1061).lossPsi - 40)).toBeLessThanOrEqual(0.1);
  });
});

describe('departments’ rules', () => {
  test.each(titled(applianceLossRows))('%s', (_, row) => {
    const { appliances } = row.given;
    const lossPsi = appliances * ruledApplianceLossPsi('wye', 100, 'wildland5');
    expect(misses(row, { lossPsi })).toEqual([]);
  });

  test.each(titled(applianceLossRows2))('%s', (_, row) => {
    const lossPsi = ruledApplianceLossPsi('wye', row.given.flowGpm);
    expect(misses(row, { lossPsi })).toEqual([]);
  });

  test.each([
    ['from350', 'wye', 350, 10, 'Pump Ops ch 7 study cards'],
    ['from350', 'manifold', 900, 10, 'Pump Ops ch 7 study cards'],
    ['always10', 'siamese', 100, 10, 'Engineer’s Test 2014 study cards'],
    ['stateExam', 'wye', 100, 25, 'Florida pump-operations exam answers'],
    ['stateExam', 'siamese', 100, 10, 'Florida pump-operations exam answers'],
    ['from350', 'master stream', 100, 25, 'Pump Ops ch 7 study cards'],
    ['always10', 'standpipe', 100, 25, 'Engineer’s Test 2014 study cards'],
    ['stateExam', 'aerial waterway', 1000, 25, 'Florida pump-operations exam answers'],
  ] as const)(
    '%s: %s at %i gpm loses %i psi (published: %s)',
    (rule, appliance, flow, psi, _source) => {
      expect(ruledApplianceLossPsi(appliance, flow, rule)).toBe(psi);
    },
  );
});

test('bad input refuses', () => {
  expect(() => lossFactor({ lossPsi: 5, atGpm: 0 })).toThrow('A loss factor needs a loss measured');
  expect(() => applianceFlowGpm({ lossPsi: 0, atGpm: 100 }, 5)).toThrow('passes any flow');
  expect(() => ruledApplianceLossPsi('wye', -1)).toThrow('totalGpm is -1');
});
