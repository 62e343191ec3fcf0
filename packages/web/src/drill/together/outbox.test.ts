import type { DrillAction } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { Outbox, TOO_LATE_MS } from './outbox.ts';

const valve = (opening: number): DrillAction => ({ do: 'set valve', valve: 'H1.stem', opening });

describe('actions that wait for the server', () => {
  it('are numbered from 1 in the order tapped, and go once', () => {
    const outbox = new Outbox();
    outbox.add(valve(1), 0);
    outbox.add(valve(0), 1);
    expect(outbox.toSend().map(({ clientSeq }) => clientSeq)).toEqual([1, 2]);
    expect(outbox.toSend()).toEqual([]);
    expect(outbox.size).toBe(2);
  });

  it('are gone when answered, and no other is', () => {
    const outbox = new Outbox();
    outbox.add(valve(1), 0);
    outbox.add(valve(0.5), 0);
    outbox.toSend();
    expect(outbox.answered(2)).toEqual(valve(0.5));
    expect(outbox.answered(2)).toBeUndefined();
    expect(outbox.actions).toEqual([valve(1)]);
  });

  it('after a break: what was done is not sent twice, what was not done is not lost', () => {
    const outbox = new Outbox();
    for (const opening of [0.1, 0.2, 0.3]) outbox.add(valve(opening), 0);
    outbox.toSend();
    // Away: tapped, never sent.
    outbox.add(valve(0.4), 5);
    expect(outbox.unsent).toEqual([valve(0.4)]);
    // The server has done 1 and 2; its answers got lost.
    const { send, tooLate } = outbox.joined(2, 1_000);
    expect(send).toEqual([
      { clientSeq: 3, action: valve(0.3) },
      { clientSeq: 4, action: valve(0.4) },
    ]);
    expect(tooLate).toEqual([]);
  });

  it('tapped before the first welcome: goes above what the server has had', () => {
    const outbox = new Outbox();
    outbox.add(valve(1), 0);
    expect(outbox.joined(20, 10).send).toEqual([{ clientSeq: 21, action: valve(1) }]);
  });

  it('too old after a break: given back instead of sent, unless the server has done them', () => {
    const outbox = new Outbox();
    outbox.add(valve(0.1), 0);
    outbox.toSend();
    outbox.add(valve(0.2), 0);
    outbox.add(valve(0.3), TOO_LATE_MS);
    const { send, tooLate } = outbox.joined(1, TOO_LATE_MS + 1);
    expect(tooLate).toEqual([valve(0.2)]);
    expect(send.map(({ action }) => action)).toEqual([valve(0.3)]);
    expect(outbox.size).toBe(1);
  });

  it('are all given back when the connection is gone for good', () => {
    const outbox = new Outbox();
    outbox.add(valve(1), 0);
    outbox.toSend();
    expect(outbox.giveUp()).toEqual([valve(1)]);
    expect(outbox.size).toBe(0);
  });
});
