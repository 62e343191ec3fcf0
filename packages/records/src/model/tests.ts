/** Tests that keep the numbers honest: hydrant flow tests, pump tests, hose tests. */
import { z } from 'zod';
import { dateSchema, idSchema, sharedShape } from './common.ts';

/** One flowing outlet: a pitot reading with its outlet, or a flow read from a meter. */
export const flowingOutletSchema = z.strictObject({
  /** Flowing hydrant's name, where it is another than the one gauged. */
  hydrant: z.string().max(120).optional(),
  outletIn: z.number().positive().max(12).optional(),
  /** Outlet coefficient: 0.90 rounded, 0.80 square, 0.70 projecting. */
  coefficient: z.number().min(0.5).max(1).optional(),
  pitotPsi: z.number().min(0).max(300).optional(),
  flowGpm: z.number().min(0).max(50000).optional(),
});

export const flowTestSchema = z.strictObject({
  /** The hydrant gauged. */
  hydrantId: idSchema,
  testedOn: dateSchema,
  staticPsi: z.number().min(0).max(500),
  residualPsi: z.number().min(0).max(500),
  flowing: z.array(flowingOutletSchema).max(20).default([]),
  /** Total flow as stated by whoever tested; left out where the pitots tell it. */
  statedFlowGpm: z.number().min(0).max(100000).optional(),
  by: z.string().max(200).optional(),
  ...sharedShape,
});

export const pumpTestPointSchema = z.strictObject({
  flowGpm: z.number().min(0).max(20000),
  /** Net pump pressure. */
  netPsi: z.number().min(0).max(1000),
  speedRpm: z.number().min(0).max(10000).optional(),
});

export const pumpTestSchema = z.strictObject({
  rigId: idSchema,
  testedOn: dateSchema,
  points: z.array(pumpTestPointSchema).min(1).max(50),
  by: z.string().max(200).optional(),
  ...sharedShape,
});

/** Loss measured through a length of hose at a flow. */
export const hoseTestPointSchema = z.strictObject({
  flowGpm: z.number().positive().max(20000),
  lossPsi: z.number().min(0).max(500),
  lengthFt: z.number().positive().max(20000),
});

export const hoseTestSchema = z.strictObject({
  /** Catalogue size, for instance `5`, `1-3/4`. */
  size: z.string().min(1).max(10),
  testedOn: dateSchema,
  points: z.array(hoseTestPointSchema).min(1).max(100),
  /** Plans use its coefficient for the size. The department says so; never by itself. */
  adopted: z.boolean().default(false),
  by: z.string().max(200).optional(),
  ...sharedShape,
});
