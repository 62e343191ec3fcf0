/** Ground elevation from a terrain file. */
export { type ReadTerrainOptions, readTerrain } from './read-geotiff.ts';
export type { Terrain } from './terrain.ts';
