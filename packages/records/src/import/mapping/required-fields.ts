import type { ImportKind } from './mapping.ts';

/** Fields that a record of each kind cannot do without, its name and place apart. */
export const requiredFields: Readonly<Record<ImportKind, readonly string[]>> = {
  stations: [],
  hydrants: [],
  'water-sources': ['kind'],
  'flow-tests': ['hydrantId', 'testedOn', 'staticPsi', 'residualPsi'],
  rigs: ['name'],
  streets: [],
  buildings: [],
};

/** What is told while no column gives a required field. */
export const missingFieldNotice = (label: string): string =>
  `No column is taken for "${label}", which every record needs: choose one.`;
