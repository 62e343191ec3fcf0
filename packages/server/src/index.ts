// The app over HTTP
export { addressesOf } from './addresses.ts';
export { type AppOptions, createApp } from './app.ts';
// What is drawn under the streets
export { checkTilesFile, type TilesFile } from './base-map/tiles-file.ts';
// Which records are served
export {
  type DatabaseSettings,
  DEFAULT_DATABASE,
  readDatabaseSettings,
} from './database/database-settings.ts';
export { type Fill, type OpenedRecords, openRecords } from './database/open-records.ts';
export type { Beat } from './drill-rooms/room-clock.ts';
export { listen, type RunningServer } from './listen.ts';

// Settings from the environment
export {
  DEFAULT_HOST,
  DEFAULT_PORT,
  isLoopback,
  readBaseMapFile,
  readHostNames,
  readSettings,
  type ServerSettings,
} from './settings.ts';
