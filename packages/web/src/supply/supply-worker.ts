/** Ways worked out away from the page's own thread. */
import { chooseSupply, mishaps } from '@plugside/fireground';
import { type Numbered, replyTo } from '../worker/asked-worker.ts';
import type { SupplyAnswers, SupplyQuestion } from './messages.ts';

function answerTo(question: SupplyQuestion): SupplyAnswers[keyof SupplyAnswers] {
  const { units } = question;
  if (question.ask === 'choice') {
    return chooseSupply(question.situation, { units, ranking: question.ranking });
  }
  return mishaps(question.of, question.demandGpm, { units });
}

self.onmessage = ({ data }: MessageEvent<Numbered<SupplyQuestion>>) => replyTo(data, answerTo);
