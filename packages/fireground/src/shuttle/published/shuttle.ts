import type { PublishedRow, Source } from '@plugside/hydraulics';

// Tender shuttles. Values from outside the project, each with its source, basis and tolerance.

const lesson12: Source = {
  title: 'Water Shuttle Operations lesson p12, Firehouse',
  url: 'http://www.firehouse.com/article/10515648/water-shuttle-operations?page=12',
};
const lesson13: Source = {
  title: 'Water Shuttle Operations lesson p13, Firehouse',
  url: 'http://www.firehouse.com/article/10515648/water-shuttle-operations?page=13',
};
const examAnswers: Source = {
  title: 'Water shuttle exam answers',
  url: 'https://www.docsity.com/en/docs/cdc-mws-water-shuttle-opsdocx/14368545/',
};

export const tenderRateRows = [
  {
    given: { tankGal: 5000, roundTripMin: 10 },
    expected: { gpm: 450 },
    within: { gpm: 0.1 },
    source: examAnswers,
    basis: 'published',
  },
  {
    given: { tankGal: 3000, roundTripMin: 12 },
    expected: { gpm: 225 },
    within: { gpm: 0.1 },
    source: lesson12,
    basis: 'published',
  },
  {
    given: { tankGal: 2500, roundTripMin: 14.75 },
    expected: { gpm: 153 },
    within: { gpm: 0.5 },
    source: lesson13,
    basis: 'published',
  },
] satisfies PublishedRow<object, object>[];

/** Handling of 9 min in all; fill and dump as given keep to it. */
export const wholeRoundRows = [
  {
    given: { oneWayMi: 1.5, startCounted: 'once' as const, tankGal: 2500, handlingMin: 9 },
    expected: { travelMin: 5.75, roundTripMin: 14.75, gpm: 153 },
    within: { travelMin: 0.001, roundTripMin: 0.001, gpm: 0.5 },
    source: lesson13,
    basis: 'published',
    note: 'The lesson’s 3-mile route, 0.65 min counted once.',
  },
  {
    given: { oneWayMi: 3, startCounted: 'each way' as const, tankGal: 2500, handlingMin: 9 },
    expected: { travelMin: 11.5, roundTripMin: 20.5, gpm: 109.8 },
    within: { travelMin: 0.001, roundTripMin: 0.001, gpm: 0.1 },
    source: { title: 'NFPA 1142 annex formulas (from memory)' },
    basis: 'derived',
    note: '3 miles each way, 0.65 min on each.',
  },
] satisfies PublishedRow<object, object>[];
