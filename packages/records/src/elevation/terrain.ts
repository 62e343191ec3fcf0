/** Ground elevation from a raster held in memory. */
import type { CoordinateSystem } from '../import/index.ts';

export interface Raster {
  /** Row by row from the north. */
  values: ArrayLike<number>;
  width: number;
  height: number;
  /** Outer corner of the first cell, in the raster's coordinates. */
  west: number;
  north: number;
  /** Size of a cell, both positive. */
  cellX: number;
  cellY: number;
  /** Value that means "not known". */
  noData: number | undefined;
  /** Feet in one unit of the values: 1/0.3048 where they are metres. */
  feetPerUnit: number;
  system: CoordinateSystem;
}

export interface Terrain {
  /** Where it came from, for origins. */
  name: string;
  /** [west, south, east, north] in degrees WGS 84, a little generous where the raster is projected. */
  bounds: [number, number, number, number];
  /** Size of a cell on the ground, north to south [ft]. */
  cellFt: number;
  /**
   * Elevation of the ground [ft] above the raster's own datum; undefined outside the raster and
   * where it has no value.
   * @param method the cell that holds the place, or between the four nearest centres (the default)
   */
  elevationFt(
    longitude: number,
    latitude: number,
    method?: 'nearest' | 'bilinear',
  ): number | undefined;
}

const FT_PER_DEGREE = 111_195 / 0.3048;

export function terrainOf(name: string, raster: Raster): Terrain {
  const { width, height, system, feetPerUnit } = raster;
  const cell = (column: number, row: number): number | undefined => {
    const value = raster.values[row * width + column];
    const known = value !== undefined && Number.isFinite(value) && value !== raster.noData;
    // What is lower than any shore or higher than any peak is a raster's mark, stated or not.
    return known && value * feetPerUnit > -1500 && value * feetPerUnit < 30_000 ? value : undefined;
  };
  return {
    name,
    bounds: boundsOf(raster),
    cellFt: system.degrees ? raster.cellY * FT_PER_DEGREE : spanFt(raster),
    elevationFt(longitude, latitude, method = 'bilinear') {
      const [x, y] = system.fromWgs84(longitude, latitude);
      const [across, down] = [(x - raster.west) / raster.cellX, (raster.north - y) / raster.cellY];
      if (!(across >= 0 && across <= width && down >= 0 && down <= height)) return undefined;
      const column = Math.min(width - 1, Math.floor(across));
      const row = Math.min(height - 1, Math.floor(down));
      const nearest = cell(column, row);
      if (method === 'nearest' || nearest === undefined) {
        return nearest === undefined ? undefined : nearest * feetPerUnit;
      }
      return (between(across - 0.5, down - 0.5) ?? nearest) * feetPerUnit;
    },
  };

  /** Between four centres; undefined where one of them has no value. At the rim the edge goes on. */
  function between(across: number, down: number): number | undefined {
    const clamp = (value: number, most: number) => Math.min(most, Math.max(0, value));
    const [c, r] = [clamp(across, width - 1), clamp(down, height - 1)];
    const [c0, r0] = [Math.min(width - 1, Math.floor(c)), Math.min(height - 1, Math.floor(r))];
    const [c1, r1] = [Math.min(width - 1, c0 + 1), Math.min(height - 1, r0 + 1)];
    const [nw, ne, sw, se] = [cell(c0, r0), cell(c1, r0), cell(c0, r1), cell(c1, r1)];
    if (nw === undefined || ne === undefined || sw === undefined || se === undefined) {
      return undefined;
    }
    const [fx, fy] = [c - c0, r - r0];
    return (nw * (1 - fx) + ne * fx) * (1 - fy) + (sw * (1 - fx) + se * fx) * fy;
  }
}

function boundsOf({ west, north, cellX, cellY, width, height, system }: Raster) {
  const [east, south] = [west + cellX * width, north - cellY * height];
  const corners = [
    [west, north],
    [east, north],
    [west, south],
    [east, south],
    [(west + east) / 2, north],
    [(west + east) / 2, south],
  ].map(([x, y]) => system.toWgs84(x!, y!));
  const longitudes = corners.map(([longitude]) => longitude);
  const latitudes = corners.map(([, latitude]) => latitude);
  return [
    Math.min(...longitudes),
    Math.min(...latitudes),
    Math.max(...longitudes),
    Math.max(...latitudes),
  ] as [number, number, number, number];
}

function spanFt({ west, north, cellY, height, system }: Raster): number {
  const [, top] = system.toWgs84(west, north);
  const [, foot] = system.toWgs84(west, north - cellY * height);
  return (Math.abs(top - foot) * FT_PER_DEGREE) / height;
}
