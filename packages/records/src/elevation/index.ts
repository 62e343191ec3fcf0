/** Ground elevation from a terrain file. */
export { type ReadTerrainOptions, readTerrain, terrainFrom } from './read-geotiff.ts';
export type { Terrain } from './terrain.ts';
