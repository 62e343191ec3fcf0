import type { Mapping, Refusal } from '@plugside/records/import-fields';
import { describe, expect, it } from 'vitest';
import { columnsAtFault, isPlaceAtFault, rowWords } from './mend-columns.ts';

const mapping: Mapping = {
  kind: 'hydrants',
  sourceName: 'City list',
  idColumn: 'ID',
  fields: [
    { field: 'name', columns: ['NO'], confidence: 1, why: '' },
    { field: 'mainIn', columns: ['SIZE', 'DN'], confidence: 1, why: '' },
  ],
  place: {
    geometry: false,
    longitude: 'X',
    latitude: 'Y',
    crs: 'EPSG:4326',
    swapped: 'refuse',
    farOff: 'refuse',
  },
  unused: [],
  notices: [],
};
const values = { ID: '7', NO: 'H-7', SIZE: 'eight', DN: '', X: '', Y: '42.3', 'A, B': 'x' };

const row = (refusal: Partial<Refusal>) => ({
  row: 4,
  values,
  refusal: { code: 'value not understood' as const, row: 4, reason: '', remedy: '', ...refusal },
});

describe('columnsAtFault', () => {
  it.each([
    ['a value', { column: 'SIZE' }, ['SIZE']],
    ['several columns', { column: 'SIZE, DN' }, ['SIZE', 'DN']],
    ['a column with a comma in its name', { column: 'A, B' }, ['A, B']],
    ['one coordinate', { code: 'no place' as const, column: 'X' }, ['X', 'Y']],
    ['a coordinate not understood', { column: 'Y' }, ['X', 'Y']],
    ['a missing field', { code: 'missing value' as const, field: 'mainIn' }, ['SIZE']],
    ['a second key', { code: 'duplicate key' as const, column: 'ID' }, ['ID']],
  ])('names the cells of %s', (_, refusal, columns) => {
    expect(columnsAtFault(row(refusal), mapping)).toEqual(columns);
  });

  it('names every cell of a row that is too short', () => {
    expect(columnsAtFault(row({ code: 'column count' }), mapping)).toEqual(Object.keys(values));
  });

  it('names none where the place is a drawing', () => {
    const { longitude: _, latitude: __, ...place } = mapping.place ?? {};
    const drawn = { ...mapping, place: { ...place, geometry: true } as Mapping['place'] };
    expect(columnsAtFault(row({ code: 'no place' }), drawn)).toEqual([]);
    expect(columnsAtFault(row({ code: 'wrong geometry', column: 'geometry' }), drawn)).toEqual([]);
  });
});

describe('a place that is in the geometry alone', () => {
  const { longitude: _, latitude: __, ...place } = mapping.place ?? {};
  const drawn = { ...mapping, place: { ...place, geometry: true } as Mapping['place'] };

  it('is entered where it is at fault, before and after it was entered', () => {
    expect(isPlaceAtFault(row({ code: 'no place' }), drawn)).toBe(true);
    expect(isPlaceAtFault(row({ code: 'place far off' }), drawn)).toBe(true);
    expect(isPlaceAtFault(row({ column: 'place entered by hand' }), drawn)).toBe(true);
    expect(isPlaceAtFault(row({ column: 'SIZE' }), drawn)).toBe(false);
  });

  it('is not where columns hold it, and not of what is no point', () => {
    expect(isPlaceAtFault(row({ code: 'no place' }), mapping)).toBe(false);
    const streets = { ...drawn, kind: 'streets' as const };
    expect(isPlaceAtFault(row({ code: 'no place' }), streets)).toBe(false);
  });
});

describe('rowWords', () => {
  it('knows a row by its key and its name', () => {
    expect(rowWords(row({}), mapping)).toBe('7, H-7');
  });

  it('falls back on the first cell with something in it', () => {
    const bare = { ...mapping, fields: [] };
    const { idColumn: _, ...without } = bare;
    expect(rowWords({ ...row({}), values: { A: ' ', B: 'Elm St' } }, without)).toBe('Elm St');
    expect(rowWords({ ...row({}), values: { A: '' } }, without)).toBe('blank');
  });
});
