/** Which column is which field: by its name, and by whether its values are of the kind. */
import type { Cell, Source } from '../source/source.ts';
import { readMeasure } from '../values/measures.ts';
import { nameScore, plainName, strangeUnit, unitInName } from './column-name.ts';
import { asAsked } from './contrary.ts';
import type { FieldSpec } from './field-spec.ts';
import { bareOf, decimalOf, type UnitGuess, unitFromValues } from './guess-units.ts';
import type { FieldMapping } from './mapping.ts';
import { readValue } from './read-value.ts';
import { valuesOf } from './sample-values.ts';

/** A match under this is not made. */
export const LEAST_MATCH = 0.5;

export interface Match {
  column: string;
  spec: FieldSpec;
  score: number;
  unit?: string;
  name: string;
  exact: boolean;
  /** What bare numbers are taken for together with other columns. */
  shared?: UnitGuess;
}

/** Each column to one field and each field to one column, the surest first. */
export function bestMatches(
  columns: readonly string[],
  specs: readonly FieldSpec[],
  source: Source,
  comma: boolean,
  notices: string[],
): Match[] {
  const all: Match[] = [];
  const unread: Unread[] = [];
  for (const column of columns) {
    const values = valuesOf(source.sample, column);
    for (const spec of specs) {
      const match = matchOf(column, spec, values, source, comma);
      if (match.score >= LEAST_MATCH) all.push(match);
      else if (match.unread) unread.push({ column, spec, said: match.unread });
    }
  }
  all.sort((a, b) => b.score - a.score);
  const fields = new Set<string>();
  const taken = new Set<string>();
  const kept: Match[] = [];
  for (const match of all) {
    if (fields.has(match.spec.field) || taken.has(match.column)) continue;
    fields.add(match.spec.field);
    taken.add(match.column);
    kept.push(match);
  }
  for (const { column, spec, said } of unread) {
    if (taken.has(column) || fields.has(spec.field)) continue;
    const all = /^(status|inService)$/.test(spec.field) ? ', and all count as in service' : '';
    notices.push(
      `${column}: it may be "${spec.label}", but ${said}. Nothing is taken from it${all}.`,
    );
  }
  sharePressureUnit(kept, source, comma);
  return kept;
}

/**
 * Pressures of one list are in one unit: the one that a head states, else the one that the greatest of
 * the columns tells. A pitot of 8 psi beside a static of 60 is no 8 bar.
 */
function sharePressureUnit(matches: readonly Match[], source: Source, comma: boolean): void {
  const isPressure = ({ type }: FieldSpec) => type.is === 'measure' && type.of === 'pressure';
  const pressures = matches.filter(({ spec, exact }) => isPressure(spec) && !exact);
  const bare = pressures.filter(({ unit }) => unit === undefined);
  const stated = pressures.filter(({ unit }) => unit !== undefined);
  const [first] = stated;
  const guesses = bare.map((match) => {
    const values = bareOf(valuesOf(source.sample, match.column));
    const { decimal } = decimalOf(values, source.delimiter, comma);
    return { match, guess: unitFromValues(values, 'pressure', decimal) };
  });
  const asOf = (unit: string, { column }: Match): UnitGuess => ({
    unit,
    doubt: `taken as ${unit}, as those of ${column}`,
  });
  if (first) {
    const isOne = stated.every(({ unit }) => unit === first.unit);
    for (const match of bare) if (isOne) match.shared = asOf(first.unit!, first);
    return;
  }
  // The greatest numbers are the surest: the others may be small for their unit.
  const [greatest] = guesses.sort((a, b) => (b.guess.median ?? 0) - (a.guess.median ?? 0));
  if (!greatest) return;
  for (const { match, guess } of guesses) {
    const { unit } = greatest.guess;
    const isSame = match === greatest.match || (guess.unit === unit && !guess.doubt);
    match.shared = isSame ? guess : asOf(unit, greatest.match);
  }
}

/** A column whose name is a field's, and why nothing can be taken from it. */
interface Unread {
  column: string;
  spec: FieldSpec;
  said: string;
}

