import type { Say } from '../words/say.ts';
import { type DemandStep, step } from './answer.ts';
import type { BuildingField, BuildingForDemand } from './building.ts';
import { missingOf } from './building-fields.ts';

/** One floor of a building, and the line that says how it was found. */
export interface Floor {
  areaFt2: number;
  step: DemandStep;
}

export const FLOOR_FIELDS = ['areaFt2', 'lengthFt', 'widthFt'] as const;

/** Its largest floor [ft²]: as measured, else length times width; null where neither is known. */
export function floorOf(building: BuildingForDemand, say: Say): Floor | null {
  const { areaFt2, lengthFt, widthFt } = building;
  if (areaFt2 !== undefined) {
    return {
      areaFt2,
      step: step(`Largest floor: ${say.full(areaFt2, 'area')}.`, areaFt2, 'ft²'),
    };
  }
  if (lengthFt === undefined || widthFt === undefined) return null;
  const area = lengthFt * widthFt;
  return {
    areaFt2: area,
    step: step(
      `Floor: ${say.full(lengthFt, 'length')} × ${say.full(widthFt, 'length')} = ${say.full(area, 'area')}.`,
      area,
      'ft²',
    ),
  };
}

/** What to give for a floor. */
export function floorMissing(building: BuildingForDemand): BuildingField[] {
  return building.areaFt2 === undefined ? missingOf(building, ['lengthFt', 'widthFt']) : [];
}
