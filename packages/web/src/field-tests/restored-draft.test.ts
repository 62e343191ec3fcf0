import { describe, expect, it } from 'vitest';
import { flowTestDraft } from './flow-test-draft.ts';
import { newOutlet } from './outlet-draft.ts';
import { restoredDraft, restoredTexts } from './restored-draft.ts';

const ROW = { ...newOutlet().value, outletIn: undefined };
const record = { testedOn: '2024-05-01', staticPsi: 60, residualPsi: 40, by: 'C shift' };

describe('a test that was begun and left', () => {
  it('comes back as it was typed, and what was cleared stays cleared', () => {
    const typed = {
      ...flowTestDraft(record, '2026-01-01'),
      staticPsi: undefined,
      note: 'Stem stiff',
      outlets: [
        { key: 7, value: { ...newOutlet('H-2').value, pitotPsi: 18, outletIn: undefined } },
        { key: 9, value: { ...newOutlet().value, by: 'meter', flowGpm: 500 } },
      ],
    };
    const stored: unknown = JSON.parse(JSON.stringify(typed));
    const back = restoredDraft(stored, flowTestDraft(record, '2026-01-01'), ROW);
    expect(back).toMatchObject({ testedOn: '2024-05-01', residualPsi: 40, note: 'Stem stiff' });
    expect(back?.staticPsi).toBeUndefined();
    const rows = back?.outlets ?? [];
    expect(rows.map(({ value }) => value)).toEqual(typed.outlets.map(({ value }) => value));
    // Under the keys they had, and a row added later has another.
    expect(rows.map(({ key }) => key)).toEqual([7, 9]);
    expect(new Set([...rows, newOutlet()].map(({ key }) => key)).size).toBe(3);
  });

  it('brings back what could not be read, as it was typed', () => {
    expect(restoredTexts({ unread: { staticPsi: '6o', '7.pitotPsi': '1 8', odd: 5 } })).toEqual({
      staticPsi: '6o',
      '7.pitotPsi': '1 8',
    });
    for (const kept of [undefined, null, {}, { unread: 'x' }])
      expect(restoredTexts(kept)).toEqual({});
  });

  it('takes nothing that is none of the form’s', () => {
    const fresh = flowTestDraft(undefined, '2026-01-01');
    for (const kept of [undefined, null, 'text', 7, []]) {
      expect(restoredDraft(kept, fresh, ROW)).toBeNull();
    }
    const odd = {
      testedOn: 5,
      staticPsi: '62',
      outlets: [null, { value: { by: 3, hydrant: 'H-2' } }],
    };
    const back = restoredDraft(odd, fresh, ROW);
    expect(back).toMatchObject({ testedOn: '2026-01-01', by: '', note: '' });
    expect(back?.staticPsi).toBeUndefined();
    expect(back?.outlets.map(({ value }) => value)).toEqual([{ ...ROW, hydrant: 'H-2' }]);
  });
});
