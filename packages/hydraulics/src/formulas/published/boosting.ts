import type { PublishedRow } from './published-row.ts';
import { SOURCES } from './sources.ts';

// Boosting at the hydrant, and what a valve costs. Values from outside the project, each with its source, basis and tolerance.

export const hydrantValveLossRows = [
  {
    given: { flowGpm: 1000, hydrantResidualPsi: 106, pumpInletPsi: 80, hoseLossPsi: 3 },
    expected: { valveLossPsi: 23, kPsiPer100gpm2: 0.23 },
    within: { valveLossPsi: 0.01, kPsiPer100gpm2: 0.001 },
    source: SOURCES.valveFlowTest,
    basis: 'published',
    note: 'Hydrant mode.',
  },
] satisfies PublishedRow<object, object>[];

export const boostedSupplyRows = [
  {
    given: {
      lengthFt: 500,
      hoseIn: 5,
      c: 0.08,
      unboostedGpm: 1050,
      boostedGpm: 2225,
      maxPdpPsi: 185,
    },
    expected: {
      gainGpm: 1175,
      ratio: 2.119,
      textbookFlUnboostedPsi: 44.1,
      textbookFlBoostedPsi: 198.0,
      maxEffectiveC: 0.0747,
      fitsTextbook: false,
    },
    within: {
      gainGpm: 1,
      ratio: 0.002,
      textbookFlUnboostedPsi: 0.1,
      textbookFlBoostedPsi: 0.3,
      maxEffectiveC: 0.0005,
    },
    source: SOURCES.relayField4,
    basis: 'field test',
    note: 'At 2,225 gpm the textbook loss exceeds the 185-psi limit, so real C <= 0.075 (<=0.067 with 20 psi intake).',
  },
] satisfies PublishedRow<object, object>[];

export const boostedSupplyRows2 = [
  {
    given: { lengthFt: 300, hoseIn: 5, staticPsi: 50, unboostedGpm: 485, boostedGpm: 670 },
    expected: { gainGpm: 185, percentGain: 38.1 },
    within: { gainGpm: 1, percentGain: 0.2 },
    source: SOURCES.relayField5,
    basis: 'field test',
    note: 'Poor hydrant: boosting cannot create water the main lacks.',
  },
] satisfies PublishedRow<object, object>[];

export const boostedSupplyRows3 = [
  {
    given: {
      lengthFt: 500,
      noValveGpm: 797,
      valveAGpm: 765,
      valveBGpm: 775,
      boostedNoValveGpm: 1440,
      boostedValveAGpm: 1090,
      boostedValveBGpm: 1128,
    },
    expected: {
      valveAUnboostedLossPercent: 4.0,
      valveABoostedLossPercent: 24.3,
      valveBBoostedLossPercent: 21.7,
    },
    within: {
      valveAUnboostedLossPercent: 0.1,
      valveABoostedLossPercent: 0.1,
      valveBBoostedLossPercent: 0.1,
    },
    source: SOURCES.relayField9,
    basis: 'field test',
  },
] satisfies PublishedRow<object, object>[];

export const dualFeedBoostRows = [
  {
    given: {
      singleBoostedGpm: 1305,
      dualBoostedGpm: 2371,
      residualSinglePsi: 70,
      residualDualPsi: 50,
      staticPsi: 100,
    },
    expected: { gainGpm: 1066, residualPredictedFromSinglePsi: 9.3 },
    within: { gainGpm: 1, residualPredictedFromSinglePsi: 0.5 },
    source: SOURCES.relayField11,
    basis: 'field test',
    note: '1.85-power extrapolation from the single-line residual predicts 9 psi where 50 was measured: the hydrant outlet/gauge point matters, so do not project a hydrant curve from readings taken on the flowing outlet.',
  },
] satisfies PublishedRow<object, object>[];

export const forwardLayRows = [
  {
    given: { flowGpm: 1000, hoseIn: 4, lengthFt: 300, c: 0.2 },
    expected: { hoseLossPsi: 60 },
    within: { hoseLossPsi: 0.1 },
    source: SOURCES.flowPriorities,
    basis: 'derived',
    note: 'Explains near-cavitation reported at about 1,000 gpm.',
  },
] satisfies PublishedRow<object, object>[];

export const boostDecisionRows = [
  {
    given: {
      staticPsi: 80,
      residualPsi: 60,
      testFlowGpm: 1200,
      hoseIn: 5,
      c: 0.08,
      lengthFt: 600,
      valveKPsiPer100gpm2: 0.22,
      minAttackIntakePsi: 20,
      maxPdpPsi: 185,
      ratedPumpGpm: 1500,
      mainFloorPsi: 20,
    },
    expected: { unboostedGpm: 842, hydrantLimitGpm: 2172, hoseLimitGpm: 1854 },
    within: { unboostedGpm: 2, hydrantLimitGpm: 2, hoseLimitGpm: 2 },
    source: SOURCES.supplyAnalysis1,
    basis: 'derived',
    note: "Synthetic problem; formulas and constants published, valve K from the valve test. Boost-mode feed loss taken as zero. The pump's own curve is checked separately.",
  },
] satisfies PublishedRow<object, object>[];
