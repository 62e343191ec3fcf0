import type { Place } from '../streets/ellipsoid.ts';
import type { ElevationAt } from './terrain-along.ts';

interface Surveyed extends Place {
  elevationFt?: number | undefined;
}

export interface Heights {
  sceneFt: number;
  /** In the order given [ft]; level with the scene where one is not known. */
  othersFt: number[];
  /** False in the same order: that height is not known. */
  known: boolean[];
}

/**
 * Heights of a scene and of the places that water comes from, on one zero: a record's own height
 * where both have one; else the ground model's difference, so that a survey and a model that count
 * from different zeros do not mix.
 */
export function heightsFrom(
  scene: Surveyed,
  others: readonly Surveyed[],
  elevationAt?: ElevationAt,
): Heights {
  const ground = ({ longitude, latitude }: Place) => elevationAt?.(longitude, latitude);
  const sceneGroundFt = ground(scene);
  const sceneFt = scene.elevationFt ?? sceneGroundFt;
  const found = others.map((other) => {
    const groundFt = ground(other);
    if (scene.elevationFt !== undefined && other.elevationFt !== undefined) {
      return other.elevationFt;
    }
    if (sceneFt !== undefined && groundFt !== undefined && sceneGroundFt !== undefined) {
      return sceneFt + (groundFt - sceneGroundFt);
    }
    return undefined;
  });
  const levelFt = sceneFt ?? 0;
  return {
    sceneFt: levelFt,
    othersFt: found.map((heightFt) => heightFt ?? levelFt),
    known: found.map((heightFt) => heightFt !== undefined),
  };
}
