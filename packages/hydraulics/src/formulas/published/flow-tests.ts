import type { PublishedRow } from './published-row.ts';
import { SOURCES } from './sources.ts';

// Hydrant flow tests. Values from outside the project, each with its source, basis and tolerance.

export const hydrantOutletFlowRows = [
  {
    given: { outletIn: 2.5, coefficient: 0.8, pitotPsi: 28, k: 29.83 },
    expected: { flowGpm: 789 },
    within: { flowGpm: 1 },
    source: SOURCES.supplyAnalysis15,
    basis: 'published',
  },
  {
    given: { outletIn: 2.5, coefficient: 0.9, pitotPsi: 40, k: 29.83 },
    expected: { flowGpm: 1061 },
    within: { flowGpm: 1 },
    source: SOURCES.flowTestForum,
    basis: 'published',
  },
  {
    given: { outletIn: 2.5, coefficient: 1.0, pitotPsi: 40, k: 29.83 },
    expected: { flowGpm: 1178 },
    within: { flowGpm: 2 },
    source: SOURCES.flowTestProcedure,
    basis: 'corrected',
    note: 'The article says the coefficient is 0.90 but its 1,178 gpm needs 1.0; at 0.90 the answer is 1,061 (as in the forum source).',
  },
] satisfies PublishedRow<object, object>[];

export const hydrantTestFullRows = [
  {
    given: {
      staticPsi: 86,
      residualPsi: 42,
      pitotPsi: 28,
      outletIn: 2.5,
      coefficient: 0.8,
      targetPsi: 20,
    },
    expected: { flowGpm: 789, availableGpm: 980 },
    within: { flowGpm: 1, availableGpm: 5 },
    source: SOURCES.supplyAnalysis16,
    basis: 'published',
    note: 'Published answer read from N1.85 paper.',
  },
] satisfies PublishedRow<object, object>[];

export const hydrantTestFullRows2 = [
  {
    given: { staticPsi: 90, residualPsi: 85, testFlowGpm: 1140, targetPsi: 20 },
    expected: { availableGpm: 4741, dropPercent: 5.56, dropMeets10Percent: false },
    within: { availableGpm: 5, dropPercent: 0.02 },
    source: SOURCES.waterlineAnalysis,
    basis: 'derived',
    note: 'Real test data; drop under 10% so the projection is unreliable.',
  },
] satisfies PublishedRow<object, object>[];

export const supplyCurveRows = [
  {
    given: { staticPsi: 86, residualPsi: 42, testFlowGpm: 789, flowGpm: 500 },
    expected: { pressurePsi: 67 },
    within: { pressurePsi: 1 },
    source: SOURCES.supplyAnalysis16,
    basis: 'published',
  },
] satisfies PublishedRow<object, object>[];

export const supplyAdequacyRows = [
  {
    given: { staticPsi: 86, residualPsi: 42, testFlowGpm: 789, demandGpm: 760, demandPsi: 36 },
    expected: { adequate: true },
    within: {},
    source: SOURCES.supplyAnalysis16,
    basis: 'published',
    note: 'Slide says demand at 760 but reads the curve at 750.',
  },
] satisfies PublishedRow<object, object>[];

export const hydrantAvailableRows = [
  {
    given: { staticPsi: 80, residualPsi: 60, testFlowGpm: 1178, targetPsi: 20 },
    expected: { availableGpm: 2132 },
    within: { availableGpm: 2 },
    source: SOURCES.flowTestProcedure,
    basis: 'corrected',
    note: 'The article prints about 2,000; the formula it states gives 2,132 (used as expected).',
  },
] satisfies PublishedRow<object, object>[];

export const hydrantClassRows = [
  {
    given: { availableGpm: 1499 },
    expected: { nfpaClass: 'A', color: 'green' },
    within: {},
    source: SOURCES.ruralHydrant,
    basis: 'published',
    note: 'Boundaries: 1,500 AA light blue, 1,000 A green, 500 B orange, below C red.',
  },
  {
    given: { availableGpm: 982 },
    expected: { nfpaClass: 'B', color: 'orange' },
    within: {},
    source: SOURCES.supplyAnalysis16,
    basis: 'derived',
  },
] satisfies PublishedRow<object, object>[];

export const hydrantMultiPointRows = [
  {
    given: {
      staticPsi: 68,
      points: [
        [50, 223],
        [39, 416],
        [13, 538],
      ],
      targetPsi: 20,
    },
    expected: { availableFrom1Gpm: 379, availableFrom2Gpm: 546, availableFrom3Gpm: 500 },
    within: { availableFrom1Gpm: 1, availableFrom2Gpm: 1, availableFrom3Gpm: 1 },
    source: SOURCES.flowTestSelection,
    basis: 'derived',
    note: 'Real test. Points disagree by 44%: show the residual point used, and interpolate between points rather than project from the smallest.',
  },
] satisfies PublishedRow<object, object>[];
