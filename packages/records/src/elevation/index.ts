/** Ground elevation from a terrain file. */
export { type ReadTerrainOptions, readTerrain, terrainFrom } from './read-geotiff.ts';
export { storedTerrain } from './stored-terrain.ts';
export type { Terrain } from './terrain.ts';
