import type { z } from 'zod';
import type { RecordOrigin } from './common.ts';
import { type Kind, recordSchemas } from './kinds.ts';

type Values = Readonly<Record<string, unknown>>;

/** Filled in by the schema where nobody entered anything. */
const FILLED_IN: RecordOrigin = { kind: 'default', text: 'filled in, nobody has entered it' };

/**
 * Where a value on record comes from: its own origin; else the schema's default where it is that;
 * else the list that the record came with, where no value of it says so itself. Undefined where the
 * department has typed it in.
 */
export function originOf(kind: Kind, record: Values, field: string): RecordOrigin | undefined {
  const origins = (record.origins ?? {}) as Readonly<Record<string, RecordOrigin | undefined>>;
  const own = origins[field];
  if (own) return own;
  if (isFilledIn(kind, record, field)) return FILLED_IN;
  const { externalSource: list } = record;
  if (typeof list !== 'string' || hasImported(origins)) return undefined;
  return { kind: 'imported', text: list };
}

/** Whether a value is the schema's own, and nothing says that anybody entered it. Not of lists and texts left empty. */
export function isFilledIn(kind: Kind, record: Values, field: string): boolean {
  const origins = (record.origins ?? {}) as Values;
  const value = record[field];
  if (origins[field] !== undefined || value === '' || typeof value === 'object') return false;
  return value !== undefined && value === defaultOf(kind, field);
}

/** Whether some value says that a list gave it: then those that do not are the department's. */
export const hasImported = (
  origins: Readonly<Record<string, { kind?: string } | undefined>>,
): boolean => Object.values(origins).some((one) => one?.kind === 'imported');

/** What the schema gives a field that was left out; undefined where nothing. */
export function defaultOf(kind: Kind, field: string): unknown {
  const shape = recordSchemas[kind].shape as Readonly<Record<string, z.ZodType | undefined>>;
  const def = shape[field]?.def as { type?: string; defaultValue?: unknown } | undefined;
  return def?.type === 'default' ? def.defaultValue : undefined;
}
