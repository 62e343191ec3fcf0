/** Hose along streets, away from the page's own thread. */
import {
  buildStreetNetwork,
  hoseStreets,
  routeVia,
  type StreetNetwork,
  usableHydrants,
} from '@plugside/records/streets';
import { type Numbered, replyTo } from '../../worker/asked-worker.ts';
import type { HydrantAt, LoadStreets, StreetAnswers, StreetQuestion } from './messages.ts';

let network: StreetNetwork | undefined;
let hydrants: readonly HydrantAt[] = [];

function answerTo(
  question: StreetQuestion,
  streets: StreetNetwork,
): StreetAnswers[keyof StreetAnswers] {
  if (question.ask === 'route') return routeVia(streets, question.points);
  const { place, count, frontage } = question;
  return usableHydrants(streets, hydrants, place, { count, frontage }).map(
    ({ target, index: _, ...rest }) => ({ ...rest, id: target.id }),
  );
}

self.onmessage = ({ data }: MessageEvent<LoadStreets | Numbered<StreetQuestion>>) => {
  if (data.ask === 'load') {
    network = buildStreetNetwork(hoseStreets(data.streets));
    hydrants = data.hydrants;
    return;
  }
  replyTo<StreetQuestion>(data, (question) => {
    if (!network) throw new Error('The streets are not loaded yet.');
    return answerTo(question, network);
  });
};
