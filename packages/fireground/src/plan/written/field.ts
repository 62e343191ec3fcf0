import * as z from 'zod';
import type { Fault } from '../issue.ts';

/** A JSON Schema fragment. */
export type JsonForm = Record<string, unknown>;

/** How each field is written, for the published JSON Schema. */
const writtenForms = new WeakMap<object, JsonForm>();

export type Reading<T> = { ok: true; value: T } | ({ ok: false } & Fault);

export const good = <T>(value: T): Reading<T> => ({ ok: true, value });

export const bad = (fault: string, allowed: string, remedy: string): Reading<never> => ({
  ok: false,
  fault,
  allowed,
  remedy,
});

/**
 * A field of the written form: how it is read, and how the JSON Schema describes it. A
 * fault carries what is allowed and the remedy on the issue's `params`.
 */
export function field<T>(read: (written: unknown) => Reading<T>, form: JsonForm) {
  const schema = z.unknown().transform((written, context): T => {
    const reading = read(written);
    if (reading.ok) return reading.value;
    const { fault, allowed, remedy } = reading;
    context.issues.push({
      code: 'custom',
      input: written,
      message: fault,
      params: { allowed, remedy },
    });
    return z.NEVER;
  });
  writtenForms.set(schema, form);
  return schema;
}

/** The JSON Schema fragment of a field; undefined for what is not a field. */
export function writtenForm(schema: object): JsonForm | undefined {
  return writtenForms.get(schema);
}
