import { describe, expect, it } from 'vitest';
import { unitsIn } from '../editing/use-units.ts';
import { fieldLabel, placeText, understoodLines, valueText } from './understood-words.ts';

const us = unitsIn('us');
const si = unitsIn('si');

const fields = {
  longitude: -71.05888,
  latitude: 42.36005,
  mainIn: 8,
  status: 'in service',
  name: 'H-1',
  origins: {
    mainIn: { kind: 'imported', text: 'list.csv, DIA, imported 2026-11-25' },
    longitude: { kind: 'imported', text: 'list.csv, X, imported 2026-11-25' },
  },
  externalSource: 'list',
  externalId: '~0123456789abcdef01234567',
};

describe('understoodLines', () => {
  it('tells each value with its unit and origin, place and key last', () => {
    const lines = understoodLines('hydrants', fields, us);
    expect(lines.map(({ label }) => label)).toEqual([
      'Name',
      'Main',
      'Status',
      'Place',
      'Key in the list',
    ]);
    expect(lines[1]).toMatchObject({ value: '8 in', origin: 'list.csv, DIA, imported 2026-11-25' });
    expect(lines[3]?.value).toBe('42.36005° N, 71.05888° W');
    expect(lines[4]?.value).toBe('from its name and place');
  });

  it('tells them in SI where that is asked for', () => {
    // 8 in of 25.4 mm.
    expect(understoodLines('hydrants', fields, si)[1]?.value).toBe('203 mm');
  });

  it('tells the readings of a flow test outlet by outlet', () => {
    const lines = understoodLines('flow-tests', { flowing: [{ pitotPsi: 20 }] }, us);
    expect(lines[0]).toMatchObject({ label: 'Pitot 1', value: '20 psi' });
  });
});

it('counts what would be too long to show', () => {
  const ring = [
    [0, 0],
    [0, 1],
    [1, 1],
    [0, 0],
  ];
  expect(valueText('buildings', 'footprint', [ring], us)).toBe('3 corners');
  expect(valueText('streets', 'path', ring, us)).toBe('4 points');
  expect(valueText('buildings', 'sprinklered', false, us)).toBe('no');
  expect(valueText('hydrants', 'longitude', -123.3999, us)).toBe('−123.39990°');
});

it('says south and east, and fields that no list fills', () => {
  expect(placeText(151.2, -33.87)).toBe('33.87000° S, 151.20000° E');
  expect(fieldLabel('hydrants', 'retestOn')).toBe('Retest on');
});
