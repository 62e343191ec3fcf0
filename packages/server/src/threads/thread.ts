/** First file of a thread. Its `workerData` says where the records are. */
import { workerData } from 'node:worker_threads';
import { openStore, type StoreTarget } from '@plugside/records';
import { problemOf } from '../api/failure.ts';
import { districtTerrain } from '../elevation/district-terrain.ts';
import { pieces } from './pieces.ts';
import { servePieces } from './serve-pieces.ts';

export interface ThreadData {
  target: StoreTarget;
}

/** A thread has one piece of work at a time, and a server's connections are counted. */
const MOST_CONNECTIONS = 2;

const { target } = workerData as ThreadData;

servePieces(pieces, {
  open: async () => {
    const store = await openStore(target, { mostConnections: MOST_CONNECTIONS });
    return { store, terrain: districtTerrain(store) };
  },
  problemOf,
});
