import type { Source } from '../source/source.ts';
import { bareOf } from './guess-units.ts';
import type { FieldMapping } from './mapping.ts';
import type { Match } from './match-columns.ts';
import { valuesOf } from './sample-values.ts';

export interface MatchedField {
  match: Match;
  mapping: FieldMapping;
}

const imperial: ReadonlySet<string> = new Set([
  ...['psi', 'gpm', 'ft', 'in', 'gal', 'ft²', 'ftH2O', 'Imp gpm', 'Imp gal', 'ft³/s', 'MGD'],
]);

/**
 * In a list whose units are metric, by a head or by the size of mains and pressures, bare lengths are
 * metres and bare areas square metres; a bare flow may be in several units, so that nothing is taken
 * from its column. Every change is said.
 * @returns the fields that stay
 */
export function settledSystem(
  fields: readonly MatchedField[],
  source: Source,
  notices: string[],
): FieldMapping[] {
  const told = fields.flatMap(({ match, mapping }) => {
    const { type } = match.spec;
    if (type.is !== 'measure' || mapping.unit === undefined) return [];
    const bySize = type.of === 'diameter' || type.of === 'pressure';
    const says = match.unit !== undefined || (bySize && isBare(match, source));
    return says ? [mapping.unit] : [];
  });
  const isMetric = told.length > 0 && told.every((unit) => !imperial.has(unit));
  if (!isMetric) return fields.map(({ mapping }) => mapping);
  return fields.flatMap(({ match, mapping }) => {
    const { type } = match.spec;
    if (type.is !== 'measure' || match.unit !== undefined || !isBare(match, source)) return mapping;
    if (type.of !== 'length' && type.of !== 'area' && type.of !== 'flow') return mapping;
    const before = `${match.column}: its numbers carry no unit`;
    const at = notices.findIndex((one) => one.startsWith(before));
    if (at >= 0) notices.splice(at, 1);
    if (type.of === 'flow') {
      notices.push(
        `${before}, and the list's other units are metric. Say whether they are L/min, L/s or m³/h; nothing is taken from it till then.`,
      );
      return [];
    }
    const unit = type.of === 'length' ? 'm' : 'm²';
    const why = `taken as ${unit}, as the list's other units are metric`;
    notices.push(`${before} and are ${why}.`);
    return { ...mapping, unit, confidence: 0.6, why: `Its numbers carry no unit and are ${why}.` };
  });
}

/** Whether any of a column's numbers stands without a unit of its own. */
const isBare = ({ column }: Match, { sample }: Source) =>
  bareOf(valuesOf(sample, column)).length > 0;
