import type { Origin } from '@plugside/fireground';

/** Numbers origins as they come up, so that a table says [2] and a list below says what 2 is. */
export class SourceList {
  readonly #texts: string[] = [];

  /** `[2]` */
  mark({ kind, text }: Origin): string {
    const whole = `${kind}: ${text}`;
    const at = this.#texts.indexOf(whole);
    if (at >= 0) return `[${at + 1}]`;
    this.#texts.push(whole);
    return `[${this.#texts.length}]`;
  }

  /** Every source with its number. */
  get lines(): string[] {
    return this.#texts.map((text, at) => `[${at + 1}] ${text}`);
  }
}
