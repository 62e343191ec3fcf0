/** A stack of hydrant cards being printed into a file. */
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { ProblemError } from '../problem.ts';
import type { RecordThreads } from '../threads/record-threads.ts';
import type { CardsBody } from './cards-request.ts';

export type CardsState = 'running' | 'done' | 'cancelled' | 'failed';

/** A stack as it is told over HTTP. */
export interface CardsView {
  id: string;
  state: CardsState;
  progress: { done: number; total: number };
  /** Where the file can be had; null until it is done. */
  file: string | null;
  failure: { detail: string; remedy: string } | null;
}

export interface CardsWork {
  threads: RecordThreads;
  asked: CardsBody;
  /** How many cards it will be. */
  total: number;
  /** For the file and what is left of it when it is cut short: nothing else's. */
  folder: string;
}

export class CardsJob {
  readonly id: string;
  readonly #folder: string;
  readonly #path: string;
  readonly #total: number;
  #state: CardsState = 'running';
  #done = 0;
  #failure: CardsView['failure'] = null;
  readonly #abort = new AbortController();
  readonly #work: Promise<void>;

  /** Begins as soon as a thread has time for it. */
  constructor(id: string, { threads, asked, total, folder }: CardsWork) {
    this.id = id;
    this.#folder = folder;
    this.#path = join(folder, 'hydrant-cards.pdf');
    this.#total = total;
    const given = { asked, path: this.#path };
    const { signal } = this.#abort;
    const onProgress = (done: number) => {
      this.#done = done;
    };
    const printing = threads.run('print hydrant cards', given, {
      signal,
      onProgress,
      background: true,
    });
    this.#work = printing.then(
      () => {
        this.#state = 'done';
      },
      (error: unknown) => this.#fail(error),
    );
  }

  get isRunning(): boolean {
    return this.#state === 'running';
  }

  get view(): CardsView {
    const file = this.#state === 'done' ? `/api/paper/hydrant-cards/${this.id}/file.pdf` : null;
    return {
      id: this.id,
      state: this.#state,
      progress: { done: this.#done, total: this.#total },
      file,
      failure: this.#failure,
    };
  }

  /** @throws ProblemError 409 unless done */
  get file(): string {
    if (this.#state === 'done') return this.#path;
    throw new ProblemError({
      status: 409,
      title: 'Not ready',
      detail: `The cards are ${this.#state}. ${this.isRunning ? 'Wait until they are done.' : 'Ask for them again.'}`,
    });
  }

  /** Ends it with no file; one that is done stays so. */
  async cancel(): Promise<void> {
    this.#abort.abort();
    await this.#work;
  }

  /** Cancels it and removes its file. */
  async forget(): Promise<void> {
    await this.cancel();
    await this.#removeFile();
  }

  async #fail(error: unknown): Promise<void> {
    // A thread that was ended by force leaves what it had written.
    await this.#removeFile().catch((failed) => console.error(failed));
    if (this.#abort.signal.aborted) {
      this.#state = 'cancelled';
      return;
    }
    this.#state = 'failed';
    const isTold = error instanceof ProblemError;
    if (!isTold) console.error(error);
    this.#failure = {
      detail: isTold ? error.message : 'The cards could not be printed; the server’s log says why.',
      remedy: 'Ask for them again, or for fewer at once.',
    };
  }

  async #removeFile(): Promise<void> {
    await rm(this.#folder, { recursive: true, force: true });
  }
}
