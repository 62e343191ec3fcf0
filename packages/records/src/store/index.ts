/** Keeping records: SQLite or PostgreSQL behind one interface. */
export type * from './drill-runs.ts';
export * from './errors.ts';
export { type OpenedStore, type OpenOptions, openStore, type StoreTarget } from './open-store.ts';
export type {
  Box,
  ListQuery,
  MergeCount,
  MergeOptions,
  Page,
  RecordStore,
  Scalar,
  Sort,
  Where,
} from './record-store.ts';
export type { TerrainFile, TerrainGiven } from './terrain-file.ts';
