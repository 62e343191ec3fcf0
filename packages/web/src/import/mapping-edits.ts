/** What each column of a file is taken for, and changing it: plain functions on the mapping. */
import {
  crsRemedy,
  type FieldMapping,
  fieldSpec,
  fieldsByKind,
  hasPlace,
  type ImportKind,
  type Mapping,
  missingFieldNotice,
  noPlaceNotice,
  projectionNotice,
  refusedColumns,
  requiredFields,
  unitInName,
  unitsOf,
} from '@plugside/records/import-fields';

/** What a column can be taken for: a field's name, or one of these. */
export type Meaning = 'key' | 'longitude' | 'latitude' | 'point' | `field:${string}`;

export interface MeaningOption {
  value: Meaning;
  text: string;
}

/** Every meaning that a column of a kind can have, in the order offered. */
export function meaningsOf(kind: ImportKind): MeaningOption[] {
  return [
    { value: 'key', text: 'Key: the list’s own id of each row' },
    ...(hasPlace(kind)
      ? ([
          { value: 'longitude', text: 'Longitude (x, easting)' },
          { value: 'latitude', text: 'Latitude (y, northing)' },
          { value: 'point', text: 'Place in one column' },
        ] as const)
      : []),
    ...fieldsByKind[kind].map(({ field, label }) => ({
      value: `field:${field}` as const,
      text: requiredFields[kind].includes(field) ? `${label} (needed)` : label,
    })),
  ];
}

export function meaningText(kind: ImportKind, meaning: Meaning): string {
  if (meaning === 'key') return 'Key';
  const option = meaningsOf(kind).find(({ value }) => value === meaning);
  return option?.text ?? meaning.replace('field:', '');
}

/** What a column is taken for, in the order that a mapping names it. */
export function meaningsFor(mapping: Mapping, column: string): Meaning[] {
  const { idColumn, place, fields } = mapping;
  const found: Meaning[] = [];
  if (idColumn === column) found.push('key');
  if (place?.longitude === column) found.push('longitude');
  if (place?.latitude === column) found.push('latitude');
  if (place?.point === column) found.push('point');
  for (const { field, columns } of fields) {
    if (columns.includes(column)) found.push(`field:${field}`);
  }
  return found;
}

/** What a column does beside giving a value: nothing to choose, but to be told. */
export function otherUseOf(mapping: Mapping, column: string): string | null {
  if (mapping.sourceColumn === column) return 'the list that the row first came from';
  if (mapping.recordColumn === column) return 'the record’s own id';
  if (column === 'plugside_version') return 'the version that was exported';
  const only = mapping.only?.find((one) => one.column === column);
  return only ? 'which rows are taken' : null;
}

/** Takes a column for something more. A field that has a column already takes the first with a value. */
export function withMeaning(mapping: Mapping, column: string, meaning: Meaning): Mapping {
  if (meaning === 'key') return tidied({ ...mapping, idColumn: column }, column);
  if (meaning === 'longitude' || meaning === 'latitude') {
    const { point: _, pointOrder: __, ...rest } = mapping.place ?? blankPlace;
    return tidied({ ...mapping, place: { ...rest, geometry: false, [meaning]: column } }, column);
  }
  if (meaning === 'point') {
    const { longitude: _, latitude: __, ...rest } = mapping.place ?? blankPlace;
    return tidied({ ...mapping, place: { ...rest, geometry: false, point: column } }, column);
  }
  const name = meaning.slice('field:'.length);
  const there = mapping.fields.find(({ field }) => field === name);
  const fields = there
    ? mapping.fields.map((one) =>
        one === there
          ? { ...one, columns: [...new Set([...one.columns, column])], join: one.join ?? 'first' }
          : one,
      )
    : [...mapping.fields, newField(mapping.kind, name, column)];
  return tidied({ ...mapping, fields }, column);
}

