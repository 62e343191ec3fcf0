/** What the map shows, layer by layer, kept ready until a record in it changes. */
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { inTurns, type Kind, planTests, type RecordStore, type Stored } from '@plugside/records';
import { type Bounds, boundsOf, joined } from './bounds.ts';
import {
  buildingFeature,
  type Feature,
  hydrantFeature,
  stationFeature,
  streetFeature,
  waterSourceFeature,
} from './features.ts';

export const layerNames = [
  'hydrants',
  'buildings',
  'streets',
  'stations',
  'water-sources',
] as const;
export type LayerName = (typeof layerNames)[number];

export interface Layer {
  /** Another text whenever a record in it has changed. */
  revision: string;
  /** A GeoJSON feature collection in UTF-8. */
  json: Uint8Array<ArrayBuffer>;
  /** The same, compressed. */
  gzipped: Uint8Array<ArrayBuffer>;
  /** Null where it is empty. */
  bounds: Bounds | null;
}

export interface MapLayers {
  /** As the records are now. */
  layer(name: LayerName): Promise<Layer>;
  /** Of all layers together; null where there is nothing. */
  bounds(): Promise<Bounds | null>;
}

const compress = promisify(gzip);

/** Kinds whose records a layer is made of. */
const madeOf: Readonly<Record<LayerName, readonly Kind[]>> = {
  hydrants: ['hydrants', 'flow-tests'],
  buildings: ['buildings'],
  streets: ['streets'],
  stations: ['stations'],
  'water-sources': ['water-sources'],
};

/** Layers over a store. Asking checks a revision of the records and rebuilds what is behind it. */
export function mapLayers(store: RecordStore): MapLayers {
  const kept = new Map<LayerName, Promise<Layer>>();
  const revisions = new Map<LayerName, string>();

  const layer = async (name: LayerName): Promise<Layer> => {
    // Taken before the records are read: a change meanwhile makes the layer stale, never lost.
    const revision = await revisionOf(store, name);
    const ready = kept.get(name);
    if (ready && revisions.get(name) === revision) return ready;
    const made = build(store, name, revision);
    kept.set(name, made);
    revisions.set(name, revision);
    made.catch(() => {
      if (kept.get(name) === made) kept.delete(name);
    });
    return made;
  };

  return {
    layer,
    bounds: async () => {
      let all: Bounds | null = null;
      for (const name of layerNames) all = joined(all, (await layer(name)).bounds);
      return all;
    },
  };
}

async function revisionOf(store: RecordStore, name: LayerName): Promise<string> {
  const each = await Promise.all(madeOf[name].map((kind) => store.revision(kind)));
  return each.join('-');
}

async function build(store: RecordStore, name: LayerName, revision: string): Promise<Layer> {
  const features = await featuresOf(store, name);
  const json = new TextEncoder().encode(JSON.stringify({ type: 'FeatureCollection', features }));
  const gzipped = new Uint8Array(await compress(json, { level: 4 }));
  return { revision, json, gzipped, bounds: boundsOf(features) };
}

async function featuresOf(store: RecordStore, name: LayerName): Promise<Feature[]> {
  switch (name) {
    case 'hydrants': {
      const hydrants = await everyOf(store, 'hydrants');
      const tests = await planTests(store, hydrants);
      return hydrants.map((hydrant) => hydrantFeature(hydrant, tests.get(hydrant.id)));
    }
    case 'buildings':
      return (await everyOf(store, 'buildings')).map(buildingFeature);
    case 'streets':
      return (await everyOf(store, 'streets')).map(streetFeature);
    case 'stations':
      return (await everyOf(store, 'stations')).map(stationFeature);
    case 'water-sources':
      return (await everyOf(store, 'water-sources')).map(waterSourceFeature);
  }
}

async function everyOf<K extends Kind>(store: RecordStore, kind: K): Promise<Stored<K>[]> {
  const records: Stored<K>[] = [];
  for await (const record of inTurns(store.all(kind))) records.push(record);
  return records;
}
