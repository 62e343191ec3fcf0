/** Actions that were tapped and that the server has not yet answered to. */
import type { DrillAction } from '@plugside/drill';

/**
 * An action this old when the connection is back is not done any more [ms]: the drill has moved on, and a
 * valve that moves by itself surprises. The one who tapped it is told. Ours.
 */
export const TOO_LATE_MS = 15_000;

interface Waiting {
  action: DrillAction;
  tappedMs: number;
  /** Given when it is first sent. */
  clientSeq?: number;
}

export interface Numbered {
  clientSeq: number;
  action: DrillAction;
}

export class Outbox {
  #waiting: Waiting[] = [];
  #last = 0;

  /** How many wait for an answer. */
  get size(): number {
    return this.#waiting.length;
  }

  /** All that wait, the oldest first. */
  get actions(): DrillAction[] {
    return this.#waiting.map(({ action }) => action);
  }

  /** Those that were never sent: surely not done. */
  get unsent(): DrillAction[] {
    return this.#waiting.flatMap(({ action, clientSeq }) =>
      clientSeq === undefined ? [action] : [],
    );
  }

  /** Puts an action in; it is sent with the next `toSend`. */
  add(action: DrillAction, nowMs: number): void {
    this.#waiting.push({ action, tappedMs: nowMs });
  }

  /** Numbers those that were never sent, in the order in which they were tapped, for sending now. */
  toSend(): Numbered[] {
    return this.#waiting.flatMap((one) => {
      if (one.clientSeq !== undefined) return [];
      one.clientSeq = ++this.#last;
      return [{ clientSeq: one.clientSeq, action: one.action }];
    });
  }

  /** The server has answered to an action. @returns it, if it waited */
  answered(clientSeq: number): DrillAction | undefined {
    const at = this.#waiting.findIndex((one) => one.clientSeq === clientSeq);
    return at < 0 ? undefined : this.#waiting.splice(at, 1)[0]!.action;
  }

  /**
   * Joined again after a break: what the server has done is dropped, what has become too old is given
   * back, the rest is to be sent, that which was sent before under its number.
   * @param lastSeq greatest number that the server has done
   */
  joined(lastSeq: number, nowMs: number): { send: Numbered[]; tooLate: DrillAction[] } {
    this.#waiting = this.#waiting.filter(
      ({ clientSeq }) => clientSeq === undefined || clientSeq > lastSeq,
    );
    this.#last = Math.max(this.#last, lastSeq);
    const tooLate: DrillAction[] = [];
    const again: Numbered[] = [];
    this.#waiting = this.#waiting.filter((one) => {
      if (nowMs - one.tappedMs > TOO_LATE_MS) {
        tooLate.push(one.action);
        return false;
      }
      if (one.clientSeq !== undefined) again.push({ clientSeq: one.clientSeq, action: one.action });
      return true;
    });
    return { send: [...again, ...this.toSend()], tooLate };
  }

  /** Takes out all that waits: the connection is gone for good. */
  giveUp(): DrillAction[] {
    const { actions } = this;
    this.#waiting = [];
    return actions;
  }
}
