import type { PublishedRow } from './published-row.ts';
import { SOURCES } from './sources.ts';

// Friction in hose. Values from outside the project, each with its source, basis and tolerance.

export const frictionLossRows = [
  {
    given: { c: 2, flowGpm: 200, lengthFt: 100 },
    expected: { flPsi: 8 },
    within: { flPsi: 0.05 },
    source: SOURCES.hoseLays,
    basis: 'published',
  },
  {
    given: { c: 2, flowGpm: 100, lengthFt: 300 },
    expected: { flPsi: 6 },
    within: { flPsi: 0.05 },
    source: SOURCES.hoseLays,
    basis: 'published',
    note: 'The slide drops a factor in an intermediate line but ends at 6 psi.',
  },
  {
    given: { c: 10, flowGpm: 150, lengthFt: 150 },
    expected: { flPsi: 34 },
    within: { flPsi: 0.5 },
    source: SOURCES.hoseLays,
    basis: 'published',
    note: 'C=10 for 1-3/4 hose, not the textbook 15.5 (which gives 52.3).',
  },
  {
    given: { c: 15.5, flowGpm: 100, lengthFt: 100 },
    expected: { flPsi: 15.5 },
    within: { flPsi: 0.05 },
    source: SOURCES.stateExam,
    basis: 'published',
  },
  {
    given: { c: 15.5, flowGpm: 150, lengthFt: 200 },
    expected: { flPsi: 69.75 },
    within: { flPsi: 0.05 },
    source: SOURCES.stateExam,
    basis: 'published',
  },
  {
    given: { c: 2, flowGpm: 500, lengthFt: 100 },
    expected: { flPsi: 50 },
    within: { flPsi: 0.55 },
    source: SOURCES.whichSupplyLine,
    basis: 'published',
    note: 'Article rounds to whole psi.',
  },
  {
    given: { c: 2, flowGpm: 750, lengthFt: 100 },
    expected: { flPsi: 113 },
    within: { flPsi: 0.55 },
    source: SOURCES.whichSupplyLine,
    basis: 'published',
    note: 'Article rounds to whole psi.',
  },
  {
    given: { c: 2, flowGpm: 1000, lengthFt: 100 },
    expected: { flPsi: 200 },
    within: { flPsi: 0.55 },
    source: SOURCES.whichSupplyLine,
    basis: 'published',
    note: 'Article rounds to whole psi.',
  },
  {
    given: { c: 0.8, flowGpm: 750, lengthFt: 100 },
    expected: { flPsi: 45 },
    within: { flPsi: 0.55 },
    source: SOURCES.whichSupplyLine,
    basis: 'published',
    note: 'Article rounds to whole psi.',
  },
  {
    given: { c: 0.8, flowGpm: 1000, lengthFt: 100 },
    expected: { flPsi: 80 },
    within: { flPsi: 0.55 },
    source: SOURCES.whichSupplyLine,
    basis: 'published',
    note: 'Article rounds to whole psi.',
  },
  {
    given: { c: 0.2, flowGpm: 500, lengthFt: 100 },
    expected: { flPsi: 5 },
    within: { flPsi: 0.55 },
    source: SOURCES.whichSupplyLine,
    basis: 'published',
    note: 'Article rounds to whole psi.',
  },
  {
    given: { c: 0.2, flowGpm: 1000, lengthFt: 100 },
    expected: { flPsi: 20 },
    within: { flPsi: 0.55 },
    source: SOURCES.whichSupplyLine,
    basis: 'published',
    note: 'Article rounds to whole psi.',
  },
  {
    given: { c: 0.08, flowGpm: 500, lengthFt: 100 },
    expected: { flPsi: 2 },
    within: { flPsi: 0.55 },
    source: SOURCES.whichSupplyLine,
    basis: 'published',
    note: 'Article rounds to whole psi.',
  },
  {
    given: { c: 0.08, flowGpm: 750, lengthFt: 100 },
    expected: { flPsi: 5 },
    within: { flPsi: 0.55 },
    source: SOURCES.whichSupplyLine,
    basis: 'published',
    note: 'Article rounds to whole psi.',
  },
  {
    given: { c: 9.6, flowGpm: 150, lengthFt: 200 },
    expected: { flPsi: 43.2 },
    within: { flPsi: 0.05 },
    source: SOURCES.syntheticHose,
    basis: 'derived',
    note: "Maker's C; the textbook 15.5 gives 69.75.",
  },
] satisfies PublishedRow<object, object>[];

export const effectiveCRows = [
  {
    given: { flowGpm: 1000, flPsiPer100ft: 6 },
    expected: { effectiveC: 0.06 },
    within: { effectiveC: 0.001 },
    source: SOURCES.largeDiameterHose,
    basis: 'derived',
    note: "Article's 5-in hose loss; below the textbook 0.08.",
  },
  {
    given: { flowGpm: 1500, flPsiPer100ft: 15 },
    expected: { effectiveC: 0.0667 },
    within: { effectiveC: 0.001 },
    source: SOURCES.largeDiameterHose,
    basis: 'derived',
  },
] satisfies PublishedRow<object, object>[];

export const parallelLinesRows = [
  {
    given: { lineC: [2, 2] },
    expected: { equivalentC: 0.5 },
    within: { equivalentC: 0.006 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Table value from memory; agreement shows the 1/sqrt(C) sum rule.',
  },
  {
    given: { lineC: [0.8, 0.8] },
    expected: { equivalentC: 0.2 },
    within: { equivalentC: 0.006 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Table value from memory; agreement shows the 1/sqrt(C) sum rule.',
  },
  {
    given: { lineC: [0.8, 2] },
    expected: { equivalentC: 0.3 },
    within: { equivalentC: 0.006 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Table value from memory; agreement shows the 1/sqrt(C) sum rule.',
  },
  {
    given: { lineC: [0.677, 2] },
    expected: { equivalentC: 0.27 },
    within: { equivalentC: 0.006 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Table value from memory; agreement shows the 1/sqrt(C) sum rule.',
  },
  {
    given: { lineC: [0.8, 0.8, 2] },
    expected: { equivalentC: 0.12 },
    within: { equivalentC: 0.006 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Table value from memory; agreement shows the 1/sqrt(C) sum rule.',
  },
] satisfies PublishedRow<object, object>[];

export const frictionLossMetricRows = [
  {
    given: { cUs: 0.2 },
    expected: { cMetricKpaHlpmHm: 0.3157 },
    within: { cMetricKpaHlpmHm: 0.001 },
    source: SOURCES.ifstaTables,
    basis: 'derived',
    note: 'Exact conversion factor 1.5786; the printed metric table has 0.305.',
  },
] satisfies PublishedRow<object, object>[];

export const handMethodPdpRows = [
  {
    given: { flowGpm: 250, n: 3, lengthFt: 200, nozzlePsi: 125 },
    expected: { pdpPsi: 255 },
    within: { pdpPsi: 0.01 },
    source: SOURCES.handMethodCards,
    basis: 'published',
    note: 'C=15.5 gives 318.8: hand rule under-reads at high flow.',
  },
] satisfies PublishedRow<object, object>[];
