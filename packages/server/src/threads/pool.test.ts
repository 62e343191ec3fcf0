/** The pool with real threads, whose pieces are `test-thread.ts`. */
import { getEventListeners } from 'node:events';
import { isMainThread, type Worker } from 'node:worker_threads';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { problemOf } from '../api/failure.ts';
import { ProblemError } from '../problem.ts';
import { type PoolSettings, type ThreadPool, threadPool } from './pool.ts';
import { startThread } from './start-thread.ts';
import type { testPieces } from './test-thread.ts';

type TestPool = ThreadPool<typeof testPieces>;

let pools: TestPool[] = [];
let workers: Worker[] = [];

function pool(settings: Partial<PoolSettings> = {}, data: object = {}): TestPool {
  const made = threadPool<typeof testPieces>({
    start: () => {
      const worker = startThread(new URL('test-thread.ts', import.meta.url), data);
      workers.push(worker);
      return worker;
    },
    mostThreads: 2,
    mostWaiting: 10,
    idleMs: 600_000,
    graceMs: 50,
    ...settings,
  });
  pools.push(made);
  return made;
}

const gate = () => new Int32Array(new SharedArrayBuffer(4));
function open(one: Int32Array<SharedArrayBuffer>): void {
  Atomics.store(one, 0, 1);
  Atomics.notify(one, 0);
}

const caught = (work: Promise<unknown>) =>
  work.then(
    () => {
      throw new Error('It should have failed.');
    },
    (error: unknown) => error as Error,
  );

const ended = (worker: Worker) =>
  worker.threadId === -1
    ? Promise.resolve()
    : new Promise<void>((resolve) => worker.once('exit', () => resolve()));

beforeEach(() => {
  [pools, workers] = [[], []];
});
afterEach(async () => {
  await Promise.all(pools.map((one) => one.close()));
  vi.restoreAllMocks();
});

describe('a piece of work', () => {
  it('is done in another thread, and none begins before there is work', async () => {
    const one = pool();
    expect(workers).toEqual([]);
    expect(isMainThread).toBe(true);
    expect(await one.run('name thread', null)).not.toBe(0);
    expect(workers).toHaveLength(1);
  });

  it('comes to the thread that worked last, while the others rest', async () => {
    const one = pool();
    const [first, second] = [gate(), gate()];
    const work = [first, second].map((held) => one.run('hold thread', { gate: held }));
    open(first);
    await work[0];
    open(second);
    const last = await work[1];
    for (let time = 0; time < 3; time += 1) {
      expect(await one.run('name thread', null)).toBe(last);
    }
  });

  it('tells how far it is, in order', async () => {
    const told: number[] = [];
    const result = await pool().run('count', 5, { onProgress: (at) => told.push(at) });
    expect([told, result]).toEqual([[1, 2, 3, 4, 5], 5]);
  });

  it('gives bytes as they are, alone in their memory or not', async () => {
    const one = pool();
    const bytes = await one.run('bytes', 1_000_000);
    expect(bytes).toHaveLength(1_000_000);
    expect(bytes.every((byte) => byte === 7)).toBe(true);
    expect([...(await one.run('part of bytes', null))]).toEqual([7, 7, 7]);
  });

  it('leaves the main thread free', async () => {
    const one = pool();
    await one.run('name thread', null);
    const held = gate();
    const work = one.run('hold thread', { gate: held });
    // The thread stands still; timers here go on, or this would never end.
    for (let tick = 0; tick < 20; tick += 1) await new Promise((go) => setTimeout(go, 1));
    open(held);
    await work;
  });
});

describe('what a piece throws', () => {
  it('is told over HTTP as it would have been on the main thread', async () => {
    const one = pool();
    const refused = await caught(one.run('refuse with a problem', null));
    expect(refused).toBeInstanceOf(ProblemError);
    expect(problemOf(refused)).toEqual({
      status: 422,
      title: 'Not accepted',
      detail: 'lengthFt is -5; allowed: 0 or more.',
      extra: { issues: [{ path: 'lengthFt' }] },
      headers: { 'X-Test': 'kept' },
    });
  });

  it('keeps its name, its message and the place where it was thrown', async () => {
    const error = await caught(pool().run('fail otherwise', null));
    expect(problemOf(error)).toBeUndefined();
    expect([error.name, error.message]).toEqual(['OwnError', 'no paper']);
    expect(error.stack).toContain('test-thread.ts');
  });

  it('may be that its result cannot be copied, or that there is no such piece', async () => {
    const one = pool();
    const name = 'fold a paper boat' as 'echo';
    expect((await caught(one.run(name, null))).message).toContain('fold a paper boat');
    const error = await caught(one.run('give what cannot be copied', null));
    expect(error.message).toContain('could not be cloned');
    expect(await one.run('echo', 'still there')).toBe('still there');
    expect(workers).toHaveLength(1);
  });

  it('may be that what it needs cannot be opened; the next tries again', async () => {
    const one = pool({}, { failFirst: true });
    const error = await caught(one.run('echo', 1));
    expect(error.message).toBe('The records cannot be opened.');
    expect(await one.run('echo', 2)).toBe(2);
    expect(workers).toHaveLength(1);
  });

  it('may be that what it is given cannot be copied', async () => {
    const one = pool();
    const error = await caught(one.run('echo', () => {}));
    expect(error.message).toContain('could not be cloned');
    expect(await one.run('echo', 1)).toBe(1);
  });
});

