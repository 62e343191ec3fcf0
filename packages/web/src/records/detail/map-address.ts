import type { Kind } from '@plugside/records/model';
import { addressOf, type PickKind } from '../../district/selection.ts';

const pickedAs: Partial<Record<Kind, PickKind>> = {
  hydrants: 'hydrant',
  buildings: 'building',
  stations: 'station',
  'water-sources': 'water',
};

/** The district with this record picked; null for a kind that the map does not show. */
export function mapAddress(kind: Kind, id: string): string | null {
  const as = pickedAs[kind];
  return as ? addressOf({ [as]: id }) : null;
}
