import { describe, expect, test } from 'vitest';
import { QuantityError } from '../quantity-error.ts';
import { misses, titled } from './published/published-row.ts';
import {
  netPumpPressureDraftRows,
  netPumpPressureRows,
  pumpRatingRows,
} from './published/pumps.ts';
import { relayPumpSelectionRows } from './published/relay.ts';
import {
  type CapabilityPoints,
  capabilityAtSpeed,
  capabilityFlowGpm,
  capabilityPsi,
  defaultCapability,
  draftNetPumpPressurePsi,
  netPumpPressurePsi,
  SERVICE_TEST_STAGES,
  smallestRatingGpm,
  waterHorsepower,
} from './pump.ts';

describe('rating', () => {
  test.each(titled(pumpRatingRows))('%s', (_, row) => {
    const points = defaultCapability(row.given.ratedGpm);
    const got = {
      gpmAt200Psi: capabilityFlowGpm(points, 200),
      gpmAt250Psi: capabilityFlowGpm(points, 250),
    };
    expect(misses(row, got)).toEqual([]);
  });

  test('1,000 gpm: 700 at 200 psi and 500 at 250 (published: pump maker manual, performance test table)', () => {
    const points = defaultCapability(1000);
    expect(capabilityFlowGpm(points, 150)).toBeCloseTo(1000, 9);
    expect(capabilityFlowGpm(points, 200)).toBeCloseTo(700, 9);
    expect(capabilityFlowGpm(points, 250)).toBeCloseTo(500, 9);
  });

  test.each(titled(relayPumpSelectionRows))('%s', (_, row) => {
    const { flowGpm, minRatingGpm } = row.given;
    const capacityAt200PsiGpm = capabilityFlowGpm(defaultCapability(minRatingGpm), 200);
    const got = { capacityAt200PsiGpm, sufficient: capacityAt200PsiGpm >= flowGpm };
    expect(misses(row, got)).toEqual([]);
  });

  test.each([
    [250, 750],
    [500, 750],
    [750, 1250],
    [1000, 1500],
  ])(
    '%i gpm at 200 psi needs a %i-gpm pump (published: Relay Pumping Operations lesson p3, Firehouse)',
    (flow, rating) => {
      expect(smallestRatingGpm(flow, 200)).toBe(rating);
    },
  );

  test('1,250 gpm needs a 1,750-gpm pump, at the 185 psi of large hose with 20 at the intake (published: Relay Pumping Operations lesson p3, Firehouse)', () => {
    expect(capabilityFlowGpm(defaultCapability(1750), 185 - 20)).toBeGreaterThanOrEqual(1250);
    expect(capabilityFlowGpm(defaultCapability(1250), 185 - 20)).toBeLessThan(1250);
  });

  test('says that no pump is large enough', () => {
    expect(smallestRatingGpm(9000, 150)).toBeUndefined();
  });

  test('the service test stays within the capability, but for the 165 psi stage (from memory: NFPA 1911)', () => {
    const points = defaultCapability(1500);
    const beyond = SERVICE_TEST_STAGES.filter(
      (stage) => stage.netPsi > capabilityPsi(points, stage.ratedShare * 1500) + 1e-9,
    );
    expect(beyond.map((stage) => stage.netPsi)).toEqual([165]);
  });

  test('past the rating water horsepower stays what it is there', () => {
    const rated = waterHorsepower(1500, 150);
    for (const [flowGpm, netPsi] of defaultCapability(1500).slice(4)) {
      expect(waterHorsepower(flowGpm, netPsi)).toBeCloseTo(rated, 9);
    }
  });
});

describe('capability', () => {
  const points: CapabilityPoints = [
    [0, 300],
    [500, 200],
    [1000, 200],
    [1200, 100],
  ];

  test('is straight between points and nothing past the wall', () => {
    expect(capabilityPsi(points, 0)).toBe(300);
    expect(capabilityPsi(points, 250)).toBe(250);
    expect(capabilityPsi(points, 1100)).toBe(150);
    expect(capabilityPsi(points, 1200)).toBe(100);
    expect(capabilityPsi(points, 1200.1)).toBe(0);
  });

  test('turned round gives the greatest flow, also on a flat stretch', () => {
    expect(capabilityFlowGpm(points, 200)).toBe(1000);
    expect(capabilityFlowGpm(points, 250)).toBe(250);
    expect(capabilityFlowGpm(points, 50)).toBe(1200);
    expect(capabilityFlowGpm(points, 301)).toBe(0);
  });

  test('scales by the affinity laws: half speed, half flow, quarter pressure', () => {
    expect(capabilityAtSpeed(points, 0.5)).toEqual([
      [0, 75],
      [250, 50],
      [500, 50],
      [600, 25],
    ]);
  });

  test.each([
    [[[100, 200]], 'two points or more, the first at 0 gpm'],
    [
      [
        [100, 200],
        [200, 100],
      ],
      'Add the shut-off pressure',
    ],
    [
      [
        [0, 200],
        [0, 100],
      ],
      'flow rising from point to point',
    ],
    [
      [
        [0, 200],
        [100, 210],
      ],
      'net pressure never rising',
    ],
    [
      [
        [0, 200],
        [100, Number.NaN],
      ],
      'capability[1] net pressure is NaN',
    ],
  ] as [CapabilityPoints, string][])('%j refuses', (bad, message) => {
    expect(() => capabilityPsi(bad, 50)).toThrow(message);
  });

  test('refuses a speed above 1.2 and at 0', () => {
    expect(() => capabilityAtSpeed(points, 1.3)).toThrow(QuantityError);
    expect(() => capabilityAtSpeed(points, 0)).toThrow('speedFraction is 0');
  });
});

describe('net pump pressure', () => {
  test.each(titled(netPumpPressureRows))('%s', (_, row) => {
    const { pdpPsi, intakePsi } = row.given;
    expect(misses(row, { netPsi: netPumpPressurePsi(pdpPsi, intakePsi) })).toEqual([]);
  });

  test.each(titled(netPumpPressureDraftRows))('%s', (_, row) => {
    const { pdpPsi, liftFt, suctionLossFt } = row.given;
    const netPsi = draftNetPumpPressurePsi(pdpPsi, liftFt, suctionLossFt);
    expect(misses(row, { correctionPsi: netPsi - pdpPsi, netPsi })).toEqual([]);
  });
});
