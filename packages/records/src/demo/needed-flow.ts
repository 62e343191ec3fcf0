/** Needed fire flow of an invented building, by a published rule. */

export type DemoConstruction =
  | 'wood frame'
  | 'joisted masonry'
  | 'non-combustible'
  | 'fire-resistive';

export interface NeededFlowInput {
  construction: DemoConstruction;
  storeys: number;
  areaFt2: number;
  /** One or two families, two storeys at most. */
  dwelling: boolean;
  /** To the nearest building [ft]. */
  nearestFt: number;
  sprinklered: boolean;
}

/** Coefficient by class of construction. */
const CONSTRUCTION_F: Record<DemoConstruction, number> = {
  'wood frame': 1.5,
  'joisted masonry': 1,
  'non-combustible': 0.8,
  'fire-resistive': 0.6,
};

/** Named as the origin of each value. */
export const neededFlowOrigin =
  'Guide for Determination of Needed Fire Flow (ISO), combustible contents, without exposures; sprinklered: a quarter, 1,000 gpm at least (International Fire Code, appendix B); both from memory';

/**
 * Needed fire flow [gpm]. C = 18·F·√A with A the ground floor and half of the floors above [ft²],
 * at most 8,000 (6,000 where it does not burn), rounded to 250 gpm below 2,500 and to 500 above;
 * 500 at least. A dwelling of one or two families goes by the distance to its neighbour: 500 gpm
 * over 100 ft, 750 over 30, 1,000 over 10, 1,500 nearer.
 * Source: `neededFlowOrigin`, from memory.
 */
export function neededFlowGpm(building: NeededFlowInput): number {
  const { construction, storeys, areaFt2, nearestFt } = building;
  if (building.dwelling && storeys <= 2) {
    if (nearestFt > 100) return 500;
    if (nearestFt > 30) return 750;
    return nearestFt > 10 ? 1000 : 1500;
  }
  const burns = construction === 'wood frame' || construction === 'joisted masonry';
  const effectiveFt2 = areaFt2 * (1 + (storeys - 1) / 2);
  const unrounded = 18 * CONSTRUCTION_F[construction] * Math.sqrt(effectiveFt2);
  const whole = Math.max(500, rounded(Math.min(unrounded, burns ? 8000 : 6000)));
  return building.sprinklered ? Math.min(whole, Math.max(1000, rounded(whole / 4))) : whole;
}

function rounded(gpm: number): number {
  const step = gpm < 2500 ? 250 : 500;
  return Math.round(gpm / step) * step;
}
