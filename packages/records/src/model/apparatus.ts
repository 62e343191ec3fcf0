/** Rigs, and the hose, nozzles and appliances that they carry. */
import { z } from 'zod';
import {
  dateSchema,
  elevationFtSchema,
  idSchema,
  latitudeSchema,
  longitudeSchema,
  nameSchema,
  sharedShape,
} from './common.ts';
import { lossSchema } from './hydrant.ts';

export const stationSchema = z.strictObject({
  name: nameSchema,
  longitude: longitudeSchema,
  latitude: latitudeSchema,
  elevationFt: elevationFtSchema.optional(),
  ...sharedShape,
});

export const hoseLoadSchema = z.strictObject({
  /** Catalogue size. */
  size: z.string().min(1).max(10),
  lengthFt: z.number().positive().max(20000),
  /** "supply bed", "crosslay". */
  where: z.string().max(80).optional(),
});

export const rigSchema = z.strictObject({
  name: nameSchema,
  kind: z.enum(['engine', 'tender', 'aerial', 'brush']).default('engine'),
  ratedGpm: z.number().min(50).max(6000).optional(),
  tankGal: z.number().min(0).max(10000).optional(),
  intakes: z.int().min(0).max(12).default(3),
  discharges: z.int().min(0).max(20).default(6),
  intakeReliefPsi: z.number().min(20).max(400).optional(),
  assistValve: z.boolean().default(false),
  hose: z.array(hoseLoadSchema).max(60).default([]),
  stationId: idSchema.optional(),
  inService: z.boolean().default(true),
  ...sharedShape,
});

export const serviceTestSchema = z.strictObject({
  testedOn: dateSchema,
  psi: z.number().positive().max(1000),
  passed: z.boolean(),
});

export const hoseSchema = z.strictObject({
  name: nameSchema,
  size: z.string().min(1).max(10),
  lengthFt: z.number().positive().max(2000),
  inServiceOn: dateSchema.optional(),
  rigId: idSchema.optional(),
  /** Its own marking. */
  limitPsi: z.number().positive().max(1000).optional(),
  serviceTests: z.array(serviceTestSchema).max(100).default([]),
  retiredOn: dateSchema.optional(),
  ...sharedShape,
});

export const nozzleSchema = z.strictObject({
  name: nameSchema,
  kind: z.enum(['smooth-bore', 'fog', 'selectable', 'automatic']),
  use: z.enum(['hand line', 'master stream']).default('hand line'),
  ratedPsi: z.number().positive().max(300),
  tipIn: z.number().positive().max(6).optional(),
  ratedGpm: z.number().positive().max(5000).optional(),
  leastGpm: z.number().positive().max(5000).optional(),
  greatestGpm: z.number().positive().max(5000).optional(),
  settingsGpm: z.array(z.number().positive().max(5000)).max(12).optional(),
  ...sharedShape,
});

export const applianceSchema = z.strictObject({
  name: nameSchema,
  kind: z.enum(['assist-valve', 'wye', 'siamese', 'manifold', 'monitor']),
  /** Through the body, or hydrant to supply for an assist valve. */
  loss: lossSchema.optional(),
  suctionLoss: lossSchema.optional(),
  dischargeLoss: lossSchema.optional(),
  ...sharedShape,
});
