import type { RecordStore } from '../store/index.ts';
import {
  buildStreetNetwork,
  type ClassedStreet,
  hoseStreets,
  rigRoads,
  type StreetNetwork,
} from '../streets/index.ts';
import { inTurns } from './in-turns.ts';

interface Networks {
  hose: StreetNetwork;
  /** Built when it is first asked for. */
  roads(): StreetNetwork;
}

const kept = new WeakMap<RecordStore, { revision: string; networks: Promise<Networks> }>();

/** The streets as a network to lay hose along, motorways left out; built anew only where a street changed. */
export async function districtStreets(store: RecordStore): Promise<StreetNetwork> {
  return (await networksOf(store)).hose;
}

/** The streets as a network that rigs drive, ways on foot left out; kept likewise. */
export async function districtRoads(store: RecordStore): Promise<StreetNetwork> {
  return (await networksOf(store)).roads();
}

async function networksOf(store: RecordStore): Promise<Networks> {
  const revision = await store.revision('streets');
  const before = kept.get(store);
  if (before?.revision === revision) return before.networks;
  const networks = readStreets(store).then((streets): Networks => {
    let roads: StreetNetwork | undefined;
    return {
      hose: buildStreetNetwork(hoseStreets(streets)),
      roads: () => {
        roads ??= buildStreetNetwork(rigRoads(streets));
        return roads;
      },
    };
  });
  kept.set(store, { revision, networks });
  networks.catch(() => kept.delete(store));
  return networks;
}

async function readStreets(store: RecordStore): Promise<ClassedStreet[]> {
  const streets: ClassedStreet[] = [];
  for await (const { name, path, footOnly, class: kind } of inTurns(store.all('streets'))) {
    streets.push({ name, path, footOnly, class: kind });
  }
  return streets;
}
