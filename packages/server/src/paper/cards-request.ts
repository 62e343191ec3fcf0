/** What a stack of cards is asked for with, checked. */
import { z } from '@hono/zod-openapi';
import { MOST_CARDS } from './most-cards.ts';
import { paperSchema, unitsSchema } from './paper-query.ts';

export const cardsRequestSchema = z
  .strictObject({
    hydrantIds: z
      .array(z.string().max(40))
      .min(1)
      .max(MOST_CARDS)
      .optional()
      .openapi({ description: `In that order, ${MOST_CARDS} at most; all by name where left out` }),
    attackId: z.string().max(40).optional().openapi({ description: 'Rig at the fire' }),
    boosterId: z.string().max(40).optional().openapi({ description: 'Rig at the hydrant' }),
    paper: paperSchema.default('letter'),
    units: unitsSchema.default('us'),
  })
  .openapi('HydrantCardsRequest');

export type CardsBody = z.infer<typeof cardsRequestSchema>;
