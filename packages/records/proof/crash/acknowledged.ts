/** What the writer was told is kept, and whether it is. */
import type { RecordStore } from '@plugside/records';
import { collect } from '../acceptance/trial.ts';

export type Acknowledged =
  | { did: 'create'; id: string; name: string }
  | { did: 'change'; id: string; note: string }
  | { did: 'remove'; id: string }
  | { did: 'pair'; rig: string; hose: string }
  | { did: 'merge'; source: string; rows: number };

/** What was acknowledged and is not there. */
export async function lostFrom(
  store: RecordStore,
  acknowledged: readonly Acknowledged[],
): Promise<Acknowledged[]> {
  const lost: Acknowledged[] = [];
  for (const one of acknowledged) if (!(await kept(store, one))) lost.push(one);
  return lost;
}

async function kept(store: RecordStore, one: Acknowledged): Promise<boolean> {
  switch (one.did) {
    case 'create':
      return (await store.get('hydrants', one.id))?.name === one.name;
    case 'change':
      return (await store.get('hydrants', one.id))?.note === one.note;
    case 'remove':
      return (await store.get('hydrants', one.id)) === undefined;
    case 'pair':
      return (await store.get('hose', one.hose))?.rigId === one.rig;
    case 'merge': {
      const { total } = await store.list('buildings', {
        where: { externalSource: one.source },
        limit: 1,
      });
      return total === one.rows;
    }
  }
}

/** Work that is there in part: a list of 600 without all its rows, a rig without its hose. */
export async function halfDone(store: RecordStore): Promise<string[]> {
  const rows = new Map<string, number>();
  for (const { externalSource = '' } of await collect(store.all('buildings'))) {
    rows.set(externalSource, (rows.get(externalSource) ?? 0) + 1);
  }
  const lists = [...rows].filter(([, count]) => count !== 600).map(([source]) => source);
  const withHose = new Set((await collect(store.all('hose'))).map(({ rigId }) => rigId));
  const rigs = (await collect(store.all('rigs'))).filter(({ id }) => !withHose.has(id));
  return [...lists, ...rigs.map(({ name }) => name)];
}
