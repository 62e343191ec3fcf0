import * as z from 'zod';

/** Looking into the schema: which keys a place in a written plan may have. */

function unwrap(schema: unknown): unknown {
  let inner = schema;
  while (
    inner instanceof z.ZodOptional ||
    inner instanceof z.ZodDefault ||
    inner instanceof z.ZodPrefault
  ) {
    inner = inner.def.innerType;
  }
  return inner;
}

/** The object schema that describes `value`: a union is decided by its `kind`. */
export function objectSchemaFor(schema: unknown, value: unknown): z.ZodObject | undefined {
  const inner = unwrap(schema);
  if (inner instanceof z.ZodObject) return inner;
  if (!(inner instanceof z.ZodDiscriminatedUnion)) return undefined;
  const kind = (value as { kind?: unknown } | null | undefined)?.kind;
  return inner.def.options
    .filter((option): option is z.ZodObject => option instanceof z.ZodObject)
    .find((option) => {
      const literal = option.shape.kind;
      return literal instanceof z.ZodLiteral && literal.values.has(kind as never);
    });
}

/** The schema one step further in. */
export function schemaAt(schema: unknown, value: unknown, step: string | number): unknown {
  const inner = unwrap(schema);
  if (typeof step === 'number') {
    return inner instanceof z.ZodArray ? inner.def.element : undefined;
  }
  return objectSchemaFor(inner, value)?.shape[step];
}

/** The value that a key takes where it is left out, as it would be written. */
export function writtenDefault(schema: unknown): { value: unknown } | undefined {
  if (schema instanceof z.ZodPrefault || schema instanceof z.ZodDefault) {
    return { value: schema.def.defaultValue };
  }
  return undefined;
}