function matchOf(
  column: string,
  spec: FieldSpec,
  values: readonly Cell[],
  source: Source,
  comma: boolean,
): Match & { unread?: string } {
  // A name such as "mainIn" is ours alone. "status" others use too, and "main" for its size: their values tell.
  const isOwn =
    /[A-Z[]/.test(spec.field) ||
    source.columns.includes('plugside_id') ||
    (spec.field === 'main' &&
      values.filter((value) => readMeasure(value, 'diameter').ok).length < values.length / 2);
  if (column === spec.field && isOwn) {
    const { unit } = spec.type.is === 'measure' ? unitInName(column, spec.type.of) : {};
    return { column, spec, score: 1, name: column, exact: true, ...(unit && { unit }) };
  }
  const { name, unit } =
    spec.type.is === 'measure'
      ? unitInName(column, spec.type.of)
      : { name: plainName(column), unit: undefined };
  let score = spec.not?.test(plainName(column)) ? 0 : nameScore(name, spec.names);
  const strange =
    score > 0 && spec.type.is === 'measure' && !unit
      ? strangeUnit(column, spec.type.of)
      : undefined;
  if (strange !== undefined) {
    const said = `"${strange}" is no unit that is known for it; say which unit it is`;
    return { column, spec, score: 0, name, exact: false, ...(score >= 0.55 && { unread: said }) };
  }
  if (score > 0 && unit !== undefined) score += 0.03;
  let unread: string | undefined;
  if (score > 0 && values.length > 0 && spec.type.is !== 'text' && spec.type.is !== 'reference') {
    const { decimal } = decimalOf(values, undefined, comma);
    const options = {
      own: source.columns.includes('plugside_id'),
      decimal,
      dateOrder: 'day first' as const,
      ...(spec.type.is === 'measure' && {
        unit: unit ?? unitFromValues(bareOf(values), spec.type.of, decimal).unit,
      }),
    };
    const isGood = (value: Cell) =>
      readValue(asAsked(value, spec, column), spec, options).is !== 'fault';
    const good = values.filter(isGood).length;
    // A name that fits with values that do not is another thing by the same name.
    if (good < values.length / 2) {
      if (score >= 0.85 && (spec.type.is === 'choice' || spec.type.is === 'yes-no')) {
        const words = [...new Set(values.filter((one) => !isGood(one)).map(String))];
        unread = `its words are not known (${words.slice(0, 4).join(', ')})`;
      }
      score *= 0.4;
    }
  }
  if (score > 0 && values.length === 0) score -= 0.05;
  const stated = spec.unitByName?.[name];
  const known = unit ?? stated;
  return {
    column,
    spec,
    score,
    name,
    exact: false,
    ...(known && { unit: known }),
    ...(unread && { unread }),
  };
}

export function fieldMapping(
  match: Match,
  source: Source,
  comma: boolean,
  notices: string[],
): FieldMapping {
  const { column, spec, score, exact } = match;
  const mapping: FieldMapping = {
    field: spec.field,
    columns: [column],
    confidence: Math.round(Math.min(1, score) * 100) / 100,
    why: exact ? "The column has the field's own name." : why(score),
  };
  const { type } = spec;
  if (type.is !== 'measure' && type.is !== 'number' && type.is !== 'count') return mapping;
  const values = valuesOf(source.sample, column);
  const { decimal, doubt } = exact
    ? { decimal: 'point' as const, doubt: undefined }
    : decimalOf(values, source.delimiter, comma);
  if (decimal !== 'point') mapping.decimal = decimal;
  if (doubt) notices.push(`${column}: ${doubt}.`);
  if (type.is !== 'measure') return mapping;
  if (match.unit !== undefined) {
    mapping.unit = match.unit;
    return mapping;
  }
  const bare = bareOf(values);
  const guess = match.shared ?? unitFromValues(bare, type.of, decimal);
  mapping.unit = guess.unit;
  if (guess.doubt && bare.length > 0) {
    notices.push(`${column}: its numbers carry no unit and are ${guess.doubt}.`);
    mapping.confidence = Math.min(mapping.confidence, 0.6);
    mapping.why = `Its numbers carry no unit and are ${guess.doubt}.`;
  }
  return mapping;
}

const why = (score: number) =>
  score >= 0.85
    ? "The column's name says so."
    : score >= 0.7
      ? "The column's name is the start of such a name, cut off."
      : "The column's name is near.";
