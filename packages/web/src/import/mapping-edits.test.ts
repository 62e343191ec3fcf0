import {
  crsRemedy,
  type Mapping,
  missingFieldNotice,
  noPlaceNotice,
  projectionNotice,
} from '@plugside/records/import-fields';
import { describe, expect, it } from 'vitest';
import {
  meaningsFor,
  meaningsOf,
  missingFields,
  withCrs,
  withField,
  withMeaning,
  withOtherMeaning,
  withoutMeaning,
} from './mapping-edits.ts';

const hydrants: Mapping = {
  kind: 'hydrants',
  sourceName: 'City list',
  idColumn: 'NO',
  fields: [{ field: 'name', columns: ['NO'], confidence: 0.9, why: 'By its name.' }],
  place: {
    geometry: false,
    longitude: 'X',
    latitude: 'Y',
    crs: 'EPSG:4326',
    swapped: 'refuse',
    farOff: 'refuse',
  },
  unused: ['SIZE', 'DIA_MM', 'COND'],
  notices: ['SIZE: its numbers carry no unit.'],
};

describe('what a column is taken for', () => {
  it('can be several things at once', () => {
    expect(meaningsFor(hydrants, 'NO')).toEqual(['key', 'field:name']);
    expect(meaningsFor(hydrants, 'SIZE')).toEqual([]);
  });

  it('becomes a field with the unit of its name, and is no longer unused', () => {
    const mapped = withMeaning(hydrants, 'DIA_MM', 'field:mainIn');
    expect(mapped.fields[1]).toMatchObject({ field: 'mainIn', columns: ['DIA_MM'], unit: 'mm' });
    expect(mapped.unused).toEqual(['SIZE', 'COND']);
    // No unit in the name: the field's own.
    expect(withMeaning(hydrants, 'SIZE', 'field:mainIn').fields[1]?.unit).toBe('in');
  });

  it('joins a second column to a field that has one, and leaves the first when it goes', () => {
    const one = withMeaning(hydrants, 'SIZE', 'field:mainIn');
    const two = withMeaning(one, 'DIA_MM', 'field:mainIn');
    expect(two.fields[1]).toMatchObject({ columns: ['SIZE', 'DIA_MM'], join: 'first' });
    const back = withoutMeaning(two, 'SIZE', 'field:mainIn');
    expect(back.fields[1]?.columns).toEqual(['DIA_MM']);
    expect(back.unused).toContain('SIZE');
    expect(withoutMeaning(back, 'DIA_MM', 'field:mainIn').fields).toHaveLength(1);
  });

  it('changes from one meaning to another', () => {
    const mapped = withOtherMeaning(hydrants, 'NO', 'field:name', 'field:owner');
    expect(meaningsFor(mapped, 'NO')).toEqual(['key', 'field:owner']);
  });

  it('leaves the key to be name and place', () => {
    const mapped = withoutMeaning(hydrants, 'NO', 'key');
    expect(mapped).not.toHaveProperty('idColumn');
    expect(mapped.unused).not.toContain('NO');
    expect(withMeaning(mapped, 'COND', 'key').idColumn).toBe('COND');
  });

  it('takes a place from two columns or from one, never from both', () => {
    const point = withMeaning(hydrants, 'COND', 'point');
    expect(point.place).toMatchObject({ point: 'COND', geometry: false });
    expect(point.place).not.toHaveProperty('longitude');
    const pair = withMeaning(point, 'X', 'longitude');
    expect(pair.place).toMatchObject({ longitude: 'X' });
    expect(pair.place).not.toHaveProperty('point');
  });

  it('forgets notices that a change has answered', () => {
    expect(withMeaning(hydrants, 'SIZE', 'field:mainIn').notices).toEqual([]);
    expect(withMeaning(hydrants, 'COND', 'field:status').notices).toEqual(hydrants.notices);
  });
});

describe('the place', () => {
  const asked = (...notices: string[]): Mapping => ({ ...hydrants, notices });

  it('takes another coordinate system, which answers what was asked about the one before', () => {
    const mapped = withCrs(
      asked(projectionNotice, `EPSG:1 is unknown. ${crsRemedy}`, 'Other.'),
      'EPSG:2249',
    );
    expect(mapped.place?.crs).toBe('EPSG:2249');
    expect(mapped.notices).toEqual(['Other.']);
  });

  it('is asked for until both of its columns are chosen', () => {
    const { longitude: _, latitude: __, ...place } = hydrants.place ?? {};
    const none = { ...asked(noPlaceNotice), place: place as Mapping['place'] };
    const half = withMeaning(none, 'X', 'longitude');
    expect(half.notices).toEqual([noPlaceNotice]);
    expect(withMeaning(half, 'Y', 'latitude').notices).toEqual([]);
  });
});

describe('how a field reads', () => {
  it('takes another unit, and is then chosen by hand', () => {
    const mapped = withField(withMeaning(hydrants, 'SIZE', 'field:mainIn'), 'mainIn', {
      unit: 'cm',
    });
    expect(mapped.fields[1]).toMatchObject({ unit: 'cm', confidence: 1 });
  });

  it('keeps the order of columns and the others as they are', () => {
    const mapped = withField(hydrants, 'name', { join: 'space' });
    expect(mapped.fields[0]?.columns).toEqual(['NO']);
    expect(mapped.unused).toEqual(hydrants.unused);
  });
});

describe('flow tests', () => {
  const tests: Mapping = {
    kind: 'flow-tests',
    sourceName: 'Tests',
    fields: [],
    unused: ['S'],
    notices: [missingFieldNotice('Static'), missingFieldNotice('Residual')],
  };

  it('need four fields, and the notice of one goes when it is chosen', () => {
    expect(missingFields(tests)).toEqual(['hydrantId', 'testedOn', 'staticPsi', 'residualPsi']);
    const mapped = withMeaning(tests, 'S', 'field:staticPsi');
    expect(missingFields(mapped)).not.toContain('staticPsi');
    expect(mapped.notices).toEqual([missingFieldNotice('Residual')]);
  });

  it('have no place to choose', () => {
    expect(meaningsOf('flow-tests').map(({ value }) => value)).not.toContain('longitude');
    expect(meaningsOf('hydrants').map(({ value }) => value)).toContain('longitude');
  });
});
