/** When rigs arrive, from where they stand. */

/** From the alarm to wheels rolling [min]: 80 s, the turnout of NFPA 1710 for fires (from memory). */
export const turnoutMin = 80 / 60;

const FEET_PER_MILE = 5280;

/**
 * Minutes for a rig to drive along streets: 0.65 + 1.7 per mile, the travel-time relation of the
 * Rand studies that the insurance rating schedule and "Water Shuttle Operations", Firehouse, use
 * (an average of 35 mph with the getting away).
 *
 * @param roadFt along the streets, 0 or more [ft]
 * @throws RangeError for a negative or missing length
 */
export function travelMin(roadFt: number): number {
  if (!(roadFt >= 0) || !Number.isFinite(roadFt)) {
    throw new RangeError(`roadFt is ${roadFt}; give a length of 0 ft or more.`);
  }
  return 0.65 + (1.7 * roadFt) / FEET_PER_MILE;
}

/** Minutes from the alarm to the scene. @throws RangeError as `travelMin` */
export const arrivalMin = (roadFt: number): number => turnoutMin + travelMin(roadFt);
