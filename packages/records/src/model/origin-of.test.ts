import { describe, expect, it } from 'vitest';
import { originOf } from './origin-of.ts';

const imported = { kind: 'imported', text: 'list.csv, Name, imported 2026-03-01' } as const;

describe('where a value on record comes from', () => {
  it('is the default where nobody entered it, on a list too', () => {
    const record = { sideOutlets: 2, externalSource: 'list', origins: { name: imported } };
    expect(originOf('hydrants', record, 'sideOutlets')?.kind).toBe('default');
    expect(originOf('rigs', { intakes: 3 }, 'intakes')?.kind).toBe('default');
    expect(originOf('rigs', { assistValve: false }, 'assistValve')?.kind).toBe('default');
  });

  it('is what stands beside it', () => {
    const byHand = { kind: 'department', text: 'entered by hand' } as const;
    const record = { sideOutlets: 2, origins: { sideOutlets: byHand } };
    expect(originOf('hydrants', record, 'sideOutlets')).toEqual(byHand);
  });

  it('is the list that the record came with, unless the list marked what it gave', () => {
    const record = { mainIn: 8, externalSource: 'Water utility' };
    expect(originOf('hydrants', record, 'mainIn')).toEqual({
      kind: 'imported',
      text: 'Water utility',
    });
    const marked = { ...record, origins: { name: imported } };
    expect(originOf('hydrants', marked, 'mainIn')).toBeUndefined();
  });

  it('is the department for what no list knows', () => {
    expect(originOf('hydrants', { sideOutlets: 4 }, 'sideOutlets')).toBeUndefined();
  });
});
