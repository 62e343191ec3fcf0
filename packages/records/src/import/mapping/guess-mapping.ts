import type { Cell, Source, SourceRow } from '../source/source.ts';
import { isBlank } from '../values/blank.ts';
import type { DateOrder } from '../values/dates.ts';
import { readMeasure } from '../values/measures.ts';
import { nameScore, plainName, strangeUnit, unitInName } from './column-name.ts';
import { asAsked } from './contrary.ts';
import { type FieldSpec, idNames } from './field-spec.ts';
import { fieldsByKind, hasPlace, originsField } from './fields.ts';
import { guessPlace } from './guess-place.ts';
import { commaInFile, decimalOf, unitFromValues } from './guess-units.ts';
import { refusedColumns, versionColumn } from './known-columns.ts';
import type { FieldMapping, ImportKind, Mapping } from './mapping.ts';
import { onFoot, osmMapping } from './osm-tags.ts';
import { readValue } from './read-value.ts';
import { missingFieldNotice, requiredFields } from './required-fields.ts';
import { statedMapping } from './stated-mapping.ts';

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
  const stated = statedMapping(kind, source);
  const known = stated ?? osmMapping(kind, source);
  const fields: FieldMapping[] = [...(known?.fields ?? [])];
  for (const { columns } of fields) for (const column of columns) used.add(column);
  for (const { column } of known?.only ?? []) used.add(column);

  const place = hasPlace(kind) ? guessPlace(source, options.district) : undefined;
  for (const column of place?.columns ?? []) used.add(column);
  notices.push(...source.notices, ...(place?.notices ?? []));

  if (!stated) fillByColumns(kind, source, fields, used, notices);
  const column = (name: string) => source.columns.find((one) => one === name);
  const idColumn = stated
    ? stated.idColumn
    : (column('externalId') ?? idColumnOf(kind, source) ?? nameAsId(kind, source, fields));
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
  const dateOrder = stated?.dateOrder ?? dateOrderOf(fields, source.sample, kind, notices);
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
    ...(known?.only && { only: known.only }),
    ...(dateOrder && { dateOrder }),
    unused: source.columns.filter(
      (one) => !used.has(one) && !refusedColumns.some((other) => other === one),
    ),
    notices,
  };
}

