import { type AskedWorker, askedWorker } from '../../worker/asked-worker.ts';
import type { District } from '../district.ts';
import type { LoadStreets, StreetAnswers, StreetQuestion } from './messages.ts';

/** Hose along this district's streets. */
export type StreetService = AskedWorker<StreetQuestion, StreetAnswers>;

/** Starts a worker that knows the district's streets and hydrants. */
export function startStreets(district: District): StreetService {
  const worker = new Worker(new URL('./street-worker.ts', import.meta.url), { type: 'module' });
  const service: StreetService = askedWorker(
    worker,
    'The streets could not be worked out in this browser.',
  );
  const message: LoadStreets = {
    ask: 'load',
    streets: district.streets.map(({ geometry, properties }) => ({
      name: properties.name,
      path: geometry.coordinates,
      footOnly: properties.footOnly,
      class: properties.class,
    })),
    hydrants: district.hydrants.map(({ id, status, longitude, latitude }) => ({
      id,
      status,
      longitude,
      latitude,
    })),
  };
  worker.postMessage(message);
  return service;
}
