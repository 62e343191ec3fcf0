import { kinds } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import { editPath, kindPath, newPath, recordPath, recordsAddress } from './address.ts';

describe('an address of the records', () => {
  it('is read as it is written, for every kind', () => {
    for (const kind of kinds) {
      expect(recordsAddress(kindPath(kind))).toEqual({ at: 'list', kind });
      expect(recordsAddress(newPath(kind).split('?')[0]!)).toEqual({ at: 'new', kind });
      expect(recordsAddress(recordPath(kind, '01A'))).toEqual({ at: 'record', kind, id: '01A' });
      expect(recordsAddress(editPath(kind, '01A'))).toEqual({ at: 'edit', kind, id: '01A' });
    }
    expect(recordsAddress('/records')).toEqual({ at: 'start' });
    expect(recordsAddress('/records/')).toEqual({ at: 'start' });
  });

  it('that leads nowhere says so', () => {
    for (const path of ['/records/pipes', '/records/hydrants/01A/tests', '/records/toString']) {
      expect(recordsAddress(path)).toMatchObject({ at: 'nowhere' });
    }
  });

  it('carries what is known of a new record', () => {
    expect(newPath('flow-tests', { hydrantId: '01A' })).toBe(
      '/records/flow-tests/new?hydrantId=01A',
    );
  });
});
