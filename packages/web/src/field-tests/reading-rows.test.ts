import { describe, expect, it } from 'vitest';
import { rowOf, unfinished, withRow, written } from './reading-rows.ts';

type Reading = { flowGpm?: number; lossPsi?: number; lengthFt?: number };
const rows = (...readings: Reading[]) => readings.map((reading) => rowOf(reading));
const check = (...readings: Reading[]) =>
  unfinished(rows(...readings), ['flowGpm', 'lossPsi'], ['flowGpm', 'lossPsi', 'lengthFt']);

describe('rows of readings', () => {
  it('are told by number where one was begun and not finished', () => {
    expect(check({ flowGpm: 500, lossPsi: 5, lengthFt: 100 }, { flowGpm: 600 })).toContain(
      'Reading 2',
    );
  });

  it('pass whole, empty, or with a length that was only carried over', () => {
    expect(check({ flowGpm: 500, lossPsi: 0, lengthFt: 100 }, { lengthFt: 100 }, {})).toBeNull();
  });

  it('keep the others when one changes', () => {
    const [first, second] = rows({ flowGpm: 500 }, { flowGpm: 600 });
    const changed = withRow([first!, second!], second!.key, { lossPsi: 0 });
    expect(changed[0]).toBe(first);
    expect(changed[1]!.value).toEqual({ flowGpm: 600, lossPsi: 0 });
  });

  it('leave out empty fields and keep zeros', () => {
    expect(written({ flowGpm: 0, lossPsi: undefined, by: '' })).toEqual({ flowGpm: 0 });
  });
});
