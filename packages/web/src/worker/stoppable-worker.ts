import type { AskedWorker } from './asked-worker.ts';

/** An asked worker of which single questions can be stopped. */
export interface StoppableWorker<Question extends { ask: string }, Answers extends object> {
  /**
   * @param signal stops the work: the promise then fails with the signal's reason
   * @throws Error in words where the question has no answer
   */
  ask<Q extends Question>(
    question: Q,
    signal?: AbortSignal,
  ): Promise<Answers[Q['ask'] & keyof Answers]>;
  end(): void;
}

interface Waiting<Question> {
  question: Question;
  done(answer: unknown): void;
  failed(error: unknown): void;
}

/**
 * A worker deep in its work hears nothing: it is ended, another is started, and what others still
 * wait for is asked of that one.
 */
export function stoppableWorker<Question extends { ask: string }, Answers extends object>(
  start: () => AskedWorker<Question, Answers>,
): StoppableWorker<Question, Answers> {
  let current = start();
  const waiting = new Set<Waiting<Question>>();
  const put = (one: Waiting<Question>) => {
    const asked = current;
    asked.ask(one.question).then(
      (answer) => asked === current && waiting.delete(one) && one.done(answer),
      (error) => asked === current && waiting.delete(one) && one.failed(error),
    );
  };
  const stop = (one: Waiting<Question>, reason: unknown) => {
    if (!waiting.delete(one)) return;
    current.end();
    current = start();
    for (const other of waiting) put(other);
    one.failed(reason);
  };
  return {
    ask: (question, signal) =>
      new Promise((done, failed) => {
        signal?.throwIfAborted();
        const one = { question, done: done as (answer: unknown) => void, failed };
        waiting.add(one);
        signal?.addEventListener('abort', () => stop(one, signal.reason), { once: true });
        put(one);
      }),
    end: () => {
      waiting.clear();
      current.end();
    },
  };
}
