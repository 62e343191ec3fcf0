import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { fromArrayBuffer } from 'geotiff';
import { readCrs, SourceRefusedError } from '../import/index.ts';
import { type Raster, type Terrain, terrainOf } from './terrain.ts';

/** Cells past this are refused: they are held in memory. */
const MOST_CELLS = 60_000_000;
const MOST_BYTES = 500_000_000;

export interface ReadTerrainOptions {
  /** As people know the file. */
  name?: string;
  /** Unit of the values; left out: what the file says, else metres. */
  unit?: 'm' | 'ft';
}

/**
 * Ground elevation from a GeoTIFF (OGC 19-008r4): its first band, whatever its coordinate system if
 * that is known by EPSG code. Values are metres unless the file or `unit` says feet.
 * @throws SourceRefusedError where it is no such file, is turned, too large, or of unknown place
 */
export async function readTerrain(
  file: string,
  options: ReadTerrainOptions = {},
): Promise<Terrain> {
  const name = options.name ?? basename(file);
  const info = await stat(file).catch(() => undefined);
  if (!info?.isFile())
    throw new SourceRefusedError(name, 'There is no such file.', 'Check its name.');
  if (info.size === 0 || info.size > MOST_BYTES) {
    throw new SourceRefusedError(
      name,
      info.size === 0 ? 'The file is empty.' : 'The file is larger than 500 MB.',
      'Cut it to the district.',
    );
  }
  return terrainFrom(await readFile(file), { ...options, name });
}

/**
 * The same from a file's bytes.
 * @throws SourceRefusedError where they are no such file, turned, too many cells, or of unknown place
 */
export async function terrainFrom(
  bytes: Uint8Array,
  options: ReadTerrainOptions & { name: string },
): Promise<Terrain> {
  const { name } = options;
  const raster = await rasterOf(name, bytes, options).catch((error: unknown) => {
    if (error instanceof SourceRefusedError) throw error;
    const why = error instanceof Error ? error.message : String(error);
    throw new SourceRefusedError(
      name,
      `It cannot be read as a GeoTIFF (${why.slice(0, 120)}).`,
      'Export the terrain again as a plain GeoTIFF.',
    );
  });
  return terrainOf(name, raster);
}

async function rasterOf(
  name: string,
  bytes: Uint8Array,
  { unit }: ReadTerrainOptions,
): Promise<Raster> {
  const { buffer, byteOffset, byteLength } = bytes;
  const tiff = await fromArrayBuffer(
    buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer,
  );
  const image = await tiff.getImage();
  const [width, height] = [image.getWidth(), image.getHeight()];
  if (width * height > MOST_CELLS) {
    throw new SourceRefusedError(
      name,
      `The raster has ${width} by ${height} cells, more than 60 million.`,
      'Cut it to the district, or make it coarser.',
    );
  }
  const keys = (image.getGeoKeys() ?? {}) as Record<string, unknown>;
  const code = keys.ProjectedCSTypeGeoKey ?? keys.GeographicTypeGeoKey;
  const read = readCrs(`EPSG:${String(code)}`);
  if (!read.ok) {
    throw new SourceRefusedError(
      name,
      code === undefined ? 'The file does not say where it lies.' : read.reason,
      'Convert it to degrees (WGS 84, EPSG:4326).',
    );
  }
  const [west = Number.NaN, north = Number.NaN] = image.getOrigin();
  const [cellX = Number.NaN, cellY = Number.NaN] = image.getResolution();
  if (!(cellX > 0 && cellY < 0)) {
    throw new SourceRefusedError(name, 'The raster is turned or mirrored.', 'Export it north up.');
  }
  const rasters = await image.readRasters({ samples: [0] });
  const values = (Array.isArray(rasters) ? rasters[0] : rasters) as ArrayLike<number>;
  // Points are given for cells' centres, or for their corners.
  const half = keys.GTRasterTypeGeoKey === 2 ? 0.5 : 0;
  return {
    values,
    width,
    height,
    west: west - half * cellX,
    north: north - half * cellY,
    cellX,
    cellY: -cellY,
    noData: image.getGDALNoData() ?? undefined,
    feetPerUnit: feetPerUnit(unit, keys.VerticalUnitsGeoKey),
    system: read.system,
  };
}

/** EPSG's codes of units: 9002 the foot, 9003 the US survey foot (1200/3937 m); else metres. */
function feetPerUnit(unit: 'm' | 'ft' | undefined, key: unknown): number {
  if (unit === 'ft' || (unit === undefined && key === 9002)) return 1;
  if (unit === undefined && key === 9003) return 1200 / 3937 / 0.3048;
  return 1 / 0.3048;
}
