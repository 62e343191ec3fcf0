import { sortFields } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import { shownKinds } from '../fields/field-tables.ts';
import { listColumns } from './columns.ts';
import { orderIn, orderText, pressed, usualOrder } from './order.ts';

describe('the order of a list', () => {
  it('is by fields that the server sorts by', () => {
    for (const kind of shownKinds) {
      const known = sortFields(kind);
      expect(known).toContain(usualOrder(kind).field);
      for (const { sort } of listColumns[kind]) if (sort) expect(known).toContain(sort);
    }
    expect(listColumns.hydrants.every(({ sort }) => sort !== undefined)).toBe(true);
  });

  it('is taken from an address, and the usual one where that asks for nothing there is', () => {
    expect(orderIn('hydrants', '-mainIn')).toEqual({ field: 'mainIn', descending: true });
    expect(orderIn('hydrants', null)).toEqual({ field: 'name', descending: false });
    expect(orderIn('hydrants', 'note')).toEqual({ field: 'name', descending: false });
    expect(orderIn('hydrants', '-')).toEqual({ field: 'name', descending: false });
    expect(orderIn('pump-tests', null)).toEqual({ field: 'testedOn', descending: true });
    expect(orderText(orderIn('rigs', '-stationId'))).toBe('-stationId');
  });

  it('turns round when its head is pressed again, and begins with the newest tests', () => {
    const byName = { field: 'name', descending: false };
    expect(pressed('name', byName)).toEqual({ field: 'name', descending: true });
    expect(pressed('mainIn', byName)).toEqual({ field: 'mainIn', descending: false });
    expect(pressed('testedOn', byName)).toEqual({ field: 'testedOn', descending: true });
  });
});
