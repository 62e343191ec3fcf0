/** Which fields a list can be put in order by, read off the schemas. */
import type { z } from 'zod';
import { type Kind, kinds, recordSchemas } from './kinds.ts';

/** Texts too long to be put in order. */
const LONG: ReadonlySet<string> = new Set(['note', 'text']);

/** A test has no name: its hydrant's list is put in order by what the test says. */
const NAMELESS: ReadonlySet<string> = new Set(['planTestId']);

/** What the store finds out by itself. */
const found: Partial<Record<Kind, readonly string[]>> = {
  // Of the test that plans use: its date, and the flow at 20 psi.
  hydrants: ['testedOn', 'q20Gpm'],
  'flow-tests': ['q20Gpm'],
};

const byKind = new Map(kinds.map((kind) => [kind, fieldsOf(kind)]));

/**
 * Fields of a kind that a list can be put in order by. An id of another record stands for that
 * record's name; `q20Gpm` of a flow test is its flow at 20 psi, and `testedOn` and `q20Gpm` of a
 * hydrant are those of the test that plans use.
 */
export function sortFields(kind: Kind): readonly string[] {
  return byKind.get(kind) ?? [];
}

function fieldsOf(kind: Kind): readonly string[] {
  const shape: Record<string, z.ZodType> = recordSchemas[kind].shape;
  const single = Object.entries(shape)
    .filter(([field, schema]) => isSingle(schema) && !LONG.has(field) && !NAMELESS.has(field))
    .map(([field]) => field);
  return [...single, ...(found[kind] ?? []), 'createdAt', 'updatedAt'];
}

/** A text, a number, yes or no, one of a few: not a list or an object. */
function isSingle(schema: z.ZodType): boolean {
  let bare = schema;
  for (;;) {
    const { type, innerType } = bare.def as z.core.$ZodOptionalDef<z.ZodType>;
    if (!innerType) return ['string', 'enum', 'number', 'boolean'].includes(type);
    bare = innerType;
  }
}
