/**
 * Columns that are OpenStreetMap keys, as the OpenStreetMap wiki defines them ("Tag:emergency=
 * fire_hydrant", "Key:building", "Key:highway", "Tag:natural=water"): what each means for a kind.
 */
import type { Cell, Source, SourceRow } from '../source/source.ts';
import type { FieldMapping, ImportKind, RowFilter } from './mapping.ts';

interface Preset {
  only: readonly RowFilter[];
  fields: readonly (Omit<FieldMapping, 'confidence' | 'why'> & { why?: string })[];
}

const name = { field: 'name', columns: ['name', 'ref', 'addr:housename'], join: 'first' } as const;
const note = {
  field: 'note',
  columns: ['note', 'description', 'fire_hydrant:position', 'access'],
  join: 'named',
} as const;
const elevation = { field: 'elevationFt', columns: ['ele'], unit: 'm' } as const;

const foot = [
  'footway',
  'path',
  'steps',
  'pedestrian',
  'cycleway',
  'bridleway',
  'corridor',
  'elevator',
  'platform',
];

const presets: Partial<Record<ImportKind, Preset>> = {
  hydrants: {
    only: [{ column: 'emergency', values: ['fire_hydrant'] }],
    fields: [
      copy(name),
      { field: 'mainIn', columns: ['fire_hydrant:diameter'], unit: 'mm' },
      { field: 'type', columns: ['fire_hydrant:type'] },
      { field: 'sideOutlets', columns: ['fire_hydrant:couplings', 'couplings'], join: 'first' },
      { field: 'owner', columns: ['operator'] },
      { field: 'status', columns: ['operational_status'] },
      copy(elevation),
      copy(note),
    ],
  },
  stations: {
    only: [{ column: 'amenity', values: ['fire_station'] }],
    fields: [copy(name), copy(elevation), copy(note)],
  },
  'water-sources': {
    only: [
      { column: 'emergency', values: ['water_tank', 'fire_water_pond', 'suction_point'] },
      { column: 'man_made', values: ['reservoir_covered', 'water_tower', 'storage_tank'] },
      { column: 'natural', values: ['water'] },
      { column: 'waterway', values: ['river', 'stream', 'canal', 'ditch', 'riverbank'] },
      { column: 'landuse', values: ['reservoir', 'basin'] },
    ],
    fields: [
      copy(name),
      {
        field: 'kind',
        columns: ['emergency', 'man_made', 'water', 'waterway', 'natural', 'landuse'],
        join: 'first',
        words: { riverbank: 'river', reservoir: 'pond' },
      },
      {
        field: 'usableGal',
        columns: ['water_tank:volume', 'capacity', 'volume'],
        join: 'first',
        unit: 'm³',
      },
      copy(elevation),
      copy(note),
    ],
  },
  buildings: {
    only: [{ column: 'building', values: ['*'] }],
    fields: [
      copy(name),
      { field: 'address', columns: ['addr:housenumber', 'addr:street'], join: 'space' },
      { field: 'storeys', columns: ['building:levels'] },
      { field: 'construction', columns: ['building:material'] },
      {
        field: 'occupancy',
        columns: ['amenity', 'shop', 'leisure', 'office', 'building'],
        join: 'first',
        words: { yes: null },
      },
      copy(elevation),
      copy(note),
    ],
  },
  streets: {
    only: [{ column: 'highway', values: ['*'] }],
    fields: [
      { field: 'name', columns: ['name', 'ref'], join: 'first' },
      { field: 'class', columns: ['highway'] },
      {
        field: 'footOnly',
        columns: ['highway'],
        words: { ...Object.fromEntries(foot.map((one) => [one, true])), '*': false },
      },
      copy(note),
    ],
  },
};

function copy(field: {
  field: string;
  columns: readonly string[];
  join?: FieldMapping['join'];
  unit?: string;
}) {
  return { ...field, columns: [...field.columns] };
}

/**
 * Ways that no rig drives, by the class that a list of streets gives them: OpenStreetMap's words, the
 * feature classes of TIGER/Line for walkways, stairways, bike and bridle paths (S1710, S1720, S1820,
 * S1830), and the words that lists use (common practice, no source).
 */
export const onFoot: ReadonlySet<string> = new Set([
  ...foot,
  ...['s1710', 's1720', 's1820', 's1830'],
  ...['footpath', 'foot path', 'walkway', 'walking path', 'sidewalk', 'trail', 'pedestrian way'],
  ...['stairs', 'stairway', 'bike path', 'bicycle path', 'multi-use path', 'multi-use trail'],
]);

/** What the keys mean for the kind; undefined where the file has none that tell. */
export function osmMapping(
  kind: ImportKind,
  source: Pick<Source, 'columns' | 'sample'>,
): { fields: FieldMapping[]; only: RowFilter[] } | undefined {
  const preset = presets[kind];
  if (!preset) return undefined;
  const has = new Set(source.columns);
  const values = (column: string) => source.sample.map((row) => row.values[column] ?? null);
  const only = preset.only.filter(
    ({ column, values: wanted }) =>
      has.has(column) && values(column).some((value) => fits(value, wanted)),
  );
  // `building` and `natural` are words that others use too: two keys of the map, or a plain value of one.
  const marks = source.columns.filter((one) =>
    /^(addr:|building:|fire_hydrant:|@id|osm_id|highway|waterway|amenity|emergency|landuse|natural|surface|source)/.test(
      one,
    ),
  );
  if (only.length === 0 || marks.length < 2) return undefined;
  const fields = preset.fields.flatMap((one): FieldMapping[] => {
    const columns = one.columns.filter((column) => has.has(column));
    if (columns.length === 0) return [];
    const { join, ...rest } = one;
    return [
      {
        ...rest,
        columns,
        ...(join && (columns.length > 1 || join === 'named') && { join }),
        confidence: 0.95,
        why: 'The column is a key of OpenStreetMap.',
      },
    ];
  });
  return { fields, only };
}

/** The kind other than this one that a row is of by its keys; undefined where they tell none. */
export function osmKindOf({ values }: Pick<SourceRow, 'values'>, but: ImportKind) {
  const kinds = Object.keys(presets) as ImportKind[];
  return kinds.find(
    (kind) =>
      kind !== but &&
      presets[kind]!.only.some(({ column, values: wanted }) =>
        fits(values[column] ?? null, wanted),
      ),
  );
}

/** Whether a row's value is among those asked for. */
export function fits(value: Cell, wanted: readonly string[]): boolean {
  if (value === null || value === '') return false;
  return wanted.includes('*') || wanted.includes(String(value).trim().toLowerCase());
}
