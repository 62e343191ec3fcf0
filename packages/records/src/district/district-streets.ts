import type { RecordStore } from '../store/index.ts';
import { buildStreetNetwork, type StreetLine, type StreetNetwork } from '../streets/index.ts';
import { inTurns } from './in-turns.ts';

const kept = new WeakMap<RecordStore, { revision: string; network: Promise<StreetNetwork> }>();

/** The streets as a network to lay hose along; built anew only where a street changed. */
export async function districtStreets(store: RecordStore): Promise<StreetNetwork> {
  const revision = await store.revision('streets');
  const before = kept.get(store);
  if (before?.revision === revision) return before.network;
  const network = readStreets(store).then((lines) => buildStreetNetwork(lines));
  kept.set(store, { revision, network });
  network.catch(() => kept.delete(store));
  return network;
}

async function readStreets(store: RecordStore): Promise<StreetLine[]> {
  const lines: StreetLine[] = [];
  for await (const { name, path, footOnly } of inTurns(store.all('streets'))) {
    lines.push({ name, path, footOnly });
  }
  return lines;
}
