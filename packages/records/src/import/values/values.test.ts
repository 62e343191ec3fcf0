import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDate } from './dates.ts';
import { readMeasure, readParts } from './measures.ts';
import { readNumber } from './numbers.ts';
import type { Measure } from './units.ts';
import { readYesNo } from './yes-no.ts';

const insideOf = (text: string, measure: Measure, unit?: string) => {
  const read = readMeasure(text, measure, unit === undefined ? {} : { unit });
  return read.ok ? read.value : read.reason;
};

describe('sizes', () => {
  it.each([
    ['six inch', 6],
    ['SIX INCH', 6],
    ['Twenty-four inch', 24],
    ['two and a half inch', 2.5],
    ['four and one half', 4.5],
    ['6"', 6],
    ["6''", 6],
    ['6 in. DIP', 6],
    ['6" CI main', 6],
    ['2 1/2', 2.5],
    ['2-1/2"', 2.5],
    ['2½', 2.5],
    ['4.5', 4.5],
  ])('%s is %s in', (text, inches) => {
    expect(insideOf(text, 'diameter')).toBe(inches);
  });

  // An inch is 25.4 mm (NIST SP 811, appendix B.8).
  it.each([
    ['DN 100', 100],
    ['DN150', 150],
    ['150 mm', 150],
    ['150mm', 150],
    ['Ø 80', 80],
  ])('%s is %s mm', (text, mm) => {
    expect(insideOf(text, 'diameter')).toBeCloseTo(mm / 25.4, 9);
  });

  it.each(['500-1000', '80;100', 'big', 'six bananas', '6 gpm', '--6', '6 6 6'])(
    '%s is refused',
    (text) => {
      expect(readMeasure(text, 'diameter').ok).toBe(false);
    },
  );
});

describe('quantities with units', () => {
  // Factors as printed in NIST SP 811 (2008), appendix B.8.
  it.each<[string, Measure, number]>([
    ['3ft', 'length', 3],
    ['5\' 6"', 'length', 5.5],
    ['105 m', 'length', 105 / 0.3048],
    ['4.8 bar', 'pressure', 4.8e5 / 6894.757],
    ['480 kPa', 'pressure', 4.8e5 / 6894.757],
    ['0.48 MPa', 'pressure', 4.8e5 / 6894.757],
    ['800 L/min', 'flow', 0.8 / 60 / 6.30902e-5],
    ['60 m³/h', 'flow', 60 / 3600 / 6.30902e-5],
    ['13.3 l/s', 'flow', 0.0133 / 6.30902e-5],
    ['1,060 gpm', 'flow', 1060],
    ['10 m³', 'volume', 10 / 3.785412e-3],
    ['100 m2', 'area', 100 / 9.290304e-2],
    ['0.0667 m3/s', 'flow', 0.0667 / 6.30902e-5],
    ['4 m³/min', 'flow', 4 / 60 / 6.30902e-5],
    ['240000 l/h', 'flow', 240 / 3600 / 6.30902e-5],
    ['2.36 cfs', 'flow', (2.36 * 2.831685e-2) / 6.30902e-5],
    ['883 igpm', 'flow', (883 * 4.54609e-3) / 60 / 6.30902e-5],
    ['43.6 m', 'pressure', (43.6 * 9.80665e3) / 6894.757],
    ['143 ft', 'pressure', (143 * 2.989067e3) / 6894.757],
    ['4.35 kg/cm2', 'pressure', (4.35 * 9.80665e4) / 6894.757],
    ['4.2 atm', 'pressure', (4.2 * 1.01325e5) / 6894.757],
    ['0.2 m', 'diameter', 0.2 / 0.0254],
    ['30000 Imp gal', 'volume', (30000 * 4.54609e-3) / 3.785412e-3],
  ])('%s is converted', (text, measure, inside) => {
    expect(Number(insideOf(text, measure)) / inside).toBeCloseTo(1, 6);
  });

  it("a unit in the value goes before the column's", () => {
    expect(insideOf('6 in', 'diameter', 'mm')).toBe(6);
    expect(insideOf('254', 'diameter', 'mm')).toBeCloseTo(10, 12);
  });
});

