/** What long work asks between its steps: an `AbortSignal` is one. */
export interface CancelSignal {
  /** Throws the reason where the work is no longer wanted. */
  throwIfAborted(): void;
}
