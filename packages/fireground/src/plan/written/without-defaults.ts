import { writtenPlanSchema } from './schema.ts';
import { objectSchemaFor, schemaAt, writtenDefault } from './walk.ts';

/** Same as written; numbers that carry their unit equal the bare default. */
function sameAsDefault(written: unknown, standing: unknown): boolean {
  if (written === standing) return true;
  if (typeof standing === 'number') {
    return typeof written === 'string' && Number.parseFloat(written) === standing;
  }
  return false;
}

const isEmpty = (value: unknown) =>
  value !== null && typeof value === 'object' && Object.keys(value).length === 0;

/** Leaves out undefined values and whatever reading would fill in by itself. */
export function withoutDefaults(written: Record<string, unknown>): Record<string, unknown> {
  return prune(writtenPlanSchema, written) as Record<string, unknown>;
}

function prune(schema: unknown, written: unknown): unknown {
  if (Array.isArray(written)) {
    return written.map((item, index) => prune(schemaAt(schema, written, index), item));
  }
  const shape = objectSchemaFor(schema, written)?.shape;
  if (!shape || written === null || typeof written !== 'object') return written;
  const kept: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(written)) {
    if (value === undefined) continue;
    const inner = prune(shape[key], value);
    const standing = writtenDefault(shape[key]);
    if (
      standing &&
      (sameAsDefault(inner, standing.value) || (isEmpty(inner) && isEmpty(standing.value)))
    ) {
      continue;
    }
    kept[key] = inner;
  }
  return kept;
}
