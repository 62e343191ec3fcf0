import type { Judgement } from '@plugside/drill';

/** How far the drill's script has got: what a guide goes by. */
export interface Progress {
  /** Steps that are done and stand, with the tick at which they first were. */
  done: { step: string; tick: number }[];
  /** The drill as judged so far. */
  judgements: Judgement[];
}
