/** What a field may hold, read off the records' own schemas, so that it is said in one place. */
import { type Kind, recordSchemas } from '@plugside/records/model';

export interface FieldLimits {
  /** A record cannot do without it. */
  required: boolean;
  /** In the inside unit; undefined where there is none. */
  min?: number;
  max?: number;
  /** The least value itself is not allowed: more than it. */
  above?: true;
  maxLength?: number;
  options?: readonly string[];
  /** What stands where nothing is given. */
  fallback?: unknown;
}

/** As far as is needed here, what a zod schema tells of itself. */
interface Schema {
  def: { type: string; innerType?: Schema; defaultValue?: unknown };
  safeParse(value: unknown): { success: boolean };
  shape?: Record<string, Schema>;
  element?: Schema;
  minValue?: number | null;
  maxValue?: number | null;
  maxLength?: number | null;
  options?: readonly string[];
}

/** zod gives a whole number these where nothing is said. */
const told = (value: number | null | undefined): value is number =>
  typeof value === 'number' && Number.isFinite(value) && Math.abs(value) < Number.MAX_SAFE_INTEGER;

/**
 * Limits of a field, or of one inside it: `['hose', 'lengthFt']` of rigs is a load's length.
 * @throws where the kind has no such field: a fault of the field table
 */
export function limitsAt(kind: Kind, path: readonly string[]): FieldLimits {
  let schema = recordSchemas[kind] as unknown as Schema;
  for (const step of path) {
    let inside = bare(schema);
    if (inside.def.type === 'array' && inside.element) inside = bare(inside.element);
    const next = inside.shape && Object.hasOwn(inside.shape, step) ? inside.shape[step] : undefined;
    if (!next) throw new Error(`${kind} has no field ${path.join('.')}.`);
    schema = next;
  }
  return limitsOf(schema);
}

function limitsOf(schema: Schema): FieldLimits {
  const inside = bare(schema);
  const limits: FieldLimits = { required: !schema.safeParse(undefined).success };
  if (schema.def.type === 'default') limits.fallback = schema.def.defaultValue;
  const { type } = inside.def;
  if (type === 'number') {
    if (told(inside.minValue)) {
      limits.min = inside.minValue;
      if (!inside.safeParse(inside.minValue).success) limits.above = true;
    }
    if (told(inside.maxValue)) limits.max = inside.maxValue;
  }
  if (type === 'string' && told(inside.maxLength)) limits.maxLength = inside.maxLength;
  if (type === 'enum' && inside.options) limits.options = inside.options;
  return limits;
}

/** Without what makes it optional or fills it in. */
function bare(schema: Schema): Schema {
  let inside = schema;
  while (inside.def.innerType) inside = inside.def.innerType;
  return inside;
}
