/** Hose along streets, away from the page's own thread. */
import {
  buildStreetNetwork,
  routeVia,
  type StreetNetwork,
  usableHydrants,
} from '@plugside/records/streets';
import type {
  FromStreets,
  HydrantAt,
  StreetAnswers,
  StreetQuestion,
  ToStreets,
} from './messages.ts';

let network: StreetNetwork | undefined;
let hydrants: readonly HydrantAt[] = [];

function answerTo(
  question: StreetQuestion,
  streets: StreetNetwork,
): StreetAnswers[keyof StreetAnswers] {
  if (question.ask === 'route') return routeVia(streets, question.points);
  return usableHydrants(streets, hydrants, question.place, { count: question.count }).map(
    ({ target, index: _, ...rest }) => ({ ...rest, id: target.id }),
  );
}

function reply(message: FromStreets): void {
  self.postMessage(message);
}

self.onmessage = ({ data }: MessageEvent<ToStreets>) => {
  if (data.ask === 'load') {
    network = buildStreetNetwork(data.streets);
    hydrants = data.hydrants;
    return;
  }
  const { number } = data;
  try {
    if (!network) throw new Error('The streets are not loaded yet.');
    reply({ number, answer: answerTo(data, network) });
  } catch (error) {
    reply({ number, problem: error instanceof Error ? error.message : String(error) });
  }
};
