import type { District } from '../district.ts';
import type { FromStreets, StreetAnswers, StreetQuestion, ToStreets } from './messages.ts';

/** Hose along this district's streets. */
export interface StreetService {
  /** @throws Error in words where the question has no answer */
  ask<Question extends StreetQuestion>(question: Question): Promise<StreetAnswers[Question['ask']]>;
  end(): void;
}

/** Starts a worker that knows the district's streets and hydrants. */
export function startStreets(district: District): StreetService {
  const worker = new Worker(new URL('./street-worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, { done(answer: unknown): void; failed(error: Error): void }>();
  let asked = 0;
  const send = (message: ToStreets) => worker.postMessage(message);
  worker.onmessage = ({ data }: MessageEvent<FromStreets>) => {
    const one = waiting.get(data.number);
    waiting.delete(data.number);
    if ('answer' in data) one?.done(data.answer);
    else one?.failed(new Error(data.problem));
  };
  worker.onerror = () => {
    const error = new Error('The streets could not be worked out in this browser.');
    for (const one of waiting.values()) one.failed(error);
    waiting.clear();
  };
  send({
    ask: 'load',
    streets: district.streets.map(({ geometry, properties }) => ({
      name: properties.name,
      path: geometry.coordinates,
      footOnly: properties.footOnly,
    })),
    hydrants: district.hydrants.map(({ id, status, longitude, latitude }) => ({
      id,
      status,
      longitude,
      latitude,
    })),
  });
  return {
    ask: (question) =>
      new Promise((done, failed) => {
        asked += 1;
        waiting.set(asked, { done: done as (answer: unknown) => void, failed });
        send({ ...question, number: asked });
      }),
    end: () => worker.terminate(),
  };
}
