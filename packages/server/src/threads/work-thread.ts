/** One thread of a pool, and the piece of work that it has. */
import type { Worker } from 'node:worker_threads';
import { ProblemError } from '../problem.ts';
import { errorOf, type FromThread, type ToThread } from './messages.ts';

export interface Work {
  name: string;
  given: unknown;
  signal?: AbortSignal | undefined;
  onProgress?: ((progress: never) => void) | undefined;
}

interface Current {
  resolve(result: unknown): void;
  reject(error: unknown): void;
  onProgress: ((progress: never) => void) | undefined;
}

export class WorkThread {
  readonly #worker: Worker;
  readonly #graceMs: number;
  #current: Current | undefined;
  #isEnding = false;

  /**
   * @param graceMs how long a piece has to end by itself when it is cancelled [ms]
   * @param onGone called once, when the thread has ended, for whatever reason
   */
  constructor(worker: Worker, graceMs: number, onGone: () => void) {
    this.#worker = worker;
    this.#graceMs = graceMs;
    worker.on('message', (message: FromThread) => this.#hear(message));
    worker.on('error', (error) => console.error(error));
    worker.on('exit', () => {
      this.#isEnding = true;
      this.#current?.reject(stopped());
      onGone();
    });
    worker.unref();
  }

  /** It takes no more work: it has ended, or is about to. */
  get isEnding(): boolean {
    return this.#isEnding;
  }

  /**
   * Does a piece of work; settles when it has ended, one way or another. One at a time.
   * @throws the signal's reason where it was cancelled; ProblemError where the thread ended; what the piece threw
   */
  async do({ name, given, signal, onProgress }: Work): Promise<unknown> {
    let grace: NodeJS.Timeout | undefined;
    const cancel = () => {
      this.#say({ say: 'cancel' });
      grace = setTimeout(() => this.end(), this.#graceMs);
    };
    signal?.addEventListener('abort', cancel, { once: true });
    // A process whose other work is over does not wait for threads with nothing to do.
    this.#worker.ref();
    try {
      return await new Promise<unknown>((resolve, reject) => {
        this.#current = { resolve, reject, onProgress };
        this.#say({ say: 'do', name, given });
      });
    } finally {
      this.#current = undefined;
      this.#worker.unref();
      clearTimeout(grace);
      signal?.removeEventListener('abort', cancel);
      // However it ended: whoever cancelled it is told so, and has no result.
      signal?.throwIfAborted();
    }
  }

  /** Ends the thread in the middle of whatever it does. */
  async end(): Promise<void> {
    this.#isEnding = true;
    await this.#worker.terminate();
  }

  #say(message: ToThread): void {
    this.#worker.postMessage(message);
  }

  #hear(message: FromThread): void {
    if (message.say === 'progress') this.#current?.onProgress?.(message.progress as never);
    else if (message.say === 'result') this.#current?.resolve(message.result);
    else this.#current?.reject(errorOf(message.failure));
  }
}

function stopped(): ProblemError {
  return new ProblemError({
    status: 500,
    title: 'Server error',
    detail: 'The work stopped before it was done; the server’s log says why. Ask for it again.',
  });
}
