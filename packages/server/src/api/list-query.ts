import { type Box, type Kind, type ListQuery, recordSchemas, type Sort } from '@plugside/records';
import { ProblemError } from '../problem.ts';

/** What a list may be asked for beside equal fields. */
export const listParameters = ['search', 'box', 'sort', 'limit', 'after'] as const;

type Shape = Record<string, { safeParse(value: unknown): { success: boolean } }>;

/**
 * A list's query as the store takes it. Any other name than those of `listParameters` is a field that must be equal; given several times, any of its values will do.
 * @throws ProblemError 400 naming the parameter, its value and what is allowed
 */
export function listQuery<K extends Kind>(kind: K, url: string): ListQuery<K> {
  const parameters = new URL(url).searchParams;
  const query: { -readonly [F in keyof ListQuery<Kind>]: ListQuery<Kind>[F] } = {};
  const where: Record<string, unknown> = {};
  for (const name of new Set(parameters.keys())) {
    const values = parameters.getAll(name);
    const value = values[0] ?? '';
    if (name === 'search') query.search = value;
    else if (name === 'after') query.after = value;
    else if (name === 'sort') query.sort = sortIn(value);
    else if (name === 'limit') query.limit = numberIn(name, value);
    else if (name === 'box') query.box = boxIn(value);
    else
      where[name] =
        values.length === 1
          ? typed(kind, name, value)
          : values.map((one) => typed(kind, name, one));
  }
  return { ...query, where } as ListQuery<K>;
}

/** `-mainIn`: by the field mainIn, turned round. Whether there is such a field, the store knows. */
function sortIn(value: string): Sort {
  return value.startsWith('-') ? { field: value.slice(1), descending: true } : { field: value };
}

function numberIn(name: string, value: string): number {
  if (/^\d{1,9}$/.test(value)) return Number(value);
  throw refused(name, value, 'a whole number, for instance 100');
}

function boxIn(value: string): Box {
  const parts = value.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (parts.length === 4 && parts.every(Number.isFinite)) return parts as unknown as Box;
  throw refused(
    'box',
    value,
    'west,south,east,north in degrees, for instance -71.2,42.3,-71.1,42.4',
  );
}

/** Text from an address as the field's own type. */
function typed(kind: Kind, name: string, value: string): unknown {
  const readings = [value, ...(isBoolean(value) ? [value === 'true'] : []), ...numbers(value)];
  const shape = recordSchemas[kind].shape as unknown as Shape;
  const field = Object.hasOwn(shape, name) ? shape[name] : undefined;
  if (!field) return name === 'version' ? (numbers(value)[0] ?? value) : value;
  return readings.find((one) => field.safeParse(one).success) ?? typeless(field, readings);
}

/** No reading fits the field's range; one of its type still makes a question, with no answers. */
function typeless(field: Shape[string], readings: readonly unknown[]): unknown {
  if (field?.safeParse(1).success || field?.safeParse(0.5).success) return readings.at(-1);
  return readings[0];
}

function numbers(value: string): number[] {
  const number = Number(value);
  return value.trim() !== '' && Number.isFinite(number) ? [number] : [];
}

function isBoolean(value: string): boolean {
  return value === 'true' || value === 'false';
}

function refused(path: string, value: string, allowed: string): ProblemError {
  const shown = value.length > 80 ? `${value.slice(0, 77)}...` : value;
  const message = `${path} is "${shown}"; allowed: ${allowed}.`;
  const remedy = 'Ask with an allowed value.';
  return new ProblemError({
    status: 400,
    title: 'Not understood',
    detail: `${message} ${remedy}`,
    extra: { issues: [{ path, value: shown, allowed, message, remedy }] },
  });
}
