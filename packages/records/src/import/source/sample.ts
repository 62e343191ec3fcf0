import type { SourceRow } from './source.ts';

const FIRST = 100;
const OTHERS = 400;

/** The first rows, and others picked evenly from the rest whatever its length, the same ones each time. */
export class Sampler {
  readonly #first: SourceRow[] = [];
  #others: SourceRow[] = [];
  #every = 1;
  #count = 0;

  add(row: SourceRow): void {
    if (this.#first.length < FIRST) {
      this.#first.push(row);
      return;
    }
    if (this.#count % this.#every === 0) this.#others.push(row);
    this.#count += 1;
    if (this.#others.length === OTHERS) {
      this.#others = this.#others.filter((_, at) => at % 2 === 0);
      this.#every *= 2;
    }
  }

  get rows(): SourceRow[] {
    return [...this.#first, ...this.#others];
  }
}
