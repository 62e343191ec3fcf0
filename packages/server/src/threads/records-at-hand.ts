import type { RecordStore } from '@plugside/records';
import type { DistrictTerrain } from '../elevation/district-terrain.ts';
import type { Asked } from './piece.ts';

/** What a piece of work on the records has at hand: a connection of its thread's own, to read from. */
export interface RecordsAtHand<Progress = never> extends Asked<Progress> {
  store: RecordStore;
  terrain: Pick<DistrictTerrain, 'current'>;
}