const blankPlace: NonNullable<Mapping['place']> = {
  geometry: false,
  crs: 'EPSG:4326',
  swapped: 'refuse',
  farOff: 'refuse',
};

function newField(kind: ImportKind, field: string, column: string): FieldMapping {
  const type = fieldSpec(kind, field)?.type;
  const unit =
    type?.is === 'measure' ? (unitInName(column, type.of).unit ?? unitsOf(type.of)[0]) : undefined;
  return {
    field,
    columns: [column],
    ...(unit !== undefined && { unit }),
    confidence: 1,
    why: 'Chosen by hand.',
  };
}

/** Takes a meaning from a column; what it gave with other columns, they go on giving. */
export function withoutMeaning(mapping: Mapping, column: string, meaning: Meaning): Mapping {
  if (meaning === 'key') {
    const { idColumn: _, ...rest } = mapping;
    return tidied(rest, column);
  }
  if (meaning === 'longitude' || meaning === 'latitude' || meaning === 'point') {
    if (!mapping.place) return mapping;
    const { [meaning]: _, ...place } = mapping.place;
    return tidied({ ...mapping, place }, column);
  }
  const name = meaning.slice('field:'.length);
  const fields = mapping.fields.flatMap((one) => {
    if (one.field !== name) return [one];
    const columns = one.columns.filter((other) => other !== column);
    return columns.length > 0 ? [{ ...one, columns }] : [];
  });
  return tidied({ ...mapping, fields }, column);
}

/** One meaning in place of another. */
export const withOtherMeaning = (
  mapping: Mapping,
  column: string,
  before: Meaning,
  after: Meaning,
): Mapping => withMeaning(withoutMeaning(mapping, column, before), column, after);

/** Changes how a field reads its columns: its unit, its decimals, how several are joined, its words. */
export function withField(
  mapping: Mapping,
  field: string,
  changes: Partial<Pick<FieldMapping, 'unit' | 'decimal' | 'join' | 'words'>>,
): Mapping {
  const fields = mapping.fields.map((one) =>
    one.field === field ? { ...one, ...changes, confidence: 1, why: 'Chosen by hand.' } : one,
  );
  const columns = mapping.fields.find((one) => one.field === field)?.columns ?? [];
  return columns.reduce(tidied, { ...mapping, fields });
}

/** Another coordinate system; what was asked about the one before is answered. */
export function withCrs(mapping: Mapping, crs: string): Mapping {
  const { near: _, ...place } = mapping.place ?? blankPlace;
  return {
    ...mapping,
    place: { ...place, crs },
    notices: mapping.notices.filter(
      (notice) => notice !== projectionNotice && !notice.endsWith(crsRemedy),
    ),
  };
}

/** Required fields that no column gives. */
export const missingFields = ({ kind, fields }: Mapping): string[] =>
  requiredFields[kind].filter((name) => !fields.some(({ field }) => field === name));

/** Notices that a change by hand has answered go; a column that gives nothing is told as unused. */
function tidied(mapping: Mapping, column: string): Mapping {
  const missing = missingFields(mapping);
  const answered = requiredFields[mapping.kind]
    .filter((field) => !missing.includes(field))
    .map((field) => missingFieldNotice(fieldSpec(mapping.kind, field)?.label ?? field));
  if (hasColumnsForPlace(mapping)) answered.push(noPlaceNotice);
  const used =
    meaningsFor(mapping, column).length > 0 ||
    otherUseOf(mapping, column) !== null ||
    refusedColumns.some((one) => one === column);
  const others = mapping.unused.filter((one) => one !== column);
  return {
    ...mapping,
    notices: mapping.notices.filter(
      (notice) => !answered.includes(notice) && !notice.startsWith(`${column}: `),
    ),
    unused: used ? others : [...others, column],
  };
}

const hasColumnsForPlace = ({ place }: Mapping) =>
  place?.point !== undefined || (place?.longitude !== undefined && place.latitude !== undefined);
