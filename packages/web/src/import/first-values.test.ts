import { describe, expect, it } from 'vitest';
import type { SampleRow } from '../api/imports.ts';
import { firstValues, wordsSaid } from './first-values.ts';

const row = (n: number, status: string | null, understood: SampleRow['understood']): SampleRow => ({
  row: n,
  values: { Status: status },
  understood,
});
const record = (status: string) =>
  ({ is: 'record', fields: { status }, remarks: [] }) satisfies SampleRow['understood'];
const refused = (column: string) =>
  ({
    is: 'refused',
    refusal: { code: 'value not understood', row: 1, column, reason: '', remedy: '' },
  }) satisfies SampleRow['understood'];

describe('firstValues', () => {
  it('shows three different ones, without blanks', () => {
    const rows = ['A', ' ', 'A', null, 'B', 'C', 'D'].map((text, n) =>
      row(n, text, { is: 'skipped' }),
    );
    expect(firstValues(rows, 'Status')).toEqual(['A', 'B', 'C']);
    expect(firstValues([row(1, 'x'.repeat(100), { is: 'skipped' })], 'Status')[0]).toHaveLength(40);
  });
});

describe('wordsSaid', () => {
  it('tells what each word was understood as, and which one rows were refused for', () => {
    const rows = [
      row(1, 'OOS', record('out of service')),
      row(2, 'Z9', refused('Status')),
      row(3, 'oos', record('out of service')),
      row(4, 'Active', refused('Long')),
      row(5, 'Active', record('in service')),
      row(6, '', record('in service')),
    ];
    expect(wordsSaid(rows, 'Status', 'status')).toEqual([
      { word: 'oos', text: 'OOS', means: 'out of service', refused: false },
      { word: 'z9', text: 'Z9', means: null, refused: true },
      { word: 'active', text: 'Active', means: 'in service', refused: false },
    ]);
  });
});
