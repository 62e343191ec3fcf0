import type { Cell, Source, SourceRow } from '../source/source.ts';
import { isBlank } from '../values/blank.ts';
import type { DateOrder } from '../values/dates.ts';
import { nameScore, plainName, unitInName } from './column-name.ts';
import { type FieldSpec, idNames } from './field-spec.ts';
import { fieldsByKind, hasPlace, originsField } from './fields.ts';
import { guessPlace } from './guess-place.ts';
import { decimalOf, unitFromValues } from './guess-units.ts';
import { refusedColumns, versionColumn } from './known-columns.ts';
import type { FieldMapping, ImportKind, Mapping } from './mapping.ts';
import { osmMapping } from './osm-tags.ts';
import { readValue } from './read-value.ts';
import { missingFieldNotice, requiredFields } from './required-fields.ts';

export interface GuessOptions {
  /** Name of the list; left out: the file's name without its ending. */
  sourceName?: string;
  /** Middle of what the department has already [longitude, latitude]. */
  district?: readonly [number, number];
}

/** A match under this is not made. */
const LEAST = 0.5;

/**
 * What each column of a file most likely means for a kind of record: by its name in the trade or in
 * OpenStreetMap, its unit by name or by the size of its values. Everything in it can be changed.
 */
export function guessMapping(
  kind: ImportKind,
  source: Source,
  options: GuessOptions = {},
): Mapping {
  const notices: string[] = [];
  const used = new Set<string>();
  const osm = osmMapping(kind, source);
  const fields: FieldMapping[] = [...(osm?.fields ?? [])];
  for (const { columns } of fields) for (const column of columns) used.add(column);
  if (osm) for (const { column } of osm.only) used.add(column);

  const place = hasPlace(kind) ? guessPlace(source, options.district) : undefined;
  for (const column of place?.columns ?? []) used.add(column);
  notices.push(...source.notices, ...(place?.notices ?? []));

  const taken = new Set(fields.map(({ field }) => field));
  const specs = [...fieldsByKind[kind], originsField].filter(({ field }) => !taken.has(field));
  const free = source.columns.filter(
    (column) =>
      column !== versionColumn &&
      !used.has(column) &&
      !refusedColumns.some((one) => one === column),
  );
  for (const match of bestMatches(free, specs, source)) {
    used.add(match.column);
    fields.push(fieldMapping(match, source, notices));
  }

  addNameBesideId(fields, source, used);
  const column = (name: string) => source.columns.find((one) => one === name);
  const idColumn = column('externalId') ?? idColumnOf(kind, source);
  if (idColumn !== undefined) used.add(idColumn);
  const sourceColumn = column('externalSource');
  const recordColumn = column('plugside_id');
  if (recordColumn !== undefined && place) {
    // Our own records: their places have been looked at before.
    place.place.farOff = 'take';
    delete place.place.near;
  }
  if (
    !fields.some(({ field }) => field === 'name') &&
    idColumn !== undefined &&
    kind !== 'streets' &&
    hasName(kind)
  ) {
    fields.push({
      field: 'name',
      columns: [idColumn],
      confidence: 0.5,
      why: 'No column is a name; the id stands in for it.',
    });
  }
  const dateOrder = dateOrderOf(fields, source.sample, kind, notices);
  const missing = requiredFields[kind].filter(
    (field) => !fields.some((one) => one.field === field),
  );
  for (const field of missing) {
    const label = fieldsByKind[kind].find((one) => one.field === field)?.label ?? field;
    notices.push(missingFieldNotice(label));
  }
  for (const one of [sourceColumn, recordColumn, column(versionColumn)]) {
    if (one !== undefined) used.add(one);
  }
  return {
    kind,
    sourceName: options.sourceName ?? statedSource(source) ?? stem(source.name),
    ...(idColumn !== undefined && { idColumn }),
    ...(sourceColumn !== undefined && { sourceColumn }),
    ...(recordColumn !== undefined && { recordColumn }),
    fields,
    ...(place && { place: place.place }),
    ...(osm && { only: osm.only }),
    ...(dateOrder && { dateOrder }),
    unused: source.columns.filter(
      (one) => !used.has(one) && !refusedColumns.some((other) => other === one),
    ),
    notices,
  };
}

/** Our own export has a record's name beside its id: where the id is of another store, the name tells. */
function addNameBesideId(fields: FieldMapping[], source: Source, used: Set<string>): void {
  for (const field of fields) {
    const name = field.field.replace(/Id$/, '');
    if (name === field.field || field.columns[0] !== field.field) continue;
    if (!source.columns.includes(name)) continue;
    field.columns.push(name);
    field.join = 'first';
    used.add(name);
  }
}

const hasName = (kind: ImportKind) => kind !== 'flow-tests';

interface Match {
  column: string;
  spec: FieldSpec;
  score: number;
  unit?: string;
  name: string;
  exact: boolean;
}

