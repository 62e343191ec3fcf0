import { expect, it } from 'vitest';
import type { AskedWorker } from './asked-worker.ts';
import { stoppableWorker } from './stoppable-worker.ts';

interface Doubling {
  ask: 'double';
  of: number;
}

/** Workers that answer when the test lets them. */
function started() {
  const workers: {
    asked: number[];
    ended: boolean;
    answer(of: number): void;
    fail(of: number): void;
  }[] = [];
  const start = (): AskedWorker<Doubling, { double: number }> => {
    const open = new Map<number, { done(answer: unknown): void; failed(error: Error): void }>();
    const worker = {
      asked: [] as number[],
      ended: false,
      answer: (of: number) => open.get(of)!.done(of * 2),
      fail: (of: number) => open.get(of)!.failed(new Error(`no double of ${of}`)),
    };
    workers.push(worker);
    return {
      ask: ({ of }) =>
        new Promise((done, failed) => {
          worker.asked.push(of);
          open.set(of, { done: done as (answer: unknown) => void, failed });
        }),
      end: () => {
        worker.ended = true;
      },
    };
  };
  return { workers, service: stoppableWorker(start) };
}

it('answers, and passes on why a question has no answer', async () => {
  const { workers, service } = started();
  const [seven, nine] = [7, 9].map((of) => service.ask({ ask: 'double', of }));
  workers[0]!.answer(7);
  workers[0]!.fail(9);
  expect(await seven).toBe(14);
  await expect(nine).rejects.toThrow('no double of 9');
});

it('ends the worker of what is stopped, and asks the next for what others wait for', async () => {
  const { workers, service } = started();
  const stop = new AbortController();
  const stopped = service.ask({ ask: 'double', of: 1 }, stop.signal);
  const other = service.ask({ ask: 'double', of: 2 });
  stop.abort(new Error('stopped by hand'));
  await expect(stopped).rejects.toThrow('stopped by hand');
  expect(workers.map(({ ended, asked }) => ({ ended, asked }))).toEqual([
    { ended: true, asked: [1, 2] },
    { ended: false, asked: [2] },
  ]);
  // What the ended one still had under way counts no more.
  workers[0]!.fail(2);
  workers[1]!.answer(2);
  expect(await other).toBe(4);
});

it('ends no worker for what is answered already', async () => {
  const { workers, service } = started();
  const stop = new AbortController();
  const answered = service.ask({ ask: 'double', of: 3 }, stop.signal);
  workers[0]!.answer(3);
  expect(await answered).toBe(6);
  stop.abort();
  expect(workers).toHaveLength(1);
  expect(workers[0]!.ended).toBe(false);
});
