/**
 * How a list was read, beside its refused rows: a few rows alone no longer tell that 4.3 was bar, or
 * that the month came first.
 */
import { z } from 'zod';
import type { Source } from '../source/source.ts';
import { findUnit } from '../values/units.ts';
import { fieldSpec } from './fields.ts';
import type { FieldMapping, ImportKind, Mapping } from './mapping.ts';

const column = z.string().min(1).max(500);
const word = z.union([z.string(), z.number(), z.boolean(), z.null()]);

const statedSchema = z.object({
  kind: z.string(),
  fields: z
    .array(
      z.object({
        field: z.string().max(80),
        columns: z.array(column).min(1).max(50),
        join: z.enum(['first', 'space', 'named']).optional(),
        unit: z.string().max(20).optional(),
        decimal: z.enum(['point', 'comma']).optional(),
        words: z.record(z.string(), word).optional(),
      }),
    )
    .max(200),
  idColumn: column.optional(),
  dateOrder: z.enum(['day first', 'month first']).optional(),
  only: z
    .array(z.object({ column, values: z.array(z.string().max(500)).max(200) }))
    .max(50)
    .optional(),
});

export type StatedMapping = Pick<Mapping, 'fields' | 'idColumn' | 'dateOrder' | 'only'>;

/** For a cell of a file of refused rows. */
export function statedText({ kind, fields, idColumn, dateOrder, only }: Mapping): string {
  const plain = fields.map(({ confidence: _, why: __, ...field }) => field);
  return JSON.stringify({ kind, fields: plain, idColumn, dateOrder, only });
}

/**
 * What a file of refused rows says of how its list was read; undefined where it says nothing, or not
 * the same in all of its rows, or of another kind.
 */
export function statedMapping(kind: ImportKind, source: Source): StatedMapping | undefined {
  const said = new Set(
    source.sample.flatMap(({ values, fault }) => (fault ? [] : (values.refused_mapping ?? []))),
  );
  said.delete('');
  const [text] = said;
  if (said.size !== 1 || typeof text !== 'string') return undefined;
  const read = statedSchema.safeParse(parsed(text));
  if (!read.success || read.data.kind !== kind) return undefined;
  const has = (name: string | undefined) => name !== undefined && source.columns.includes(name);
  const { fields, idColumn, dateOrder, only } = read.data;
  return {
    fields: fields.filter((one) => isSound(kind, one) && one.columns.every(has)).map(withWhy),
    ...(has(idColumn) && { idColumn: idColumn! }),
    ...(dateOrder && { dateOrder }),
    ...(only && { only: only.filter((one) => has(one.column)) }),
  };
}

type Plain = z.infer<typeof statedSchema>['fields'][number];

function isSound(kind: ImportKind, { field, unit }: Plain): boolean {
  const type = fieldSpec(kind, field)?.type;
  return (
    type !== undefined &&
    (unit === undefined || (type.is === 'measure' && findUnit(unit, type.of) !== undefined))
  );
}

const withWhy = ({ field, columns, join, unit, decimal, words }: Plain): FieldMapping => ({
  field,
  columns,
  ...(join && { join }),
  ...(unit !== undefined && { unit }),
  ...(decimal && { decimal }),
  ...(words && { words }),
  confidence: 1,
  why: 'The file of refused rows says so.',
});

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
