/** Which column holds which field, read off the schemas: scalars in columns of their type, the rest as JSON. */
import type { z } from 'zod';
import { type Kind, kinds, recordSchemas } from '../model/index.ts';

export type ColumnType = 'text' | 'double precision' | 'integer' | 'boolean' | 'json';

export interface Column {
  field: string;
  /** snake_case. */
  name: string;
  type: ColumnType;
  /** May not be left out; fields with a default always hold one. */
  required: boolean;
  /** A date or a moment as ISO text: in order as it is written. */
  isDate?: true;
}

export interface Table {
  kind: Kind;
  name: string;
  /** The kind's own fields, in the schema's order. */
  fields: readonly Column[];
  /** Those, with id, version and times before them. */
  columns: readonly Column[];
  byField: ReadonlyMap<string, Column>;
}

const envelope: readonly Column[] = [
  { field: 'id', name: 'id', type: 'text', required: true },
  { field: 'version', name: 'version', type: 'integer', required: true },
  { field: 'createdAt', name: 'created_at', type: 'text', required: true, isDate: true },
  { field: 'updatedAt', name: 'updated_at', type: 'text', required: true, isDate: true },
];

const tables = new Map(kinds.map((kind) => [kind, buildTable(kind)]));

/** The table of a kind. */
export function tableOf(kind: Kind): Table {
  const table = tables.get(kind);
  if (!table) throw new RangeError(`No kind of record is called "${kind}": ${kinds.join(', ')}.`);
  return table;
}

/** `hydrantId` → `hydrant_id`, `water-sources` → `water_sources`. */
export function snakeCase(name: string): string {
  return name.replaceAll('-', '_').replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

function buildTable(kind: Kind): Table {
  const shape: Record<string, z.ZodType> = recordSchemas[kind].shape;
  const fields = Object.entries(shape).map(([field, schema]) => columnOf(field, schema));
  const columns = [...envelope, ...fields];
  const byField = new Map(columns.map((column) => [column.field, column]));
  return { kind, name: snakeCase(kind), fields, columns, byField };
}

function columnOf(field: string, schema: z.ZodType): Column {
  let bare = schema;
  let required = true;
  for (;;) {
    const def = bare.def as z.core.$ZodOptionalDef<z.ZodType>;
    if (def.type === 'optional') required = false;
    if (!def.innerType) break;
    bare = def.innerType;
  }
  const isDate = (bare as z.ZodISODate).format === 'date';
  return {
    field,
    name: snakeCase(field),
    type: columnType(bare),
    required,
    ...(isDate && { isDate }),
  };
}

function columnType(schema: z.ZodType): ColumnType {
  switch (schema.def.type) {
    case 'string':
    case 'enum':
      return 'text';
    case 'boolean':
      return 'boolean';
    case 'number':
      return (schema as z.ZodNumber).format === 'safeint' ? 'integer' : 'double precision';
    default:
      return 'json';
  }
}
