import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allOf, chosenChanges, conflictRows, firstChoices, openRows } from './conflict.ts';

const list = { kind: 'imported', text: 'utility list' };
const before = {
  id: '01A',
  version: 2,
  name: 'H-1',
  mainIn: 6,
  owner: 'Town water',
  type: 'dry barrel',
  origins: { mainIn: list },
};
// They changed the main, the owner and gave a note; the server took the main's origin away.
const current = {
  ...before,
  version: 3,
  mainIn: 8,
  owner: 'County',
  note: 'repainted',
  origins: {},
};
// I changed the main and the type, and cleared nothing.
const mine = { mainIn: 10, type: 'wall' };

describe('two changes of one record', () => {
  const rows = conflictRows(before, mine, current);

  it('are told apart: both, mine, theirs; what is the same is left out', () => {
    expect(Object.fromEntries(rows.map(({ slot, changedBy }) => [slot, changedBy]))).toEqual({
      mainIn: 'both',
      owner: 'them',
      note: 'them',
      type: 'me',
    });
  });

  it('leave open only what both changed', () => {
    const choices = firstChoices(rows);
    expect(openRows(rows, choices).map(({ slot }) => slot)).toEqual(['mainIn']);
    expect(choices).toEqual({ type: 'mine', owner: 'theirs', note: 'theirs' });
  });

  it('come together as chosen', () => {
    const choices = { ...firstChoices(rows), mainIn: 'theirs' as const };
    expect(chosenChanges(rows, choices)).toEqual({ type: 'wall' });
    expect(chosenChanges(rows, { ...choices, mainIn: 'mine' })).toEqual(mine);
  });

  it('all mine writes mine and undoes nothing of theirs; all theirs writes nothing', () => {
    expect(chosenChanges(rows, allOf('mine', rows))).toEqual(mine);
    expect(chosenChanges(rows, allOf('theirs', rows))).toEqual({});
  });

  it('can bring back what was read where only they changed it', () => {
    expect(chosenChanges(rows, { ...allOf('theirs', rows), note: 'mine' })).toEqual({ note: null });
  });

  it('agree where both wrote the same', () => {
    expect(conflictRows(before, { mainIn: 8 }, { ...before, mainIn: 8 })).toEqual([]);
  });

  it('carry a clearing, and where a value comes from', () => {
    const origins = { owner: { kind: 'measured', text: 'asked them' }, mainIn: null };
    const changed = conflictRows(before, { owner: null, origins }, { ...before, type: 'wall' });
    expect(chosenChanges(changed, allOf('mine', changed))).toEqual({ owner: null, origins });
  });

  it('never lose a value: each side’s own is either chosen or was refused by name', () => {
    const value = fc.option(fc.constantFrom('a', 'b', 'c'), { nil: undefined });
    const record = fc.record({ one: value, two: value, three: value });
    fc.assert(
      fc.property(record, record, record, (base, theirs, wanted) => {
        const changes = Object.fromEntries(
          Object.entries(wanted)
            .filter(([field, to]) => to !== base[field as 'one'])
            .map(([field, to]) => [field, to ?? null]),
        );
        const met = conflictRows(base, changes, theirs);
        const written = chosenChanges(met, allOf('mine', met));
        const after: Record<string, unknown> = { ...theirs, ...written };
        for (const field of ['one', 'two', 'three'] as const) {
          const wish = field in changes ? changes[field] : (theirs[field] ?? null);
          expect(after[field] ?? null).toBe(wish);
        }
      }),
    );
  });
});
