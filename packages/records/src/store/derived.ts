/** Columns that the store fills by itself, so that both databases search, sort and cut the same way. */
import { flowTestResult } from '@plugside/fireground';
import { type Fields, type Kind, kinds, recordSchemas } from '../model/index.ts';
import { folded } from './folded.ts';
import { nameKey } from './name-key.ts';

type Values = Readonly<Record<string, unknown>>;

/** What is stored must not hang on the day: whoever reads it asks whether a test is dated ahead. */
const NO_DAY_IS_AHEAD = '9998-12-31';

export interface DerivedColumn {
  name: string;
  type: 'text' | 'double precision';
  /** Never null. */
  required: boolean;
}

/** Fields whose words a search looks through; the name stands first. */
const searched = [
  'name',
  'address',
  'owner',
  'type',
  'size',
  'class',
  'by',
  'occupancy',
  'construction',
  'statusReason',
  'access',
  'externalId',
  'note',
] as const;

const text = (name: string): DerivedColumn => ({ name, type: 'text', required: true });
const number = (name: string): DerivedColumn => ({
  name,
  type: 'double precision',
  required: true,
});

const columns = new Map(kinds.map((kind) => [kind, columnsOf(kind)]));

/** The derived columns of a kind's table. */
export function derivedColumns(kind: Kind): readonly DerivedColumn[] {
  return columns.get(kind) ?? [];
}

/** Whether records of the kind have a name, and with it a column to put them in order by it. */
export function isNamed(kind: Kind): boolean {
  return 'name' in recordSchemas[kind].shape;
}

function columnsOf(kind: Kind): readonly DerivedColumn[] {
  return [
    text('search_text'),
    ...(isNamed(kind) ? [text('name_key')] : []),
    ...(kind === 'streets'
      ? ['path_west', 'path_south', 'path_east', 'path_north'].map(number)
      : []),
    ...(kind === 'flow-tests' ? [{ ...number('q20_gpm'), required: false }] : []),
  ];
}

/** Their values, in the same order. */
export function derivedCells(kind: Kind, fields: Values): (string | number | null)[] {
  return [
    searchText(fields),
    ...(isNamed(kind) ? [nameKey(fields.name as string)] : []),
    ...(kind === 'streets' ? pathBox(fields.path as readonly (readonly [number, number])[]) : []),
    // Null also tells that plans cannot use the test.
    ...(kind === 'flow-tests'
      ? [
          flowTestResult(fields as unknown as Fields<'flow-tests'>, { today: NO_DAY_IS_AHEAD })
            .q20Gpm,
        ]
      : []),
  ];
}

function searchText(fields: Values): string {
  const words = searched.map((field) => fields[field]).filter((one) => typeof one === 'string');
  return folded(words.join('\n'));
}

function pathBox(path: readonly (readonly [number, number])[]): number[] {
  const box = [Infinity, Infinity, -Infinity, -Infinity] as [number, number, number, number];
  for (const [longitude, latitude] of path) {
    box[0] = Math.min(box[0], longitude);
    box[1] = Math.min(box[1], latitude);
    box[2] = Math.max(box[2], longitude);
    box[3] = Math.max(box[3], latitude);
  }
  return box;
}
