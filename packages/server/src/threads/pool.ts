/** A few threads that do named pieces of work, so that the main one has its hands free. */
import type { Worker } from 'node:worker_threads';
import { ProblemError } from '../problem.ts';
import type { GivenOf, Pieces, ProgressOf, ResultOf } from './piece.ts';
import { type Work, WorkThread } from './work-thread.ts';

export interface RunOptions<Progress> {
  /** Aborting it ends the work; `run` then rejects with the signal's reason, once it has ended. */
  signal?: AbortSignal;
  onProgress?(progress: Progress): void;
  /** Nobody waits for it at a screen: it comes after all other work, and one thread is kept from it. */
  background?: boolean;
}

export interface ThreadPool<P extends Pieces> {
  /**
   * Has a piece of work done in a thread.
   * @throws ProblemError 503 where too many wait already, or the server stops; 500 where the thread
   * ends before the work does; what the piece throws: as a ProblemError where it is told as a
   * problem over HTTP, else as an Error of the same name, message and stack
   */
  run<N extends keyof P & string>(
    name: N,
    given: GivenOf<P[N]>,
    options?: RunOptions<ProgressOf<P[N]>>,
  ): Promise<ResultOf<P[N]>>;
  /** Ends all threads, whatever they do. Nothing is taken on any more. */
  close(): Promise<void>;
}

export interface PoolSettings {
  /** Begins a thread that serves the pieces. Not called before there is work for it. */
  start(): Worker;
  /** At once [whole number ≥ 1]; with one alone, work in the background may keep other work waiting. */
  mostThreads: number;
  /** Pieces that wait for a thread, and as many again in the background [whole number ≥ 0]. */
  mostWaiting: number;
  /** A thread that has had nothing to do for so long is ended [ms]. */
  idleMs: number;
  /** How long a piece has to end by itself when it is cancelled; then its thread is ended [ms]. */
  graceMs: number;
}

interface Job extends Work {
  background: boolean;
  /** While it waits: takes it out of the queue when it is cancelled. */
  leave?: () => void;
  resolve(result: unknown): void;
  reject(error: unknown): void;
}

const RETRY_AFTER_S = 10;

export function threadPool<P extends Pieces>(settings: PoolSettings): ThreadPool<P> {
  const { start, mostThreads, mostWaiting, idleMs, graceMs } = settings;
  const threads = new Set<WorkThread>();
  /** With nothing to do; the one that worked last comes last, and is used first: it has read most. */
  const idle = new Map<WorkThread, NodeJS.Timeout>();
  const waiting: Job[] = [];
  const waitingBehind: Job[] = [];
  let atWorkBehind = 0;
  let closed = false;

  const begin = (): WorkThread | undefined => {
    if (threads.size >= mostThreads) return undefined;
    const thread = new WorkThread(start(), graceMs, () => {
      threads.delete(thread);
      wake(thread);
      next();
    });
    threads.add(thread);
    return thread;
  };

  const rest = (thread: WorkThread) => {
    const timer = setTimeout(() => {
      wake(thread);
      void thread.end();
    }, idleMs);
    idle.set(thread, timer.unref());
  };

  const wake = (thread: WorkThread | undefined): WorkThread | undefined => {
    if (!thread) return undefined;
    clearTimeout(idle.get(thread));
    idle.delete(thread);
    return thread;
  };

  const give = async (thread: WorkThread, job: Job) => {
    if (job.leave) job.signal?.removeEventListener('abort', job.leave);
    if (job.background) atWorkBehind += 1;
    const settle = await thread.do(job).then(
      (result) => () => job.resolve(result),
      (error) => () => job.reject(closed && !job.signal?.aborted ? stopping() : error),
    );
    if (job.background) atWorkBehind -= 1;
    // Before whoever asked goes on: what they ask for next finds this thread free.
    if (!thread.isEnding) rest(thread);
    next();
    settle();
  };

  const next = () => {
    while (!closed) {
      const mayBehind = atWorkBehind < Math.max(1, mostThreads - 1);
      const queue = waiting.length > 0 || !mayBehind ? waiting : waitingBehind;
      if (queue.length === 0) return;
      const thread = wake([...idle.keys()].at(-1)) ?? begin();
      if (!thread) return;
      void give(thread, queue.shift() as Job);
    }
  };

  const run = (name: string, given: unknown, options: RunOptions<never>): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const { signal, onProgress, background = false } = options;
      signal?.throwIfAborted();
      if (closed) throw stopping();
      const queue = background ? waitingBehind : waiting;
      const job: Job = { name, given, signal, onProgress, background, resolve, reject };
      queue.push(job);
      next();
      if (!queue.includes(job)) return;
      if (queue.length > mostWaiting) {
        queue.pop();
        throw busy(mostWaiting);
      }
      job.leave = () => {
        queue.splice(queue.indexOf(job), 1);
        reject(signal?.reason);
      };
      signal?.addEventListener('abort', job.leave, { once: true });
    });

  return {
    run: (name, given, options = {}) => run(name, given, options as RunOptions<never>) as never,
    close: async () => {
      closed = true;
      for (const job of [...waiting.splice(0), ...waitingBehind.splice(0)]) {
        if (job.leave) job.signal?.removeEventListener('abort', job.leave);
        job.reject(stopping());
      }
      await Promise.all([...threads].map((thread) => thread.end()));
    },
  };
}

function busy(mostWaiting: number): ProblemError {
  return new ProblemError({
    status: 503,
    title: 'Busy',
    detail: `${mostWaiting} others wait for such work already. Try again in ${RETRY_AFTER_S} s.`,
    headers: { 'Retry-After': String(RETRY_AFTER_S) },
  });
}

function stopping(): ProblemError {
  return new ProblemError({
    status: 503,
    title: 'Stopping',
    detail: 'The server is being stopped. Ask again when it runs again.',
    headers: { 'Retry-After': String(RETRY_AFTER_S) },
  });
}