describe('numbers', () => {
  it.each([
    ['1,060', 'point', 1060],
    ['1.060,5', 'comma', 1060.5],
    ['49,5', 'comma', 49.5],
    ['1 060', 'point', 1060],
    ["1'060.5", 'point', 1060.5],
    ['−84.3', 'point', -84.3],
  ] as const)('%s with a decimal %s is %s', (text, decimal, value) => {
    expect(readNumber(text, decimal)).toBe(value);
  });

  it.each(['1,06', '1,060,5', '1.2.3', '', 'x', '1-2'])('%s is none', (text) => {
    expect(readNumber(text)).toBeUndefined();
  });

  it('are read back as any program writes them', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(readNumber(String(value))).toBe(value === 0 ? readNumber('0') : value);
      }),
    );
  });
});

describe('dates', () => {
  it.each([
    '2024-03-31',
    '20240331',
    '3/31/2024',
    '31/3/2024',
    '31.03.2024',
    '31-Mar-24',
    'March 31, 2024',
    '31 March 2024',
    '2024-03-31T10:00:00Z',
    '3/31/2024 10:30:00 AM',
    '2024/03/31',
    '2024/03/31 00:00:00+00',
    '2024-03-31 00:00:00.0000000 +00:00',
    '2024-03-31T23:30:00-05:00',
    '2024-03-31 00:00:00 UTC',
    '3/31/2024, 3:15 PM',
    'Sun, 31 Mar 2024',
    'Sunday, March 31, 2024',
    '20240331120000',
    '1711843200',
    '45382.5',
  ])('%s is the last of March 2024', (text) => {
    expect(readDate(text)).toEqual({ ok: true, value: '2024-03-31' });
  });

  it("numbers of milliseconds and of a spreadsheet's days are days too", () => {
    // 2024-03-31 is 1 711 843 200 s after 1970 (any clock); spreadsheets call it 45382.
    expect(readDate(1_711_843_200_000)).toEqual({ ok: true, value: '2024-03-31' });
    expect(readDate(45_382)).toEqual({ ok: true, value: '2024-03-31' });
  });

  it('that can be read two ways are asked about, and then read as told', () => {
    expect(readDate('03/04/2024')).toMatchObject({ ok: false, ambiguous: true });
    expect(readDate('03/04/2024', 'day first')).toEqual({ ok: true, value: '2024-04-03' });
    expect(readDate('03/04/2024', 'month first')).toEqual({ ok: true, value: '2024-03-04' });
    expect(readDate('04/04/2024')).toEqual({ ok: true, value: '2024-04-04' });
  });

  it.each(['2024-02-30', '2004-03 (report date)', '2004', 'soon', '13/13/2024', '0/1/2024'])(
    '%s is refused',
    (text) => {
      expect(readDate(text).ok).toBe(false);
    },
  );
});

describe('the day that a program counts from', () => {
  // Common practice, no source: what spreadsheets, databases and clocks have in place of a blank date.
  it.each(['1899-12-30', '1/1/1900', '1970-01-01T00:00:00Z'])('%s is no day of a test', (text) => {
    expect(readDate(text)).toMatchObject({ ok: false, reason: expect.stringContaining('none') });
  });
});

describe('storeys of which one is a part', () => {
  it.each([
    ['2.5', 3],
    ['3+1', 4],
    ['1½', 2],
    ['2.00', 2],
    [2, 2],
  ])('%s are %s', (cell, storeys) => {
    expect(readParts(cell)).toEqual({ ok: true, value: storeys });
  });
  it.each(['3-4', 'two', '-1', ''])('%s are no such number', (cell) => {
    expect(readParts(cell)).toBeUndefined();
  });
});

describe('yes and no', () => {
  it.each(['yes', 'Y', 'TRUE', '1', 'x', 'ja'])('%s is yes', (text) => {
    expect(readYesNo(text)).toEqual({ ok: true, value: true });
  });
  it.each(['no', 'N', 'false', '0', 'nein'])('%s is no', (text) => {
    expect(readYesNo(text)).toEqual({ ok: true, value: false });
  });
  it('anything else is neither', () => {
    expect(readYesNo('maybe').ok).toBe(false);
  });
});
