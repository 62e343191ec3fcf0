import * as z from 'zod';
import { writtenForm } from './field.ts';
import { writtenPlanSchema } from './schema.ts';

/**
 * JSON Schema (draft 2020-12) of the written form, made from the schema that `readPlan`
 * uses. It is for editors: cross-checks (ports, ids, feeds) and the ranges of numbers
 * written with a unit are `readPlan`'s alone.
 */
export function planJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(writtenPlanSchema, {
    io: 'input',
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      const form = writtenForm(zodSchema);
      if (!form) return;
      for (const key of Object.keys(jsonSchema)) delete jsonSchema[key];
      Object.assign(jsonSchema, form);
    },
  }) as Record<string, unknown>;
  return { ...schema, title: 'Plugside water-supply plan, version 1' };
}
