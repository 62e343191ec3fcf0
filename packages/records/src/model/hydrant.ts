import { z } from 'zod';
import {
  elevationFtSchema,
  idSchema,
  latitudeSchema,
  longitudeSchema,
  nameSchema,
  sharedShape,
} from './common.ts';

export const lossSchema = z.strictObject({
  lossPsi: z.number().min(0).max(1000),
  atGpm: z.number().positive().max(100000),
});

export const hydrantSchema = z.strictObject({
  name: nameSchema,
  longitude: longitudeSchema,
  latitude: latitudeSchema,
  elevationFt: elevationFtSchema.optional(),
  /** Barrel or fitting, in the owner's words: "dry barrel", "wall", "underground". */
  type: z.string().max(80).optional(),
  /** Steamer outlet [in]; left out where it has none. */
  steamerIn: z.number().positive().max(12).optional(),
  sideOutlets: z.int().min(0).max(6).default(2),
  sideOutletIn: z.number().positive().max(6).default(2.5),
  steamerLoss: lossSchema.optional(),
  sideLoss: lossSchema.optional(),
  /** Main that feeds it [in]. */
  mainIn: z.number().positive().max(120).optional(),
  /**
   * Which main that is, in the department's words. Hydrants with the same text draw on each other. Another
   * text alone does not part them: see `mainFedFrom`. Left out: not known.
   */
  main: z.string().max(120).optional(),
  /**
   * What that main hangs on, in the same words: the main, or the tank, works or wells that feed it. Mains of
   * which one hangs on the other, or both on a third, draw on each other; those that hang on different things
   * add up. Left out: not known.
   */
  mainFedFrom: z.string().max(120).optional(),
  status: z.enum(['in service', 'out of service']).default('in service'),
  /** Why it is out of service. */
  statusReason: z.string().max(500).optional(),
  owner: z.string().max(200).optional(),
  /** The flow test that plans use; left out: the newest. */
  planTestId: idSchema.optional(),
  ...sharedShape,
});

/** A static source: pond, river, cistern. */
export const waterSourceSchema = z.strictObject({
  name: nameSchema,
  kind: z.enum(['pond', 'lake', 'river', 'cistern', 'dry hydrant', 'tank']),
  longitude: longitudeSchema,
  latitude: latitudeSchema,
  /** Water's surface [ft]. */
  elevationFt: elevationFtSchema.optional(),
  usableGal: z.number().min(0).max(1e12).optional(),
  /** Where a pump stands, above the water at its lowest [ft]; no farther than draft is reckoned. */
  liftFt: z.number().min(0).max(30).optional(),
  access: z.string().max(500).optional(),
  ...sharedShape,
});
