import type { Source } from '../source/source.ts';
import { dateOrderOf } from './date-order.ts';
import { fieldsByKind, hasPlace, originsField } from './fields.ts';
import { guessPlace } from './guess-place.ts';
import { commaInFile } from './guess-units.ts';
import { idColumnOf, nameAsId } from './id-column.ts';
import { refusedColumns, versionColumn } from './known-columns.ts';
import type { FieldMapping, ImportKind, Mapping } from './mapping.ts';
import { bestMatches, fieldMapping } from './match-columns.ts';
import { osmMapping } from './osm-tags.ts';
import { missingFieldNotice, requiredFields } from './required-fields.ts';
import { contradictions, footOnlyByClass, untoldService } from './service-notices.ts';
import { statedMapping } from './stated-mapping.ts';
import { settledSystem } from './unit-system.ts';

export interface GuessOptions {
  /** Name of the list; left out: the file's name without its ending. */
  sourceName?: string;
  /** Middle of what the department has already [longitude, latitude]. */
  district?: readonly [number, number];
}

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
  const matched = bestMatches(free, specs, source, comma, notices).map((match) => ({
    match,
    mapping: fieldMapping(match, source, comma, notices),
  }));
  for (const field of settledSystem(matched, source, notices)) {
    for (const column of field.columns) used.add(column);
    fields.push(field);
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

function statedSource(source: Source): string | undefined {
  const stated = source.sample[0]?.values.refused_source;
  return typeof stated === 'string' && stated !== '' ? stated : undefined;
}

const stem = (name: string) =>
  name
    .replace(/^.*[\\/]/, '')
    .replace(/\.(zip|csv|tsv|txt|geojson|json|geojsonl|ndjson|shp)$/i, '') || name;
