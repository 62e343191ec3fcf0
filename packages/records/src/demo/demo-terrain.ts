import type { Terrain } from '../elevation/index.ts';
import { demoElevationFt, demoReachFt, districtCentre, feetPerDegreeHere } from './ground.ts';

/** The invented district's ground, as terrain that a file would give. */
export const demoTerrain: Terrain = {
  name: 'Ground of the invented district',
  bounds: [
    districtCentre.longitude - demoReachFt / feetPerDegreeHere.longitude,
    districtCentre.latitude - demoReachFt / feetPerDegreeHere.latitude,
    districtCentre.longitude + demoReachFt / feetPerDegreeHere.longitude,
    districtCentre.latitude + demoReachFt / feetPerDegreeHere.latitude,
  ],
  // A formula: as fine as its tenth of a foot.
  cellFt: 1,
  elevationFt: demoElevationFt,
};
