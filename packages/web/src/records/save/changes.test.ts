import { describe, expect, it } from 'vitest';
import { changesBetween } from './changes.ts';

describe('what a change writes', () => {
  const before = {
    id: '01A',
    version: 3,
    createdAt: '2024-01-01T00:00:00Z',
    updatedAt: '2024-01-01T00:00:00Z',
    staticPsi: 62,
    by: 'Engine 1',
    flowing: [{ outletIn: 2.5, pitotPsi: 20 }],
    origins: { staticPsi: { kind: 'measured', text: 'gauge' } },
  };

  it('is only what is another, and null for what is no longer given', () => {
    const { by: _, ...rest } = before;
    const after = { ...rest, staticPsi: 64 };
    expect(changesBetween(before, after)).toEqual({ staticPsi: 64, by: null });
  });

  it('does not mind the order of members, nor that the store’s own are missing', () => {
    const after = {
      origins: { staticPsi: { text: 'gauge', kind: 'measured' } },
      flowing: [{ pitotPsi: 20, outletIn: 2.5 }],
      by: 'Engine 1',
      staticPsi: 62,
    };
    expect(changesBetween(before, after)).toEqual({});
  });

  it('sees a change inside a list, and one row less', () => {
    expect(changesBetween(before, { ...before, flowing: [] })).toEqual({ flowing: [] });
    const flowing = [{ outletIn: 2.5, pitotPsi: 21 }];
    expect(changesBetween(before, { ...before, flowing })).toEqual({ flowing });
  });
});
