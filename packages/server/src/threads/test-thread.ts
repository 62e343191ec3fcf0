/** A thread for the tests of the pool: pieces that go on, fail and break down as they are told to. */
import { setTimeout as wait } from 'node:timers/promises';
import { threadId, workerData } from 'node:worker_threads';
import { ProblemError } from '../problem.ts';
import type { Asked, Pieces } from './piece.ts';
import { servePieces } from './serve-pieces.ts';

/** Seen by test and thread alike, whatever either is busy with. */
interface Gate {
  /** 0: shut, 1: opened by the test. */
  gate: Int32Array<SharedArrayBuffer>;
}

class OwnError extends Error {
  override name = 'OwnError';
}

export const testPieces = {
  'name thread': async (_given: null) => threadId,
  echo: async (given: unknown) => given,
  /** Hears nothing until the gate is opened. */
  'hold thread': async ({ gate }: Gate) => {
    Atomics.wait(gate, 0, 0);
    return threadId;
  },
  count: async (to: number, { tell }: Asked<number>) => {
    for (let at = 1; at <= to; at += 1) tell(at);
    return to;
  },
  /** Goes on until it is cancelled, and says so. */
  'wait for cancel': async ({ gate }: Gate, { signal, tell }: Asked<string>) => {
    tell('begun');
    while (!signal.aborted) await wait(5);
    Atomics.store(gate, 0, 1);
    signal.throwIfAborted();
  },
  /** Begins, and never hears anything again. */
  spin: async (_given: null, { tell }: Asked<string>) => {
    tell('begun');
    await wait(1);
    for (;;);
  },
  bytes: async (length: number) => new Uint8Array(length).fill(7),
  'part of bytes': async (_given: null) => new Uint8Array(8).fill(7).subarray(2, 5),
  'refuse with a problem': async (_given: null) => {
    throw new ProblemError({
      status: 422,
      title: 'Not accepted',
      detail: 'lengthFt is -5; allowed: 0 or more.',
      extra: { issues: [{ path: 'lengthFt' }] },
      headers: { 'X-Test': 'kept' },
    });
  },
  'fail otherwise': async (_given: null) => {
    throw new OwnError('no paper');
  },
  'give what cannot be copied': async (_given: null) => () => {},
  exit: async (_given: null) => process.exit(3),
  'throw outside': async (_given: null) => {
    setImmediate(() => {
      throw new Error('thrown by a callback, for a test');
    });
    await wait(60_000);
  },
} satisfies Pieces;

let opened = 0;
servePieces(testPieces, {
  open: async () => {
    opened += 1;
    const { failFirst } = workerData as { failFirst?: boolean };
    if (failFirst && opened === 1) throw new Error('The records cannot be opened.');
    return {};
  },
  problemOf: (error) => (error instanceof ProblemError ? error.problem : undefined),
});
