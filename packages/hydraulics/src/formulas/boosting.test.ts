import { describe, expect, test } from 'vitest';
import { effectiveCoefficient, hoseFlowGpm, hoseFrictionPsi } from './hose-friction.ts';
import { availableFlowGpm, supplyCurvePsi } from './hydrant-flow-test.ts';
import {
  boostDecisionRows,
  boostedSupplyRows,
  boostedSupplyRows2,
  boostedSupplyRows3,
  dualFeedBoostRows,
  forwardLayRows,
} from './published/boosting.ts';
import { misses, titled } from './published/published-row.ts';

// Formulas put together as a boosted lay puts them, against field tests and a worked case.

const percentGain = (from: number, to: number) => (100 * (to - from)) / from;

describe('forward lay without a booster', () => {
  test.each(titled(forwardLayRows))('%s', (_, row) => {
    const { c, flowGpm, lengthFt } = row.given;
    expect(misses(row, { hoseLossPsi: hoseFrictionPsi(c, flowGpm, lengthFt) })).toEqual([]);
  });
});

describe('field tests of boosting', () => {
  test.each(titled(boostedSupplyRows))('%s', (_, row) => {
    const { lengthFt, c, unboostedGpm, boostedGpm, maxPdpPsi } = row.given;
    const textbookFlBoostedPsi = hoseFrictionPsi(c, boostedGpm, lengthFt);
    const got = {
      gainGpm: boostedGpm - unboostedGpm,
      ratio: boostedGpm / unboostedGpm,
      textbookFlUnboostedPsi: hoseFrictionPsi(c, unboostedGpm, lengthFt),
      textbookFlBoostedPsi,
      maxEffectiveC: effectiveCoefficient(maxPdpPsi, boostedGpm, lengthFt),
      fitsTextbook: textbookFlBoostedPsi <= maxPdpPsi,
    };
    expect(misses(row, got)).toEqual([]);
  });

  test.each(titled(boostedSupplyRows2))('%s', (_, row) => {
    const { unboostedGpm, boostedGpm } = row.given;
    const got = {
      gainGpm: boostedGpm - unboostedGpm,
      percentGain: percentGain(unboostedGpm, boostedGpm),
    };
    expect(misses(row, got)).toEqual([]);
  });

  test.each(titled(boostedSupplyRows3))('%s', (_, row) => {
    const { noValveGpm, valveAGpm, boostedNoValveGpm, boostedValveAGpm, boostedValveBGpm } =
      row.given;
    const got = {
      valveAUnboostedLossPercent: -percentGain(noValveGpm, valveAGpm),
      valveABoostedLossPercent: -percentGain(boostedNoValveGpm, boostedValveAGpm),
      valveBBoostedLossPercent: -percentGain(boostedNoValveGpm, boostedValveBGpm),
    };
    expect(misses(row, got)).toEqual([]);
  });

  test.each(titled(dualFeedBoostRows))('%s', (_, row) => {
    const { staticPsi, singleBoostedGpm, dualBoostedGpm, residualSinglePsi } = row.given;
    const single = { staticPsi, residualPsi: residualSinglePsi, testGpm: singleBoostedGpm };
    const got = {
      gainGpm: dualBoostedGpm - singleBoostedGpm,
      residualPredictedFromSinglePsi: supplyCurvePsi(single, dualBoostedGpm),
    };
    expect(misses(row, got)).toEqual([]);
  });
});

describe('whether to boost', () => {
  test.each(titled(boostDecisionRows))('%s', (_, row) => {
    const { staticPsi, residualPsi, testFlowGpm, c, lengthFt, valveKPsiPer100gpm2 } = row.given;
    const { minAttackIntakePsi, maxPdpPsi, mainFloorPsi } = row.given;
    const flowTest = { staticPsi, residualPsi, testGpm: testFlowGpm };
    const intakePsi = (gpm: number) =>
      supplyCurvePsi(flowTest, gpm) -
      valveKPsiPer100gpm2 * (gpm / 100) ** 2 -
      hoseFrictionPsi(c, gpm, lengthFt);
    let low = 0;
    let high = 3000;
    for (let step = 0; step < 60; step++) {
      const middle = (low + high) / 2;
      if (intakePsi(middle) >= minAttackIntakePsi) low = middle;
      else high = middle;
    }
    const got = {
      unboostedGpm: low,
      hydrantLimitGpm: availableFlowGpm(flowTest, mainFloorPsi),
      hoseLimitGpm: hoseFlowGpm(c, maxPdpPsi - minAttackIntakePsi, lengthFt),
    };
    expect(misses(row, got)).toEqual([]);
  });
});
