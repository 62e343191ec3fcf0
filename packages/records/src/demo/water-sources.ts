import type { FieldsIn } from '../model/index.ts';
import {
  groundFt,
  lonLatOf,
  type Point,
  pond,
  riverElevationFt,
  riverNorthFt,
  riverWidthFt,
} from './ground.ts';
import { bent } from './town-map.ts';

/** Where an engine can draft. */
export function demoWaterSources(): FieldsIn<'water-sources'>[] {
  const bank = (eastFt: number): Point => {
    const [east] = bent([eastFt, -2500]);
    return [east, riverNorthFt(east) - riverWidthFt / 2 - 10];
  };
  const cistern = bent([4700, -3560]);
  const sources: (FieldsIn<'water-sources'> & { at: Point })[] = [
    {
      ...placed([pond.at[0] + pond.radiusFt, pond.at[1] + 20]),
      name: 'Pond Lane pond',
      kind: 'pond',
      elevationFt: pond.elevationFt,
      usableGal: 1_400_000,
      access: 'Hard standing for two rigs off Pond Lane',
    },
    {
      ...placed([pond.at[0] + pond.radiusFt + 15, pond.at[1] - 60]),
      name: 'Pond Lane dry hydrant',
      kind: 'dry hydrant',
      elevationFt: pond.elevationFt,
      access: '6 in suction outlet beside the lane',
    },
    {
      ...placed(bank(60)),
      name: 'River at Market Avenue bridge',
      kind: 'river',
      elevationFt: riverElevationFt,
      liftFt: 12,
      access: 'From the south bank',
    },
    {
      ...placed(bank(-3540)),
      name: 'River at Ferry Road bridge',
      kind: 'river',
      elevationFt: riverElevationFt,
      liftFt: 10,
      access: 'From the south bank; not in flood',
    },
    {
      ...placed(cistern),
      name: 'Meadow Lane cistern',
      kind: 'cistern',
      elevationFt: groundFt(cistern) - 6,
      usableGal: 30_000,
      access: 'Under the verge; cover key on Tender 1',
    },
  ];
  return sources.map(({ at: _, ...source }) => ({ ...source, externalId: source.name }));
}

function placed(at: Point) {
  const [longitude, latitude] = lonLatOf(at);
  return { at, longitude, latitude };
}
