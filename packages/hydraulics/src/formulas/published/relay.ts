import type { PublishedRow } from './published-row.ts';
import { SOURCES } from './sources.ts';

// Relays. Values from outside the project, each with its source, basis and tolerance.

export const relayDistanceRows = [
  {
    given: { hoseIn: 2.5, c: 2, flowGpm: 500, pdpPsi: 200, residualPsi: 20 },
    expected: { distanceFt: 360 },
    within: { distanceFt: 21.6 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Basis (20 psi residual; 200 and 185 psi) confirmed by the Firehouse relay lesson; table entry from memory.',
  },
  {
    given: { hoseIn: 4, c: 0.2, flowGpm: 500, pdpPsi: 185, residualPsi: 20 },
    expected: { distanceFt: 3300 },
    within: { distanceFt: 198.0 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Basis (20 psi residual; 200 and 185 psi) confirmed by the Firehouse relay lesson; table entry from memory.',
  },
  {
    given: { hoseIn: 5, c: 0.08, flowGpm: 500, pdpPsi: 185, residualPsi: 20 },
    expected: { distanceFt: 8250 },
    within: { distanceFt: 495.0 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Basis (20 psi residual; 200 and 185 psi) confirmed by the Firehouse relay lesson; table entry from memory.',
  },
  {
    given: { hoseIn: 4, c: 0.2, flowGpm: 750, pdpPsi: 185, residualPsi: 20 },
    expected: { distanceFt: 1450 },
    within: { distanceFt: 87.0 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Basis (20 psi residual; 200 and 185 psi) confirmed by the Firehouse relay lesson; table entry from memory.',
  },
  {
    given: { hoseIn: 2.5, c: 2, flowGpm: 1000, pdpPsi: 200, residualPsi: 20 },
    expected: { distanceFt: 90 },
    within: { distanceFt: 20 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Basis (20 psi residual; 200 and 185 psi) confirmed by the Firehouse relay lesson; table entry from memory.',
  },
  {
    given: { hoseIn: 3, c: 0.8, flowGpm: 1000, pdpPsi: 200, residualPsi: 20 },
    expected: { distanceFt: 225 },
    within: { distanceFt: 20 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Basis (20 psi residual; 200 and 185 psi) confirmed by the Firehouse relay lesson; table entry from memory.',
  },
  {
    given: { hoseIn: 4, c: 0.2, flowGpm: 1000, pdpPsi: 185, residualPsi: 20 },
    expected: { distanceFt: 825 },
    within: { distanceFt: 49.5 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Basis (20 psi residual; 200 and 185 psi) confirmed by the Firehouse relay lesson; table entry from memory.',
  },
  {
    given: { hoseIn: 4, c: 0.2, flowGpm: 1250, pdpPsi: 185, residualPsi: 20 },
    expected: { distanceFt: 500 },
    within: { distanceFt: 30.0 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Basis (20 psi residual; 200 and 185 psi) confirmed by the Firehouse relay lesson; table entry from memory.',
  },
  {
    given: { hoseIn: 5, c: 0.08, flowGpm: 1250, pdpPsi: 185, residualPsi: 20 },
    expected: { distanceFt: 1320 },
    within: { distanceFt: 79.2 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
    note: 'Basis (20 psi residual; 200 and 185 psi) confirmed by the Firehouse relay lesson; table entry from memory.',
  },
] satisfies PublishedRow<object, object>[];

export const relayDistanceDualRows = [
  {
    given: { lines: 'two 2.5', lineC: [2, 2], flowGpm: 1000, pdpPsi: 200, residualPsi: 20 },
    expected: { distanceFt: 360 },
    within: { distanceFt: 12 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
  },
  {
    given: { lines: 'two 3', lineC: [0.8, 0.8], flowGpm: 1000, pdpPsi: 200, residualPsi: 20 },
    expected: { distanceFt: 900 },
    within: { distanceFt: 12 },
    source: SOURCES.ifstaTables,
    basis: 'recalled',
  },
] satisfies PublishedRow<object, object>[];

export const relayPumpSelectionRows = [
  {
    given: { flowGpm: 1000, dischargePsi: 185, minRatingGpm: 1500 },
    expected: { capacityAt200PsiGpm: 1050, sufficient: true },
    within: { capacityAt200PsiGpm: 0.5 },
    source: SOURCES.relayLesson3,
    basis: 'derived',
    note: 'Lesson pairs 1,000 gpm with a 1,500-gpm pumper: 70% at 200 psi = 1,050.',
  },
] satisfies PublishedRow<object, object>[];

export const relayPlanRows = [
  {
    given: { distanceFt: 4500, flowGpm: 1000, hoseIn: 5, c: 0.08, pdpPsi: 185, residualPsi: 20 },
    expected: {
      spacingFt: 2062.5,
      hoseSections: 3,
      pumpers: 4,
      sectionFt: 1500,
      pdpNeededPsi: 140,
    },
    within: { spacingFt: 1, hoseSections: 0.01, pumpers: 0.01, sectionFt: 0.1, pdpNeededPsi: 0.1 },
    source: SOURCES.relayLesson3,
    basis: 'derived',
    note: 'Equal spacing after rounding up; count includes the attack pumper.',
  },
] satisfies PublishedRow<object, object>[];

export const relayFieldRows = [
  {
    given: { lengthFt: 3550, flowGpm: 700, pdpPsi: 100, hoseIn: 5, intakePsiAssumed: 0 },
    expected: { textbookFlPsi: 139.2, maxEffectiveC: 0.0575 },
    within: { textbookFlPsi: 0.2, maxEffectiveC: 0.0005 },
    source: SOURCES.relayDrill,
    basis: 'field test',
    note: 'Textbook C=0.08 over-predicts: real hose needed no more than 0.0575.',
  },
] satisfies PublishedRow<object, object>[];

export const relayFieldRows2 = [
  {
    given: { lengthFt: 1900, flowGpm: 1000, pdpPsi: 150, hoseIn: 5, intakePsi: 20 },
    expected: { textbookFlPsi: 152, maxEffectiveC: 0.0684 },
    within: { textbookFlPsi: 0.2, maxEffectiveC: 0.0005 },
    source: SOURCES.relayDrill,
    basis: 'field test',
    note: 'Drill flowed just over 1,000 gpm.',
  },
] satisfies PublishedRow<object, object>[];
