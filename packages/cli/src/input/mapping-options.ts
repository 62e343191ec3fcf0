import type { FieldMapping, Mapping, Source } from '@plugside/records';
import { CommandFailure } from '../failure.ts';

type Records = typeof import('@plugside/records');

export interface MappingOptions {
  map?: string[];
  word?: string[];
  crs?: string;
  dates?: 'day-first' | 'month-first';
  exchange?: boolean;
}

const places = ['longitude', 'latitude', 'point'] as const;

/**
 * A guessed mapping with what the options say in its place.
 * @throws CommandFailure for a field, a column, a unit, a meaning or a coordinate system that there is not
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
  for (const said of options.word ?? []) addWord(fieldsByKind[mapping.kind], mapping, said);
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

/** `status=A=in service`: the last part is one of the field's own words, or "nothing". */
function addWord(
  specs: Records['fieldsByKind'][Mapping['kind']],
  mapping: Mapping,
  said: string,
): void {
  const [, field = '', word = '', means = ''] = /^([^=]+)=(.+)=([^=]+)$/.exec(said) ?? [];
  const type = specs.find((one) => one.field === field)?.type;
  const own = mapping.fields.find((one) => one.field === field);
  if (!own || (type?.is !== 'choice' && type?.is !== 'yes-no')) {
    throw new CommandFailure(
      `--word ${said}: write field=said=means, such as "status=A=in service"; "${field}" is no field with words that a column is taken for. Say its column with --map first.`,
    );
  }
  const meanings: Record<string, string | boolean | null> = {
    ...(type.is === 'yes-no'
      ? { yes: true, no: false }
      : Object.fromEntries(Object.values(type.words).map((one) => [one, one]))),
    nothing: null,
  };
  const meaning = meanings[means.trim().toLowerCase()];
  if (meaning === undefined) {
    throw new CommandFailure(
      `--word ${said}: ${field} cannot be "${means}". It is one of: ${Object.keys(meanings).join(', ')}.`,
    );
  }
  own.words = { ...own.words, [word.trim().toLowerCase()]: meaning };
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
