import { type AskedWorker, askedWorker } from '../worker/asked-worker.ts';
import type { SupplyAnswers, SupplyQuestion } from './messages.ts';

/** Works out ways of supply in a thread of its own. */
export type SupplyService = AskedWorker<SupplyQuestion, SupplyAnswers>;

export function startSupply(): SupplyService {
  const worker = new Worker(new URL('./supply-worker.ts', import.meta.url), { type: 'module' });
  return askedWorker(worker, 'The ways could not be worked out in this browser.');
}
