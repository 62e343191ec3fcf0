import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { record, redo, seal, startHistory, undo } from './history.ts';

describe('history', () => {
  it('goes back to where it was and forward again, whatever was recorded', () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { minLength: 1, maxLength: 60 }), (values) => {
        let history = startHistory(Number.NaN);
        for (const value of values) history = record(history, value, 'set');
        const last = history.present;
        let back = history;
        while (back.past.length > 0) back = undo(back);
        expect(back.present).toBeNaN();
        while (back.future.length > 0) back = redo(back);
        expect(back.present).toBe(last);
      }),
    );
  });

  it('takes a whole drag back in one step', () => {
    let history = record(startHistory(900), 925, 'Lay length', 'drag');
    history = record(history, 950, 'Lay length', 'drag');
    history = seal(record(history, 975, 'Lay length', 'drag'));
    expect(history.past).toHaveLength(1);
    expect(undo(history).present).toBe(900);
  });

  it('keeps two drags of the same thing apart', () => {
    let history = seal(record(startHistory(900), 950, 'Lay length', 'drag'));
    history = record(history, 1000, 'Lay length', 'drag');
    expect(undo(history).present).toBe(950);
  });

  it('forgets the way forward when something new is done', () => {
    const history = record(undo(record(startHistory(1), 2, 'two')), 3, 'three');
    expect(history.future).toHaveLength(0);
    expect(redo(history).present).toBe(3);
  });

  it('does not count a change to the same value', () => {
    expect(record(startHistory(5), 5, 'same').past).toHaveLength(0);
  });

  it('names what it takes back and what it does again', () => {
    const changed = record(startHistory(1), 2, 'Hose size');
    expect(changed.past.at(-1)?.label).toBe('Hose size');
    expect(undo(changed).future[0]?.label).toBe('Hose size');
  });
});
