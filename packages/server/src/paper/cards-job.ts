/** A stack of hydrant cards being printed into a file. */
import { rm } from 'node:fs/promises';
import { type HydrantCard, type PaperOptions, renderHydrantCards, writePdf } from '@plugside/paper';
import { ProblemError } from '../problem.ts';

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
  cards: AsyncIterable<HydrantCard>;
  total: number;
  options: PaperOptions;
  /** Where the file goes. */
  path: string;
}

export class CardsJob {
  readonly id: string;
  readonly #path: string;
  readonly #total: number;
  #state: CardsState = 'running';
  #done = 0;
  #failure: CardsView['failure'] = null;
  readonly #abort = new AbortController();
  readonly #work: Promise<void>;

  /** Begins at once, in the background. */
  constructor(id: string, { cards, total, options, path }: CardsWork) {
    this.id = id;
    this.#path = path;
    this.#total = total;
    const { signal } = this.#abort;
    const onProgress = (done: number) => {
      this.#done = done;
    };
    const pdf = renderHydrantCards(cards, { ...options, total, signal, onProgress });
    this.#work = writePdf(path, pdf, signal).then(
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
    await rm(this.#path, { force: true });
  }

  #fail(error: unknown): void {
    if (this.#abort.signal.aborted) {
      this.#state = 'cancelled';
      return;
    }
    this.#state = 'failed';
    console.error(error);
    this.#failure = {
      detail: 'The cards could not be printed; the server’s log says why.',
      remedy: 'Ask for them again, or for fewer at once.',
    };
  }
}
