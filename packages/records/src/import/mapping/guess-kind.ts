import { polygonsOf } from '../place/shapes.ts';
import type { Source } from '../source/source.ts';
import { hasPlace } from './fields.ts';
import { guessMapping } from './guess-mapping.ts';
import { type ImportKind, importKinds } from './mapping.ts';
import { fits, osmMapping } from './osm-tags.ts';
import { requiredFields } from './required-fields.ts';

/** Fields that any list may have: they tell no kind. */
const common: ReadonlySet<string> = new Set(['name', 'note', 'elevationFt', 'owner', 'by', 'type']);
/** Fewer fields than this tell nothing. */
const LEAST_SCORE = 1.4;
/** The best must lead the kind that was asked for by this much. */
const LEAD = 1.5;

/**
 * The kind that a file's columns and drawings tell of; undefined where they tell none.
 * @param asked kept unless another is clearly likelier
 */
export function guessKind(source: Source, asked?: ImportKind): ImportKind | undefined {
  const scores = importKinds.map((kind) => ({ kind, score: scoreOf(kind, source) }));
  const best = scores.reduce((a, b) => (b.score > a.score ? b : a));
  if (best.score < LEAST_SCORE) return asked;
  const own = scores.find(({ kind }) => kind === asked);
  return own && best.score < own.score * LEAD ? asked : best.kind;
}

function scoreOf(kind: ImportKind, source: Source): number {
  const { sample } = source;
  if (sample.length === 0) return 0;
  const osm = osmMapping(kind, source);
  if (osm) {
    const mine = sample.filter(({ values }) =>
      osm.only.some(({ column, values: wanted }) => fits(values[column] ?? null, wanted)),
    );
    return (10 * mine.length) / sample.length;
  }
  const { fields, place } = guessMapping(kind, source);
  const telling = fields.filter(({ field, columns }) => !common.has(field) && columns.length > 0);
  let score = telling.reduce((sum, { confidence }) => sum + confidence, 0);
  const lacks = requiredFields[kind].some((field) => !fields.some((one) => one.field === field));
  if (lacks) score *= 0.2;
  if (hasPlace(kind)) {
    const placed = place?.geometry || place?.point !== undefined || place?.longitude !== undefined;
    if (!placed) score *= 0.2;
  }
  return score * drawingFits(kind, source);
}

/** Streets are lines, buildings areas or points, the others points. */
function drawingFits(kind: ImportKind, { hasGeometry, sample }: Source): number {
  const drawn = sample.flatMap(({ geometry }) => geometry ?? []);
  if (!hasGeometry || drawn.length === 0) return kind === 'streets' ? 0.3 : 1;
  if (!hasPlace(kind)) return 0.2;
  const lines = drawn.filter(({ type }) => type.endsWith('LineString')).length / drawn.length;
  const areas = drawn.filter((one) => polygonsOf(one).length > 0).length / drawn.length;
  if (kind === 'streets') return lines > 0.5 ? 3 : 0.1;
  if (kind === 'buildings') return areas > 0.5 ? 2 : 0.7;
  return lines > 0.5 || (areas > 0.5 && kind !== 'water-sources') ? 0.3 : 1;
}
