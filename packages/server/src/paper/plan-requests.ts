/** What drill sheets and building plans are asked for with, checked. */
import { z } from '@hono/zod-openapi';
import { fieldRanges, fireLinePdpRange, marginShareRange } from '@plugside/fireground';
import { paperSchema, unitsSchema } from './paper-query.ts';

export const drillSheetSchema = z
  .strictObject({
    plan: z
      .string()
      .min(1)
      .max(500_000)
      .openapi({ description: 'The plan as a plan file, YAML or JSON' }),
    place: z
      .string()
      .min(1)
      .max(300)
      .optional()
      .openapi({ description: 'The building that it is drilled for: the sheet’s title' }),
    duties: z
      .array(
        z.strictObject({
          rigId: z.string().max(40),
          rigName: z.string().min(1).max(120),
          duty: z.string().min(1).max(2000),
        }),
      )
      .max(60)
      .optional()
      .openapi({
        description:
          'Each rig’s part, as the supply was chosen; inferred from the plan where left out',
      }),
    benchmarks: z
      .array(
        z.strictObject({
          text: z.string().min(1).max(120),
          target: z.string().max(20).optional(),
        }),
      )
      .max(20)
      .optional()
      .openapi({ description: 'The department’s own; usual ones with blanks where left out' }),
    paper: paperSchema.default('letter'),
    units: unitsSchema.default('us'),
  })
  .openapi('DrillSheetRequest');

export const buildingPlanSchema = z
  .strictObject({
    buildingId: z.string().max(40),
    demandGpm: z
      .number()
      .min(fieldRanges.demand.least)
      .max(fieldRanges.demand.greatest)
      .optional()
      .openapi({ description: 'The needed fire flow on record where left out' }),
    demandMethod: z
      .string()
      .min(1)
      .max(120)
      .optional()
      .openapi({ description: 'Printed beside the demand: where it comes from' }),
    way: z
      .string()
      .max(400)
      .optional()
      .openapi({ description: 'Id of the way to print; the best where left out' }),
    away: z
      .array(z.string().max(40))
      .max(100)
      .default([])
      .openapi({ description: 'Rigs that do not come, by the ids of the situation' }),
    arrivesMin: z
      .record(z.string().max(40), z.number().min(0).max(240))
      .default({})
      .openapi({ description: 'Arrivals that differ from the situation’s' }),
    marginShare: z
      .number()
      .min(marginShareRange.least)
      .max(marginShareRange.greatest)
      .optional()
      .openapi({
        description:
          'Share of the demand that a way should have to spare: 0.15 for 15 %; 0.1 where left out',
      }),
    fireLinePdpPsi: z
      .number()
      .min(fireLinePdpRange.least)
      .max(fireLinePdpRange.greatest)
      .optional()
      .openapi({
        description:
          'Discharge pressure that the lines at the fire need of their pump, psi; 150 where left out',
      }),
    first: z
      .enum(['time to water', 'rigs used', 'hose', 'margin'])
      .default('time to water')
      .openapi({ description: 'Weighed first among ways that bring enough' }),
    paper: paperSchema.default('letter'),
    units: unitsSchema.default('us'),
  })
  .openapi('BuildingPlanRequest');

export type DrillSheetBody = z.infer<typeof drillSheetSchema>;
export type BuildingPlanBody = z.infer<typeof buildingPlanSchema>;