/** Each column to one field and each field to one column, the surest first. */
function bestMatches(
  columns: readonly string[],
  specs: readonly FieldSpec[],
  source: Source,
): Match[] {
  const all: Match[] = [];
  for (const column of columns) {
    const values = valuesOf(source.sample, column);
    for (const spec of specs) {
      const match = matchOf(column, spec, values);
      if (match.score >= LEAST) all.push(match);
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
  return kept;
}

function matchOf(column: string, spec: FieldSpec, values: readonly Cell[]): Match {
  if (column === spec.field) {
    const { unit } = spec.type.is === 'measure' ? unitInName(column, spec.type.of) : {};
    return { column, spec, score: 1, name: column, exact: true, ...(unit && { unit }) };
  }
  const { name, unit } =
    spec.type.is === 'measure'
      ? unitInName(column, spec.type.of)
      : { name: plainName(column), unit: undefined };
  let score = spec.not?.test(plainName(column)) ? 0 : nameScore(name, spec.names);
  if (score > 0 && unit !== undefined) score += 0.03;
  if (score > 0 && values.length > 0 && spec.type.is !== 'text' && spec.type.is !== 'reference') {
    const options = {
      decimal: decimalOf(values, undefined).decimal,
      dateOrder: 'day first' as const,
    };
    const good = values.filter((value) => readValue(value, spec, options).is !== 'fault').length;
    // A name that fits with values that do not is another thing by the same name.
    if (good < values.length / 2) score *= 0.4;
  }
  if (score > 0 && values.length === 0) score -= 0.05;
  const stated = spec.unitByName?.[name];
  const known = unit ?? stated;
  return { column, spec, score, name, exact: false, ...(known && { unit: known }) };
}

function fieldMapping(match: Match, source: Source, notices: string[]): FieldMapping {
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
    : decimalOf(values, source.delimiter);
  if (decimal !== 'point') mapping.decimal = decimal;
  if (doubt) notices.push(`${column}: ${doubt}.`);
  if (type.is !== 'measure') return mapping;
  if (match.unit !== undefined) {
    mapping.unit = match.unit;
    return mapping;
  }
  const bare = values.filter(
    (value) => typeof value === 'number' || !/[a-z"'′″]/i.test(String(value)),
  );
  const guess = unitFromValues(bare, type.of, decimal);
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

function valuesOf(sample: readonly SourceRow[], column: string): Cell[] {
  return sample
    .slice(0, 200)
    .map((row) => row.values[column] ?? null)
    .filter((value) => !isBlank(value, false));
}

/** The list's own id: a column of a name for it, filled and without repeats. */
function idColumnOf(kind: ImportKind, source: Source): string | undefined {
  for (const name of idNames) {
    // A test or a rig names its hydrant or station by an id that is not its own.
    if (kind === 'flow-tests' && /hyd|facility|asset|station|unit/.test(name)) continue;
    if (kind === 'rigs' && /station|hyd/.test(name)) continue;
    const column = source.columns.find((one) => {
      const plain = one.startsWith('@') ? one.toLowerCase() : plainName(one);
      return plain === name || plain.replaceAll(' ', '') === name.replaceAll(' ', '');
    });
    if (column === undefined) continue;
    const rows = source.sample.filter(({ fault }) => !fault);
    const values = rows
      .map((row) => row.values[column] ?? null)
      .filter((value) => !isBlank(value, false));
    const distinct = new Set(values.map(String)).size;
    const repeats = values.length - distinct;
    // A few repeats are slips, to be told one by one; many mean that it is no id.
    const isId = repeats <= Math.max(2, 0.1 * values.length) && distinct > values.length / 2;
    if (values.length >= 0.9 * rows.length && isId) {
      return column;
    }
  }
  return undefined;
}

/** From dates that can only be read one way. */
function dateOrderOf(
  fields: readonly FieldMapping[],
  sample: readonly SourceRow[],
  kind: ImportKind,
  notices: string[],
): DateOrder | undefined {
  const columns = fields
    .filter(
      ({ field }) => fieldsByKind[kind].find((one) => one.field === field)?.type.is === 'date',
    )
    .flatMap(({ columns: some }) => some);
  let [dayFirst, monthFirst, either] = [0, 0, 0];
  for (const row of sample) {
    for (const column of columns) {
      const figures = /^\s*(\d{1,2})[-/](\d{1,2})[-/]\d{2,4}\b/.exec(
        String(row.values[column] ?? ''),
      );
      if (!figures) continue;
      if (Number(figures[1]) > 12) dayFirst += 1;
      else if (Number(figures[2]) > 12) monthFirst += 1;
      else if (figures[1] !== figures[2]) either += 1;
    }
  }
  if (dayFirst > 0 && monthFirst === 0) return 'day first';
  if (monthFirst > 0 && dayFirst === 0) return 'month first';
  if (either > 0) notices.push('Dates can be read with the day or the month first: say which.');
  return undefined;
}

function statedSource(source: Source): string | undefined {
  const stated = source.sample[0]?.values.refused_source;
  return typeof stated === 'string' && stated !== '' ? stated : undefined;
}

const stem = (name: string) =>
  name
    .replace(/^.*[\\/]/, '')
    .replace(/\.(zip|csv|tsv|txt|geojson|json|geojsonl|ndjson|shp)$/i, '') || name;