/** Fields from columns by their names and values. */
function fillByColumns(
  kind: ImportKind,
  source: Source,
  fields: FieldMapping[],
  used: Set<string>,
  notices: string[],
): void {
  const taken = new Set(fields.map(({ field }) => field));
  const specs = [...fieldsByKind[kind], originsField].filter(({ field }) => !taken.has(field));
  const free = source.columns.filter(
    (column) =>
      column !== versionColumn &&
      !used.has(column) &&
      !refusedColumns.some((one) => one === column),
  );
  const comma = commaInFile(source);
  for (const match of bestMatches(free, specs, source, comma, notices)) {
    used.add(match.column);
    fields.push(fieldMapping(match, source, comma, notices));
  }
  notices.push(...contradictions(kind, source, fields, free));
  notices.push(...untoldService(kind, source, fields, used, notices));
  const footOnly = footOnlyByClass(kind, source, fields);
  if (footOnly) fields.push(footOnly);

  addNameBesideId(fields, source, used);
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
  comma: boolean,
  notices: string[],
): Match[] {
  const all: Match[] = [];
  const unread: Unread[] = [];
  for (const column of columns) {
    const values = valuesOf(source.sample, column);
    for (const spec of specs) {
      const match = matchOf(column, spec, values, source, comma);
      if (match.score >= LEAST) all.push(match);
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
    notices.push(`${column} may be "${spec.label}", but ${said}: nothing is taken from it${all}.`);
  }
  return kept;
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

/** Ways on foot by the class that a list of streets has, where no column of its own says so. */
function footOnlyByClass(
  kind: ImportKind,
  { sample }: Source,
  fields: readonly FieldMapping[],
): FieldMapping | undefined {
  if (kind !== 'streets' || fields.some(({ field }) => field === 'footOnly')) return undefined;
  const column = fields.find(({ field }) => field === 'class')?.columns[0];
  if (column === undefined) return undefined;
  const word = (row: SourceRow) =>
    String(row.values[column] ?? '')
      .trim()
      .toLowerCase();
  if (!sample.some((row) => onFoot.has(word(row)))) return undefined;
  return {
    field: 'footOnly',
    columns: [column],
    words: { ...Object.fromEntries([...onFoot].map((one) => [one, true])), '*': false },
    confidence: 0.8,
    why: 'Some of its classes are ways on foot.',
  };
}

/** Columns that may tell which hydrants are out of service, where none is taken for it. */
function untoldService(
  kind: ImportKind,
  { columns, sample }: Source,
  fields: readonly FieldMapping[],
  used: ReadonlySet<string>,
  said: readonly string[],
): string[] {
  if (kind !== 'hydrants' || fields.some(({ field }) => field === 'status')) return [];
  const reason = fields.find(({ field }) => field === 'statusReason')?.columns[0];
  const hints = columns.filter(
    (column) =>
      (column === reason || !used.has(column)) &&
      /\boos\b|in service|out of service|abandoned|retired|removed|status reason/.test(
        plainName(column),
      ) &&
      valuesOf(sample, column).length > 0 &&
      !said.some((one) => one.startsWith(`${column} may be`)),
  );
  if (hints.length === 0) return [];
  const all = 'no column is taken for it, and all count as in service';
  return [`${hints.join(', ')} may tell which hydrants are out of service; ${all}.`];
}

/** Rows in which a column that is not taken says another thing of a choice than the one that is. */
function contradictions(
  kind: ImportKind,
  source: Source,
  fields: readonly FieldMapping[],
  columns: readonly string[],
): string[] {
  const taken = new Set(fields.flatMap((one) => one.columns));
  return fields.flatMap((field) => {
    const spec = fieldsByKind[kind].find((one) => one.field === field.field);
    const own = field.columns[0]!;
    if (!spec || field.columns.length !== 1) return [];
    if (spec.type.is !== 'choice' && spec.type.is !== 'yes-no') return [];
    const said = (row: SourceRow, column: string) => {
      const read = readValue(asAsked(row.values[column] ?? null, spec, column), spec);
      return read.is === 'value' ? read.value : undefined;
    };
    return columns.flatMap((other) => {
      if (taken.has(other) || spec.not?.test(plainName(other))) return [];
      if (nameScore(plainName(other), spec.names) < LEAST) return [];
      const rows = source.sample.filter((row) => {
        const [ours, theirs] = [said(row, own), said(row, other)];
        return ours !== undefined && theirs !== undefined && ours !== theirs;
      });
      const first = rows[0]?.number;
      if (first === undefined) return [];
      return `${spec.label} is taken from ${own}; ${other} says otherwise in ${rows.length} of the rows looked at (row ${first}): say which of them counts.`;
    });
  });
}

function fieldMapping(
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
  const guess = unitFromValues(bare, type.of, decimal);
  mapping.unit = guess.unit;
  if (guess.doubt && bare.length > 0) {
    notices.push(`${column}: its numbers carry no unit and are ${guess.doubt}.`);
    mapping.confidence = Math.min(mapping.confidence, 0.6);
    mapping.why = `Its numbers carry no unit and are ${guess.doubt}.`;
  }
  return mapping;
}

/** Numbers without a unit of their own. */
const bareOf = (values: readonly Cell[]) =>
  values.filter((value) => typeof value === 'number' || !/[a-z"'′″]/i.test(String(value)));

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

/**
 * The list's own id: a column of a name for it, filled and without repeats. Where that is a bare "id" of
 * whole numbers, which programs give out anew at each export, another column that names the thing's own
 * id goes before it.
 */
function idColumnOf(kind: ImportKind, source: Source): string | undefined {
  let bare: string | undefined;
  for (const name of idNames) {
    // A test or a rig names its hydrant or station by an id that is not its own.
    if (kind === 'flow-tests' && /hyd|facility|asset|station|unit/.test(name)) continue;
    if (kind === 'rigs' && /station|hyd/.test(name)) continue;
    if (bare !== undefined && !/\w\s?(id|no|number)$/.test(name)) continue;
    if (bare !== undefined && /global|osm|full|feature|object/.test(name)) continue;
    const column = source.columns.find((one) => {
      const plain = one.startsWith('@') ? one.toLowerCase() : plainName(one);
      return plain === name || plain.replaceAll(' ', '') === name.replaceAll(' ', '');
    });
    if (column === undefined || column === bare || !isKey(source, column)) continue;
    if (bare !== undefined || name !== 'id' || !isWholeNumbers(source, column)) return column;
    bare = column;
  }
  return bare;
}

const isWholeNumbers = ({ sample }: Source, column: string) =>
  sample.every(({ values }) => /^\d*$/.test(String(values[column] ?? '')));

/** Whether a column is filled, and tells the rows apart. */
function isKey(source: Source, column: string): boolean {
  const rows = source.sample.filter(({ fault }) => !fault);
  const values = rows
    .map((row) => row.values[column] ?? null)
    .filter((value) => !isBlank(value, false));
  const distinct = new Set(values.map(String)).size;
  const repeats = values.length - distinct;
  // A few repeats are slips, to be told one by one; many mean that it is no id.
  const isId = repeats <= Math.max(2, 0.1 * values.length) && distinct > values.length / 2;
  return values.length >= 0.9 * rows.length && isId;
}

/** Kinds whose names are numbers of their own, which stay when a place is measured anew. */
const namedByNumber: ReadonlySet<ImportKind> = new Set(['hydrants', 'stations']);

function nameAsId(kind: ImportKind, source: Source, fields: readonly FieldMapping[]) {
  const name = fields.find(({ field }) => field === 'name');
  if (!namedByNumber.has(kind) || name?.columns.length !== 1) return undefined;
  return isKey(source, name.columns[0]!) ? name.columns[0] : undefined;
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
