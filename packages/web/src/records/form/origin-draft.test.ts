import { describe, expect, it } from 'vitest';
import { originDraft, readOrigins } from './origin-draft.ts';

const measured = { kind: 'measured', text: 'Survey', date: '2024-05-01' } as const;

describe('where values come from', () => {
  it('is written only where it is another', () => {
    expect(readOrigins({ mainIn: originDraft(measured) }, { mainIn: measured }).changes).toEqual(
      {},
    );
    const { changes } = readOrigins(
      {
        mainIn: { kind: 'maker', text: ' Plate ', date: '' },
        owner: { kind: '', text: '', date: '' },
        name: { kind: '', text: '', date: '' },
      },
      { mainIn: measured, owner: measured },
    );
    expect(changes).toEqual({ mainIn: { kind: 'maker', text: 'Plate' }, owner: null });
  });

  it('wants words', () => {
    const { changes, problems } = readOrigins(
      { mainIn: { kind: 'maker', text: ' ', date: '' } },
      {},
    );
    expect(changes).toEqual({});
    expect(problems['origins.mainIn']).toContain('Say where it comes from');
  });
});
