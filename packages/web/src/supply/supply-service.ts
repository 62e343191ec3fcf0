import { askedWorker } from '../worker/asked-worker.ts';
import { type StoppableWorker, stoppableWorker } from '../worker/stoppable-worker.ts';
import type { SupplyAnswers, SupplyQuestion } from './messages.ts';

/** Works out ways of supply in a thread of its own. */
export type SupplyService = StoppableWorker<SupplyQuestion, SupplyAnswers>;

export function startSupply(): SupplyService {
  return stoppableWorker(() =>
    askedWorker<SupplyQuestion, SupplyAnswers>(
      new Worker(new URL('./supply-worker.ts', import.meta.url), { type: 'module' }),
      'The ways could not be worked out in this browser.',
    ),
  );
}