describe('a cancel', () => {
  it('ends a piece that listens, and its thread goes on', async () => {
    const one = pool({ graceMs: 600_000 });
    const abort = new AbortController();
    const heard = gate();
    const work = one.run(
      'wait for cancel',
      { gate: heard },
      { signal: abort.signal, onProgress: () => abort.abort(new Error('not wanted')) },
    );
    expect((await caught(work)).message).toBe('not wanted');
    expect(heard[0]).toBe(1);
    await one.run('echo', 1);
    expect(workers).toHaveLength(1);
  });

  it('ends a piece that does not listen, with its thread', async () => {
    const one = pool({ mostThreads: 1 });
    const abort = new AbortController();
    const { signal } = abort;
    const work = one.run('spin', null, { signal, onProgress: () => abort.abort() });
    expect((await caught(work)).name).toBe('AbortError');
    expect(workers[0]?.threadId).toBe(-1);
    expect(await one.run('echo', 'by another')).toBe('by another');
    expect(workers).toHaveLength(2);
  });

  it('takes a piece that waits out of the queue at once', async () => {
    const one = pool({ mostThreads: 1 });
    const held = gate();
    const first = one.run('hold thread', { gate: held });
    const abort = new AbortController();
    const waits = one.run('echo', 1, { signal: abort.signal });
    abort.abort();
    expect((await caught(waits)).name).toBe('AbortError');
    const gone = one.run('echo', 1, { signal: AbortSignal.abort() });
    expect((await caught(gone)).name).toBe('AbortError');
    open(held);
    await first;
  });
});

describe('a signal of many pieces', () => {
  it('is left alone by those that have ended', async () => {
    const one = pool({ mostThreads: 1 });
    const { signal } = new AbortController();
    await Promise.all([1, 2, 3].map((n) => one.run('echo', n, { signal })));
    expect(getEventListeners(signal, 'abort')).toEqual([]);
  });
});

describe('more work than threads', () => {
  it('waits in order, and is refused with when to come again beyond the bound', async () => {
    const one = pool({ mostThreads: 2, mostWaiting: 2 });
    const gates = [gate(), gate()];
    const held = gates.map((shut) => one.run('hold thread', { gate: shut }));
    const order: number[] = [];
    const waiting = [1, 2].map((n) => one.run('echo', n).then(() => order.push(n)));
    const problem = problemOf(await caught(one.run('echo', 3)));
    expect(problem).toMatchObject({ status: 503, title: 'Busy' });
    expect(Number(problem?.headers?.['Retry-After'])).toBeGreaterThan(0);
    expect(workers).toHaveLength(2);
    open(gates[0]!);
    await Promise.all(waiting);
    expect(order).toEqual([1, 2]);
    expect(await one.run('echo', 4)).toBe(4);
    open(gates[1]!);
    await Promise.all(held);
  });

  it('in the background leaves a thread to other work, and comes after it', async () => {
    const one = pool({ mostThreads: 2, mostWaiting: 5 });
    const shut = gate();
    const background = true;
    const held = one.run('hold thread', { gate: shut }, { background });
    let done = false;
    const behind = one.run('echo', 1, { background }).then(() => {
      done = true;
    });
    for (let n = 0; n < 5; n += 1) expect(await one.run('echo', n)).toBe(n);
    expect(done).toBe(false);
    open(shut);
    await Promise.all([held, behind]);
  });
});

describe('a thread that dies', () => {
  it.each(['exit', 'throw outside'] as const)(
    'by %s fails its piece alone with a problem, and another takes its place',
    async (death) => {
      const log = vi.spyOn(console, 'error').mockImplementation(() => {});
      const one = pool({ mostThreads: 1 });
      const failing = caught(one.run(death, null));
      const waiting = one.run('echo', 'after');
      expect(problemOf(await failing)).toMatchObject({ status: 500, title: 'Server error' });
      expect(await waiting).toBe('after');
      expect(workers).toHaveLength(2);
      if (death === 'throw outside') expect(String(log.mock.calls[0])).toContain('for a test');
    },
  );

  it('while it rests is not given work', async () => {
    const one = pool();
    await one.run('echo', 1);
    await workers[0]!.terminate();
    expect(await one.run('echo', 2)).toBe(2);
    expect(workers).toHaveLength(2);
  });
});

describe('threads end', () => {
  it('when they have had nothing to do for long', async () => {
    const one = pool({ idleMs: 1 });
    await one.run('echo', 1);
    await ended(workers[0]!);
    expect(await one.run('echo', 2)).toBe(2);
    expect(workers).toHaveLength(2);
  });

  it('all of them when the pool is closed, and what waits or is at work is told', async () => {
    const one = pool({ mostThreads: 2 });
    let waiting: Promise<Error> | undefined;
    const working: Promise<Error>[] = [];
    await new Promise<void>((begun) => {
      for (let time = 0; time < 2; time += 1) {
        working.push(caught(one.run('spin', null, { onProgress: () => begun() })));
      }
      waiting = caught(one.run('echo', 1));
    });
    await one.close();
    for (const error of await Promise.all([...working, waiting])) {
      expect(problemOf(error)).toMatchObject({ status: 503, title: 'Stopping' });
    }
    expect(workers.map(({ threadId }) => threadId)).toEqual([-1, -1]);
    expect(problemOf(await caught(one.run('echo', 1)))).toMatchObject({ status: 503 });
    expect(workers).toHaveLength(2);
  });
});
