/** Fields that hold the id of another record. */
import type { Kind } from '../model/index.ts';

export interface Reference {
  from: Kind;
  field: string;
  to: Kind;
  /** A list of ids in one JSON column: no foreign key can watch it, so the store does. */
  list: boolean;
}

export const references: readonly Reference[] = [
  { from: 'hydrants', field: 'planTestId', to: 'flow-tests', list: false },
  { from: 'flow-tests', field: 'hydrantId', to: 'hydrants', list: false },
  { from: 'rigs', field: 'stationId', to: 'stations', list: false },
  { from: 'pump-tests', field: 'rigId', to: 'rigs', list: false },
  { from: 'hose', field: 'rigId', to: 'rigs', list: false },
  { from: 'plans', field: 'buildingId', to: 'buildings', list: false },
  { from: 'plans', field: 'hydrantIds', to: 'hydrants', list: true },
  { from: 'plans', field: 'rigIds', to: 'rigs', list: true },
];

export function referencesFrom(kind: Kind): readonly Reference[] {
  return references.filter((one) => one.from === kind);
}

export function referencesTo(kind: Kind): readonly Reference[] {
  return references.filter((one) => one.to === kind);
}
