import type { Mapping } from '@plugside/records/import-fields';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { kindFromMemory, recall, rememberedLists, rememberList } from './remembered.ts';

const columns = ['NO', 'SIZE', 'X', 'Y', 'COND'];

const fresh = (sourceName: string, more: Partial<Mapping> = {}): Mapping => ({
  kind: 'hydrants',
  sourceName,
  fields: [{ field: 'name', columns: ['NO'], confidence: 0.9, why: 'By its name.' }],
  place: {
    geometry: false,
    longitude: 'X',
    latitude: 'Y',
    crs: 'EPSG:4326',
    swapped: 'refuse',
    farOff: 'refuse',
    near: [-71, 42],
  },
  unused: ['SIZE', 'COND'],
  notices: ['SIZE: its numbers carry no unit.', 'The file ends in the middle of a row.'],
  ...more,
});

const chosen: Mapping = {
  ...fresh('City hydrants'),
  fields: [
    { field: 'name', columns: ['NO'], confidence: 1, why: 'Chosen by hand.' },
    { field: 'mainIn', columns: ['SIZE'], unit: 'mm', confidence: 1, why: 'Chosen by hand.' },
  ],
  place: { ...fresh('').place, farOff: 'take', near: [-70, 41] } as Mapping['place'],
  unused: ['COND'],
  notices: [],
};

describe('what is remembered of a list', () => {
  const list = { kind: 'hydrants' as const, file: 'export', columns, mapping: chosen };

  it('tells the kind of a file that was brought in under its name, and of its refused rows', () => {
    for (const name of [
      'export.csv',
      'export (1).csv',
      'export-refused.csv',
      'export-refused (2).csv',
    ]) {
      expect(kindFromMemory([list], name), name).toBe('hydrants');
    }
    expect(kindFromMemory([list], 'exports.csv')).toBeNull();
  });

  it('is taken for a file of the same name, with this file’s own places and columns', () => {
    const found = recall([list], fresh('City hydrants'), [...columns, 'NEW']);
    expect(found?.is).toBe('same list');
    expect(found?.mapping.fields).toEqual(chosen.fields);
    expect(found?.mapping.place).toMatchObject({ farOff: 'take', near: [-71, 42] });
    expect(found?.mapping.unused).toEqual(['COND', 'NEW']);
    // What was asked about SIZE has been answered; what the file itself has is still to be said.
    expect(found?.mapping.notices).toEqual(['The file ends in the middle of a row.']);
  });

  it('is offered for another name with the same columns, not taken unasked', () => {
    const found = recall([list], fresh('hydrants-2026-12'), columns);
    expect(found).toMatchObject({ is: 'same columns', name: 'City hydrants' });
    expect(found?.mapping.sourceName).toBe('City hydrants');
  });

  it('is left where a column that it needs is gone, or the kind is another', () => {
    const without = columns.filter((one) => one !== 'SIZE');
    expect(recall([list], fresh('City hydrants'), without)).toBeNull();
    expect(recall([list], fresh('City hydrants', { kind: 'buildings' }), columns)).toBeNull();
    expect(recall([list], fresh('other'), [...columns, 'NEW'])).toBeNull();
  });

  it('fits the file of its own refused rows, whose geometry stands in a column', () => {
    const place = { ...chosen.place, geometry: true } as NonNullable<Mapping['place']>;
    const drawn = { ...list, mapping: { ...chosen, place } };
    const mended = fresh('City hydrants', {
      place: { ...place, geometry: false, point: 'refused_geometry' },
    });
    const found = recall([drawn], mended, [...columns, 'refused_row', 'refused_geometry']);
    expect(found?.mapping.place).toMatchObject({ geometry: false, point: 'refused_geometry' });
    expect(found?.mapping.unused).toEqual(['COND']);
  });
});

describe('the device’s memory', () => {
  const before = Object.getOwnPropertyDescriptor(globalThis, 'localStorage');
  let texts: Map<string, string>;
  beforeEach(() => {
    texts = new Map();
    Object.defineProperty(globalThis, 'localStorage', {
      configurable: true,
      value: {
        getItem: (name: string) => texts.get(name) ?? null,
        setItem: (name: string, text: string) => texts.set(name, text),
      },
    });
  });
  afterEach(() => {
    if (before) Object.defineProperty(globalThis, 'localStorage', before);
    else Reflect.deleteProperty(globalThis, 'localStorage');
  });

  it('keeps one mapping for each list, the latest first, and at most 40', () => {
    for (let n = 0; n < 45; n += 1) rememberList('x.csv', columns, fresh(`List ${n}`));
    rememberList('x.csv', columns, fresh('List 20', { unused: [] }));
    const lists = rememberedLists();
    expect(lists).toHaveLength(40);
    expect(lists[0]?.mapping).toMatchObject({ sourceName: 'List 20', unused: [] });
    expect(lists.filter(({ mapping }) => mapping.sourceName === 'List 20')).toHaveLength(1);
  });

  it('makes nothing of what is damaged', () => {
    for (const text of ['{', '{"a":1}', '[null, 3, {"kind":"hydrants"}]']) {
      texts.set('plugside.imported-lists', text);
      expect(rememberedLists()).toEqual([]);
    }
  });
});
