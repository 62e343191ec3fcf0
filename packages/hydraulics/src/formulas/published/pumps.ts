import type { PublishedRow } from './published-row.ts';
import { SOURCES } from './sources.ts';

// Pumps, net pressure and draft. Values from outside the project, each with its source, basis and tolerance.

export const pumpRatingRows = [
  {
    given: { ratedGpm: 750 },
    expected: { gpmAt200Psi: 525, gpmAt250Psi: 375 },
    within: { gpmAt200Psi: 0.5, gpmAt250Psi: 0.5 },
    source: SOURCES.pumpTestTable,
    basis: 'published',
  },
] satisfies PublishedRow<object, object>[];

export const netPumpPressureRows = [
  {
    given: { pdpPsi: 170, intakePsi: 45 },
    expected: { netPsi: 125 },
    within: { netPsi: 0.01 },
    source: SOURCES.pumpCards,
    basis: 'derived',
  },
] satisfies PublishedRow<object, object>[];

export const netPumpPressureDraftRows = [
  {
    given: { pdpPsi: 150, liftFt: 10, suctionLossFt: 6 },
    expected: { correctionPsi: 6.96, netPsi: 156.96 },
    within: { correctionPsi: 0.01, netPsi: 0.01 },
    source: SOURCES.staticCards,
    basis: 'derived',
    note: 'Formula published; suction loss is an assumed input.',
  },
] satisfies PublishedRow<object, object>[];

export const maxLiftRows = [
  {
    given: { vacuumInhg: 22 },
    expected: { liftFt: 24.8 },
    within: { liftFt: 0.1 },
    source: SOURCES.staticCards2,
    basis: 'published',
  },
] satisfies PublishedRow<object, object>[];

export const theoreticalLiftRows = [
  {
    given: { atmosphericPsi: 14.7, psiPerFt: 0.4332 },
    expected: { theoreticalFt: 33.93 },
    within: { theoreticalFt: 0.02 },
    source: SOURCES.dryHydrants,
    basis: 'corrected',
    note: 'The article prints 33.2; its own division is 33.93 (used as expected).',
  },
] satisfies PublishedRow<object, object>[];

export const altitudeRows = [
  {
    given: { altitudeFt: 4200, psiLossPer1000Ft: 0.5 },
    expected: { atmosphericPsi: 12.6 },
    within: { atmosphericPsi: 0.05 },
    source: SOURCES.engineersTest,
    basis: 'derived',
    note: 'Card gives 12.6 psi for a city near 4,200 ft.',
  },
] satisfies PublishedRow<object, object>[];
