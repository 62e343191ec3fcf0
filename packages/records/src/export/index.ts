/** Records for other programs: tables, maps, and all of it as one archive. */
export { exportAll } from './export-all.ts';
export { exportCsv } from './export-csv.ts';
export { exportGeoJson } from './export-geojson.ts';
