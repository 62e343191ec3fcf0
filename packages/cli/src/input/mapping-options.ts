import type { FieldMapping, Mapping, Source } from '@plugside/records';
import { CommandFailure } from '../failure.ts';

type Records = typeof import('@plugside/records');

export interface MappingOptions {
  map?: string[];
  crs?: string;
  dates?: 'day-first' | 'month-first';
  exchange?: boolean;
}

const places = ['longitude', 'latitude', 'point'] as const;

/**
 * A guessed mapping with what the options say in its place.
 * @throws CommandFailure for a field, a column, a unit or a coordinate system that there is not
 */
export function withMappingOptions(
  { fieldsByKind, readCrs, unitsOf }: Records,
  guessed: Mapping,
  source: Source,
  options: MappingOptions,
): Mapping {
  const mapping = structuredClone(guessed);
  for (const said of options.map ?? []) {
    const { field, column, unit } = readOption(said, source);
    if (!source.columns.includes(column)) {
      throw new CommandFailure(
        `--map ${said}: ${source.name} has no column "${column}". It has: ${source.columns.join(', ')}.`,
      );
    }
    const place = places.find((one) => one === field);
    if (place && mapping.place) {
      mapping.place[place] = column;
      continue;
    }
    if (field === 'id') {
      mapping.idColumn = column;
      continue;
    }
    const spec = fieldsByKind[mapping.kind].find((one) => one.field === field);
    if (!spec) {
      const known = fieldsByKind[mapping.kind].map((one) => one.field).join(', ');
      throw new CommandFailure(
        `--map ${said}: ${mapping.kind} have no field "${field}". Fields: id, ${mapping.place ? `${places.join(', ')}, ` : ''}${known}.`,
      );
    }
    const units = spec.type.is === 'measure' ? unitsOf(spec.type.of) : [];
    if (unit !== undefined && !units.includes(unit)) {
      throw new CommandFailure(
        `--map ${said}: ${field} cannot be in "${unit}". ${units.length > 0 ? `Units: ${units.join(', ')}.` : 'It has no unit.'}`,
      );
    }
    put(mapping, { field, columns: [column], unit });
  }
  if (options.crs !== undefined) {
    const read = readCrs(options.crs);
    if (!read.ok) throw new CommandFailure(`--crs: ${read.reason} ${read.remedy}`);
    if (mapping.place) {
      mapping.place.crs = options.crs;
      // The middle was found in another coordinate system.
      delete mapping.place.near;
    }
  }
  if (options.dates)
    mapping.dateOrder = options.dates === 'day-first' ? 'day first' : 'month first';
  if (options.exchange && mapping.place) mapping.place.swapped = 'exchange';
  return mapping;
}

/** `field=column@unit`; a column's own name may have an @ in it. */
function readOption(said: string, { columns }: Source) {
  const [, field = '', rest = ''] = /^([^=]+)=(.*)$/.exec(said) ?? [];
  const at = rest.lastIndexOf('@');
  if (columns.includes(rest) || at < 0) return { field, column: rest, unit: undefined };
  return { field, column: rest.slice(0, at), unit: rest.slice(at + 1) };
}

function put(
  mapping: Mapping,
  said: Pick<FieldMapping, 'field' | 'columns'> & { unit: string | undefined },
): void {
  const { unit, ...rest } = said;
  const guess = mapping.fields.find(
    ({ field, columns }) => field === said.field && columns[0] === said.columns[0],
  );
  const field: FieldMapping = {
    ...(guess?.unit !== undefined && { unit: guess.unit }),
    ...(guess?.decimal !== undefined && { decimal: guess.decimal }),
    ...rest,
    ...(unit !== undefined && { unit }),
    confidence: 1,
    why: 'Said by --map.',
  };
  mapping.fields = [...mapping.fields.filter((one) => one.field !== said.field), field];
}
