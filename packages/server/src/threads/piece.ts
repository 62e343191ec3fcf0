/** What a piece of work is to those who ask for it and to those who write one. */

/** What every piece has at hand while it is worked on. */
export interface Asked<Progress = never> {
  /** Aborted when nobody wants the work any more. A piece that does not look is ended by force. */
  signal: AbortSignal;
  /** Tells whoever asked how far it is. */
  tell(progress: Progress): void;
}

/**
 * A named piece of work: what is given to it and what it gives are copied between threads, so they
 * hold plain data. A result of bytes is handed over without a copy.
 */
// biome-ignore lint/suspicious/noExplicitAny: each piece says for itself what it takes.
export type Piece = (given: any, atHand: any) => Promise<unknown>;

export type Pieces = Readonly<Record<string, Piece>>;

export type GivenOf<P extends Piece> = Parameters<P>[0];
export type ResultOf<P extends Piece> = Awaited<ReturnType<P>>;
export type ProgressOf<P extends Piece> =
  Parameters<P> extends [unknown, Asked<infer Progress>, ...unknown[]] ? Progress : never;
