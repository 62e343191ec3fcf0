/** What a body's field may be, in words, by the schema that it is read with. */
import { z } from '@hono/zod-openapi';
import { formatNumber } from '@plugside/fireground';

/** The parts of a JSON Schema (2020-12) that our bodies use. */
export interface FieldSchema {
  type?: string;
  enum?: unknown[];
  const?: unknown;
  minimum?: number;
  exclusiveMinimum?: number;
  maximum?: number;
  exclusiveMaximum?: number;
  minLength?: number;
  maxLength?: number;
  minItems?: number;
  maxItems?: number;
  pattern?: string;
  items?: FieldSchema;
  prefixItems?: FieldSchema[];
  properties?: Record<string, FieldSchema>;
  required?: string[];
  additionalProperties?: FieldSchema | boolean;
  anyOf?: FieldSchema[];
  oneOf?: FieldSchema[];
}

/** By the ending of a field's name, which tells its unit. */
const UNITS: readonly [ending: string, unit: string][] = [
  ['Gpm', 'gpm'],
  ['Psi', 'psi'],
  ['Min', 'min'],
  ['Ft2', 'ft²'],
  ['Ft', 'ft'],
  ['Gal', 'gal'],
  ['Mi', 'mi'],
];

const known = new WeakMap<z.ZodType, FieldSchema>();

export function jsonSchemaOf(schema: z.ZodType): FieldSchema {
  const found = known.get(schema);
  if (found) return found;
  const made = z.toJSONSchema(schema, {
    io: 'input',
    reused: 'inline',
    unrepresentable: 'any',
  }) as FieldSchema;
  known.set(schema, made);
  return made;
}

/** The part of a schema at a path; undefined where it knows none. */
export function fieldAt(
  schema: FieldSchema,
  path: readonly PropertyKey[],
): FieldSchema | undefined {
  let at: FieldSchema | undefined = schema;
  for (const step of path) {
    if (!at) return undefined;
    if (typeof step === 'number') at = at.prefixItems?.[step] ?? at.items;
    else {
      const more: FieldSchema | boolean | undefined = at.additionalProperties;
      at = at.properties?.[String(step)] ?? (typeof more === 'object' ? more : undefined);
    }
  }
  return at;
}

/** "gpm" for `demandGpm`, "min" for one of `arrivesMin`; empty where the name tells none. */
export function unitOf(path: readonly PropertyKey[]): string {
  for (const step of [...path].reverse()) {
    const unit = UNITS.find(([ending]) => String(step).endsWith(ending))?.[1];
    if (unit) return unit;
  }
  return '';
}

/** "a number from 1 to 20,000 gpm"; undefined where the schema says it in no simple way. */
export function allowedWords(field: FieldSchema, unit = ''): string | undefined {
  const choices = field.enum ?? (field.const === undefined ? undefined : [field.const]);
  if (choices) return choices.map(String).join(' or ');
  switch (field.type) {
    case 'number':
    case 'integer':
      return numberWords(field, unit);
    case 'string': {
      if (field.pattern !== undefined) return undefined;
      const count = countWords(field.minLength, field.maxLength);
      return count === '' ? 'text' : `text of ${count} characters`;
    }
    case 'array': {
      const count = countWords(field.minItems, field.maxItems);
      return count === '' ? 'a list' : `a list of ${count}`;
    }
    case 'boolean':
      return 'true or false';
    case 'object':
      return field.properties
        ? `an object of ${Object.keys(field.properties).join(', ')}`
        : 'an object';
    default:
      return undefined;
  }
}

/** A whole number's own ends are those of JavaScript, and no limit to anybody. */
const isLimit = (value: number | undefined): value is number =>
  value !== undefined && Math.abs(value) < Number.MAX_SAFE_INTEGER;

function numberWords(field: FieldSchema, unit: string): string {
  const kind = field.type === 'integer' ? 'a whole number' : 'a number';
  const { minimum, exclusiveMinimum, maximum, exclusiveMaximum } = field;
  const after = unit === '' ? '' : ` ${unit}`;
  if (isLimit(minimum) && isLimit(maximum)) {
    return `${kind} from ${shown(minimum)} to ${shown(maximum)}${after}`;
  }
  const least = isLimit(minimum)
    ? `${shown(minimum)} or more`
    : isLimit(exclusiveMinimum)
      ? `above ${shown(exclusiveMinimum)}`
      : '';
  const most = isLimit(maximum)
    ? `at most ${shown(maximum)}`
    : isLimit(exclusiveMaximum)
      ? `under ${shown(exclusiveMaximum)}`
      : '';
  const limits = [least, most].filter((words) => words !== '').join(', ');
  return `${kind}${limits === '' ? '' : `, ${limits}`}${unit === '' ? '' : ` (${unit})`}`;
}

/** "1 to 300", "at most 40" */
function countWords(least: number | undefined, most: number | undefined): string {
  if (least !== undefined && most !== undefined) return `${shown(least)} to ${shown(most)}`;
  if (most !== undefined) return `at most ${shown(most)}`;
  return least === undefined ? '' : `${shown(least)} or more`;
}

function shown(value: number): string {
  return formatNumber(value, String(value).split('.')[1]?.length ?? 0);
}
