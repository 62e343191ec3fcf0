/** What a person is asked about places; kept apart so that a screen can tell when it is answered. */

export const projectionNotice =
  'The coordinates are no degrees but those of a map projection: say which one, by its EPSG code.';

export const noPlaceNotice = 'No column is known to hold a place: choose longitude and latitude.';

/** Ends every notice of a coordinate system that cannot be used. */
export const crsRemedy =
  'Give an EPSG code, such as EPSG:26917, or convert the file to degrees (WGS 84, EPSG:4326) first.';
