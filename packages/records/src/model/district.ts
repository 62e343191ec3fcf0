/** Buildings, streets, and plans that join what is known. */
import { z } from 'zod';
import {
  elevationFtSchema,
  idSchema,
  latitudeSchema,
  longitudeSchema,
  nameSchema,
  sharedShape,
} from './common.ts';

/** [longitude, latitude] */
export const positionSchema = z.tuple([longitudeSchema, latitudeSchema]);

export const buildingSchema = z.strictObject({
  name: nameSchema,
  address: z.string().max(300).optional(),
  /** A point inside: where it is on a list. */
  longitude: longitudeSchema,
  latitude: latitudeSchema,
  elevationFt: elevationFtSchema.optional(),
  /** Rings as in GeoJSON, the outer first. */
  footprint: z.array(z.array(positionSchema).min(4)).max(50).optional(),
  storeys: z.int().min(1).max(200).optional(),
  /** Ground floor [ft²]. */
  areaFt2: z.number().positive().max(1e8).optional(),
  construction: z.string().max(120).optional(),
  occupancy: z.string().max(120).optional(),
  exposures: z.int().min(0).max(8).optional(),
  sprinklered: z.boolean().optional(),
  standpipe: z.boolean().optional(),
  neededGpm: z.number().min(0).max(50000).optional(),
  ...sharedShape,
});

export const streetSchema = z.strictObject({
  name: z.string().max(200).default(''),
  /** In order along the street. */
  path: z.array(positionSchema).min(2).max(5000),
  /** "residential", "track" … as its list has it. */
  class: z.string().max(60).optional(),
  /** A rig cannot drive it: hose may still be laid by hand. */
  footOnly: z.boolean().default(false),
  ...sharedShape,
});

export const planRecordSchema = z.strictObject({
  name: nameSchema,
  /** The plan as a plan file (YAML). */
  text: z.string().min(1).max(1_000_000),
  buildingId: idSchema.optional(),
  hydrantIds: z.array(idSchema).max(40).default([]),
  rigIds: z.array(idSchema).max(60).default([]),
  /** The lay as drawn on the map. */
  path: z.array(positionSchema).max(5000).optional(),
  ...sharedShape,
});

/** One department-wide value: adopted coefficients, limits, its name. */
export const settingSchema = z.strictObject({
  name: nameSchema,
  value: z.json(),
  ...sharedShape,
});
