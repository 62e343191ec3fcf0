/** What a list shows beside the records themselves: names of those they belong to, and their tests. */
import type { Kind, Stored } from '@plugside/records/model';
import type { Values } from '../form/draft.ts';
import { recordsWhere } from '../lookups.ts';

export interface More {
  /** By id: the hydrant of a test, the rig of a hose. */
  names: ReadonlyMap<string, string>;
  /** By hydrant. */
  flowTests: ReadonlyMap<string, readonly Stored<'flow-tests'>[]>;
  /** By rig. */
  pumpTests: ReadonlyMap<string, readonly Stored<'pump-tests'>[]>;
}

export const NOTHING_MORE: More = { names: new Map(), flowTests: new Map(), pumpTests: new Map() };

/** Fields by which a kind names others that its list shows; some name several. */
const namedBy: Partial<Record<Kind, readonly { field: string; kind: Kind }[]>> = {
  'flow-tests': [{ field: 'hydrantId', kind: 'hydrants' }],
  'pump-tests': [{ field: 'rigId', kind: 'rigs' }],
  rigs: [{ field: 'stationId', kind: 'stations' }],
  hose: [{ field: 'rigId', kind: 'rigs' }],
  plans: [
    { field: 'buildingId', kind: 'buildings' },
    { field: 'hydrantIds', kind: 'hydrants' },
    { field: 'rigIds', kind: 'rigs' },
  ],
};

/** Fetches it for some records of a kind. */
export async function fetchMore(
  kind: Kind,
  records: readonly Values[],
  signal?: AbortSignal,
): Promise<More> {
  const ids = records.map(({ id }) => id as string);
  const named = namedBy[kind] ?? [];
  const [names, flowTests, pumpTests] = await Promise.all([
    Promise.all(
      named.map(({ field, kind: of }) =>
        namesOf(
          of,
          records.flatMap((one) => one[field]),
          signal,
        ),
      ),
    ).then((maps) => new Map(maps.flatMap((map) => [...map]))),
    kind === 'hydrants'
      ? recordsWhere('flow-tests', 'hydrantId', ids, signal).then((tests) =>
          groupedBy(tests, ({ hydrantId }) => hydrantId),
        )
      : new Map(),
    kind === 'rigs'
      ? recordsWhere('pump-tests', 'rigId', ids, signal).then((tests) =>
          groupedBy(tests, ({ rigId }) => rigId),
        )
      : new Map(),
  ]);
  return { names, flowTests, pumpTests };
}

async function namesOf(
  kind: Kind,
  ids: readonly unknown[],
  signal?: AbortSignal,
): Promise<Map<string, string>> {
  const wanted = ids.filter((id): id is string => typeof id === 'string');
  const found: readonly Values[] = await recordsWhere(kind, 'id', wanted, signal);
  return new Map(found.map(({ id, name }) => [id as string, String(name ?? '')]));
}

function groupedBy<T>(all: readonly T[], keyOf: (one: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return groups;
}

/** What is known of some records and of some others. */
export function joined(one: More, other: More): More {
  return {
    names: new Map([...one.names, ...other.names]),
    flowTests: new Map([...one.flowTests, ...other.flowTests]),
    pumpTests: new Map([...one.pumpTests, ...other.pumpTests]),
  };
}
