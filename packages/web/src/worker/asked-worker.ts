/** A worker that is asked questions and answers each by its number. */

export type Numbered<Question> = Question & { number: number };
export type Replied<Answer> =
  | { number: number; answer: Answer }
  | { number: number; problem: string };

export interface AskedWorker<Question extends { ask: string }, Answers extends object> {
  /** @throws Error in words where the question has no answer */
  ask<Q extends Question>(question: Q): Promise<Answers[Q['ask'] & keyof Answers]>;
  end(): void;
}

/** @param failure what is said where the worker itself fails */
export function askedWorker<Question extends { ask: string }, Answers extends object>(
  worker: Worker,
  failure: string,
): AskedWorker<Question, Answers> {
  const waiting = new Map<number, { done(answer: unknown): void; failed(error: Error): void }>();
  let asked = 0;
  worker.onmessage = ({ data }: MessageEvent<Replied<unknown>>) => {
    const one = waiting.get(data.number);
    waiting.delete(data.number);
    if ('answer' in data) one?.done(data.answer);
    else one?.failed(new Error(data.problem));
  };
  worker.onerror = () => {
    const error = new Error(failure);
    for (const one of waiting.values()) one.failed(error);
    waiting.clear();
  };
  return {
    ask: (question) =>
      new Promise((done, failed) => {
        asked += 1;
        waiting.set(asked, { done: done as (answer: unknown) => void, failed });
        worker.postMessage({ ...question, number: asked } satisfies Numbered<Question>);
      }),
    end: () => worker.terminate(),
  };
}

/** In the worker: what `work` answers, or why it cannot, under the question's number. */
export function replyTo<Question>(
  { number, ...question }: Numbered<Question>,
  work: (question: Question) => unknown,
): void {
  let reply: Replied<unknown>;
  try {
    reply = { number, answer: work(question as Question) };
  } catch (error) {
    reply = { number, problem: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply);
}
