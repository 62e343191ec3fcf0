import type { Judgement } from '@plugside/drill';

/** How far the drill's script has got: what a guide goes by. */
export interface Progress {
  /** Steps whose condition has held, with the tick at which it first did. */
  done: { step: string; tick: number }[];
  /** The drill as judged so far. */
  judgements: Judgement[];
}
