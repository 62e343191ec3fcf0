/** A thread's side: does the pieces of work that it is told to, one at a time. */
import { parentPort } from 'node:worker_threads';
import type { Problem } from '../problem.ts';
import { type FromThread, failureOf, type ToThread } from './messages.ts';
import type { Pieces } from './piece.ts';

export interface Serving {
  /** What pieces have at hand beside `Asked`: opened for the first, and again where that failed. */
  open(): Promise<object>;
  /** What an error is told as over HTTP; undefined for one that nobody foresaw. */
  problemOf(error: unknown): Problem | undefined;
}

/** Call it once, in a thread. */
export function servePieces(pieces: Pieces, { open, problemOf }: Serving): void {
  const port = parentPort;
  if (!port) throw new Error('Pieces of work are served in a thread alone.');
  const say = (message: FromThread, transfer: ArrayBuffer[] = []) =>
    port.postMessage(message, transfer);
  let opened: Promise<object> | undefined;
  let current: AbortController | undefined;

  const work = async (name: string, given: unknown): Promise<unknown> => {
    const abort = new AbortController();
    const { signal } = abort;
    current = abort;
    const tell = (progress: unknown) => {
      if (current === abort) say({ say: 'progress', progress });
    };
    try {
      opened ??= open().catch((error) => {
        opened = undefined;
        throw error;
      });
      const atHand = await opened;
      signal.throwIfAborted();
      const piece = pieces[name];
      if (!piece) throw new RangeError(`There is no piece of work called "${name}".`);
      return await piece(given, { ...atHand, signal, tell });
    } finally {
      current = undefined;
    }
  };

  port.on('message', (message: ToThread) => {
    if (message.say === 'cancel') {
      current?.abort();
      return;
    }
    work(message.name, message.given)
      .then((result) => say({ say: 'result', result }, handedOver(result)))
      .catch((error) => say({ say: 'failure', failure: failureOf(error, problemOf) }));
  });
}

/** Bytes that have their buffer to themselves. */
function handedOver(result: unknown): ArrayBuffer[] {
  if (!(result instanceof Uint8Array) || !(result.buffer instanceof ArrayBuffer)) return [];
  return result.byteLength === result.buffer.byteLength ? [result.buffer] : [];
}
