import type { PublishedRow } from './published-row.ts';
import { SOURCES } from './sources.ts';

// Nozzle flow and reaction. Values from outside the project, each with its source, basis and tolerance.

export const smoothBoreRows = [
  {
    given: { tipIn: 0.875, nozzlePsi: 40 },
    expected: { flowGpm: 144 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 0.875, nozzlePsi: 60 },
    expected: { flowGpm: 176 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 0.875, nozzlePsi: 70 },
    expected: { flowGpm: 190 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 0.875, nozzlePsi: 80 },
    expected: { flowGpm: 203 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 0.9375, nozzlePsi: 80 },
    expected: { flowGpm: 234 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 1.0, nozzlePsi: 40 },
    expected: { flowGpm: 188 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 1.0, nozzlePsi: 50 },
    expected: { flowGpm: 210 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 1.125, nozzlePsi: 50 },
    expected: { flowGpm: 266 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 1.125, nozzlePsi: 80 },
    expected: { flowGpm: 336 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 1.25, nozzlePsi: 50 },
    expected: { flowGpm: 328 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 1.375, nozzlePsi: 50 },
    expected: { flowGpm: 397 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
  {
    given: { tipIn: 1.375, nozzlePsi: 80 },
    expected: { flowGpm: 502 },
    within: { flowGpm: 1.5 },
    source: SOURCES.tipFlowTable,
    basis: 'published',
  },
] satisfies PublishedRow<object, object>[];

export const smoothBoreRows2 = [
  {
    given: { tipIn: 1.0, nozzlePsi: 50, k: 29.7 },
    expected: { flowGpm: 210.01 },
    within: { flowGpm: 0.02 },
    source: SOURCES.nozzleCards,
    basis: 'published',
  },
] satisfies PublishedRow<object, object>[];

export const smoothBoreMetricRows = [
  {
    given: { tipMm: 25.4, nozzleBar: 3.44738, k: 0.667 },
    expected: { flowLpm: 799, flowGpm: 211 },
    within: { flowLpm: 1, flowGpm: 0.6 },
    source: SOURCES.masterStreamManual,
    basis: 'derived',
    note: 'Metric constant from the manual; result should match the 1-in tip at 50 psi.',
  },
] satisfies PublishedRow<object, object>[];

export const nozzleReactionRows = [
  {
    given: { flowGpm: 200, nozzlePsi: 100, type: 'fog' },
    expected: { reactionLb: 100 },
    within: { reactionLb: 1.1 },
    source: SOURCES.reactionInYourHead,
    basis: 'published',
    note: 'Article rule: half the gpm at 100 psi; 0.0505 form gives 101.',
  },
] satisfies PublishedRow<object, object>[];

export const nozzleReactionRows2 = [
  {
    given: { tipIn: 1.125, nozzlePsi: 50 },
    expected: { reactionLb: 99.35 },
    within: { reactionLb: 0.1 },
    source: SOURCES.formulaCards,
    basis: 'derived',
    note: 'Field constant 1.5 gives 94.9.',
  },
] satisfies PublishedRow<object, object>[];
