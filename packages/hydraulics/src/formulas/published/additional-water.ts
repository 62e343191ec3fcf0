import type { PublishedRow } from './published-row.ts';
import { SOURCES } from './sources.ts';

// Rules for more water from a hydrant. Values from outside the project, each with its source, basis and tolerance.

export const additionalWaterPercentRows = [
  {
    given: { staticPsi: 80, residualPsi: 60, flowGpm: 500 },
    expected: { dropPercent: 25, extraMultiples: 1, extraGpm: 500 },
    within: { dropPercent: 0.01, extraMultiples: 0.01, extraGpm: 1 },
    source: SOURCES.trackingSupply,
    basis: 'published',
    note: 'Projection to 20 psi gives only 0.81 x 500 = 405 extra gpm: rule is optimistic here.',
  },
] satisfies PublishedRow<object, object>[];

export const additionalWaterPercentRows2 = [
  {
    given: { staticPsi: 70, residualPsi: 60, flowGpm: 400 },
    expected: { dropPercent: 14.29, extraMultiples: 2 },
    within: { dropPercent: 0.01, extraMultiples: 0.01 },
    source: SOURCES.engineersTest,
    basis: 'derived',
  },
] satisfies PublishedRow<object, object>[];

export const additionalWaterFirstDigitRows = [
  {
    given: { staticPsi: 65, residualPsi: 59, flowGpm: 250 },
    expected: { dropPsi: 6, extraMultiples: 3 },
    within: { dropPsi: 0.01, extraMultiples: 0.01 },
    source: SOURCES.trackingSupply,
    basis: 'derived',
    note: 'Drop <= first digit of static (6) -> 3x; percent method: 9.2% -> 3x too.',
  },
] satisfies PublishedRow<object, object>[];

export const additionalWaterSquaringRows = [
  {
    given: { staticPsi: 70, oneLineDropPsi: 5, targetResidualPsi: 20 },
    expected: { drop3LinesPsi: 45, maxLines: 3 },
    within: { drop3LinesPsi: 0.01, maxLines: 0.01 },
    source: SOURCES.ifstaTables,
    basis: 'derived',
    note: 'Squaring rule from memory.',
  },
] satisfies PublishedRow<object, object>[];
