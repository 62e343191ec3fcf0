import { geotiffOf } from '../elevation/write-geotiff.ts';
import { demoElevationFt, districtCentre, feetPerDegreeHere } from './ground.ts';

/** The terrain reaches so far from the middle, in each direction [ft]. */
const REACH_FT = 12_000;
const CELL_FT = 60;

/** The invented district's ground as a file of terrain, so that it is read like any other. */
export function demoTerrain(): { name: string; bytes: Uint8Array } {
  const [cellLongitude, cellLatitude] = [
    CELL_FT / feetPerDegreeHere.longitude,
    CELL_FT / feetPerDegreeHere.latitude,
  ];
  const width = (2 * REACH_FT) / CELL_FT;
  const west = districtCentre.longitude - (cellLongitude * width) / 2;
  const north = districtCentre.latitude + (cellLatitude * width) / 2;
  const valuesFt = new Float32Array(width * width);
  for (let row = 0; row < width; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const [longitude, latitude] = [
        west + (column + 0.5) * cellLongitude,
        north - (row + 0.5) * cellLatitude,
      ];
      valuesFt[row * width + column] = demoElevationFt(longitude, latitude) ?? Number.NaN;
    }
  }
  const bytes = geotiffOf({ valuesFt, width, west, north, cellLongitude, cellLatitude });
  return { name: 'Ground of the invented district', bytes };
}
