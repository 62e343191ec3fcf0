import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatNumber, formatQuantity } from './format-quantity.ts';
import { formatFraction, parseFraction } from './fractions.ts';
import { parseQuantity } from './parse-quantity.ts';
import { fromInside, type Quantity, quantities, toInside } from './quantities.ts';

// By the exact definitions (inch, pound, US gallon of 231 in³, standard gravity, degree),
// not by the printed factors that the table holds.
const inchM = 0.0254;
const poundN = 0.45359237 * 9.80665;
const gallonL = 231 * inchM ** 3 * 1000;

describe('factors against the exact definitions (International yard and pound agreement, 1959)', () => {
  test.each<[number, string, Quantity, number, string]>([
    [1, 'psi', 'pressure', poundN / inchM ** 2 / 1000, 'kPa'],
    [1, 'psi', 'pressure', poundN / inchM ** 2 / 1e5, 'bar'],
    [1000, 'gpm', 'flow', 1000 * gallonL, 'L/min'],
    [60, 'gpm', 'flow', gallonL, 'L/s'],
    [1, 'ft', 'length', 12 * inchM, 'm'],
    [1, 'in', 'diameter', 1000 * inchM, 'mm'],
    [1, 'gal', 'volume', gallonL, 'L'],
    [1, 'ft/s', 'velocity', 12 * inchM, 'm/s'],
    [1, 'lbf', 'force', poundN, 'N'],
    [1, 'lb', 'mass', 0.45359237, 'kg'],
    [212, '°F', 'temperature', 100, '°C'],
    [32, '°F', 'temperature', 0, '°C'],
    // Conventional mercury, 13 595.1 kg/m³.
    [1, 'inHg', 'vacuum', (13595.1 * 9.80665 * inchM) / 1000, 'kPa'],
    [1, 'ft²', 'area', (12 * inchM) ** 2, 'm²'],
    [1, 'ft³', 'space', (12 * inchM) ** 3, 'm³'],
    [1, 'mi', 'distance', (5280 * 12 * inchM) / 1000, 'km'],
    [1, 'gpm/ft²', 'density', gallonL / (12 * inchM) ** 2, 'mm/min'],
  ])('%d %s of %s', (value, from, quantity, expected, to) => {
    // Printed to seven digits.
    const converted = fromInside(toInside(value, quantity, from), quantity, to);
    expect(Math.abs(converted - expected)).toBeLessThanOrEqual(1.5e-7 * Math.abs(expected) + 1e-9);
  });
});

const everyUnit = Object.entries(quantities).flatMap(([quantity, row]) =>
  row.units.map((unit) => [quantity as Quantity, unit.symbol] as const),
);

describe('there and back', () => {
  test.each(everyUnit)('%s in %s', (quantity, symbol) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const back = fromInside(toInside(value, quantity, symbol), quantity, symbol);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
      }),
    );
  });

  test.each(everyUnit)('%s written in %s is read as the same number', (quantity, symbol) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const parsed = parseQuantity(`${value} ${symbol}`, quantity);
        expect(parsed).toMatchObject({ ok: true, unit: symbol });
        if (parsed.ok) expect(parsed.value).toBeCloseTo(toInside(value, quantity, symbol), 6);
      }),
    );
  });

  test('a value in the inside unit is kept to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const parsed = parseQuantity(`${value} psi`, 'pressure');
        expect(parsed.ok && parsed.value === value).toBe(true);
      }),
    );
  });

  test('what is shown is read back within half of its last digit', () => {
    fc.assert(
      fc.property(fc.double({ min: -5e5, max: 5e5, noNaN: true }), (value) => {
        for (const system of ['us', 'si'] as const) {
          const shown = formatQuantity(value, 'flow', system);
          const parsed = parseQuantity(`${shown.number} ${shown.unit}`, 'flow');
          expect(parsed.ok && Math.abs(parsed.value - value)).toBeLessThanOrEqual(0.5000001);
        }
      }),
    );
  });
});

describe('reading', () => {
  test.each<[unknown, Quantity, number]>([
    [900, 'length', 900],
    ['900 ft', 'length', 900],
    ['900ft', 'length', 900],
    ["900'", 'length', 900],
    ['900 feet', 'length', 900],
    ['1,060 gpm', 'flow', 1060],
    ['1060 GPM', 'flow', 1060],
    ['−12.5 ft', 'length', -12.5],
    ['1 1/8 in', 'diameter', 1.125],
    ['1-1/8 in', 'diameter', 1.125],
    ['1⅛"', 'diameter', 1.125],
    ['15/16', 'diameter', 0.9375],
    ['⅞ in', 'diameter', 0.875],
    ['60 F', 'temperature', 60],
  ])('%s as a %s', (written, quantity, value) => {
    expect(parseQuantity(written, quantity)).toMatchObject({ ok: true, value });
  });

  test.each<[unknown, Quantity, RegExp]>([
    ['900 fet', 'length', /"fet" is not a unit of length/],
    ['900 psi', 'length', /"psi" is not a unit of length/],
    ['4,8 bar', 'pressure', /comma/],
    ['1,06 gpm', 'flow', /comma/],
    ['', 'flow', /nothing is written/],
    [null, 'flow', /nothing is written/],
    ['lots', 'flow', /"lots" does not begin with a number/],
    [Number.NaN, 'flow', /NaN is not a flow/],
    [Number.POSITIVE_INFINITY, 'flow', /Infinity is not a flow/],
    ['1e999 gpm', 'flow', /too large/],
    ['1.2.3 psi', 'pressure', /no number/],
    ['5 1/2 psi', 'pressure', /no number/],
    [true, 'pressure', /not a pressure/],
    [{ psi: 3 }, 'pressure', /not a pressure/],
  ])('%s is no %s', (written, quantity, message) => {
    const parsed = parseQuantity(written, quantity);
    expect(parsed.ok).toBe(false);
    if (!parsed.ok) {
      expect(parsed.message).toMatch(message);
      expect(parsed.remedy).toMatch(/^Write a number in \S+, or a number with its unit \(/);
    }
  });

  test('any text at all is read or refused, never thrown at', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        for (const quantity of Object.keys(quantities) as Quantity[]) {
          const parsed = parseQuantity(text, quantity);
          expect(parsed.ok ? Number.isFinite(parsed.value) : parsed.message !== '').toBe(true);
        }
      }),
    );
  });
});

describe('showing', () => {
  test.each<[number, Quantity, 'us' | 'si', string]>([
    [1060.4, 'flow', 'us', '1,060 gpm'],
    [1060, 'flow', 'si', '4,013 L/min'],
    [69.6, 'pressure', 'us', '70 psi'],
    [69.6, 'pressure', 'si', '4.8 bar'],
    [-0.2, 'pressure', 'us', '0 psi'],
    [-15.2, 'pressure', 'us', '−15 psi'],
    [35, 'length', 'si', '10.7 m'],
    [900, 'length', 'si', '274 m'],
    [1.125, 'diameter', 'us', '1⅛ in'],
    [0.9375, 'diameter', 'us', '15/16 in'],
    [1.125, 'diameter', 'si', '29 mm'],
    [16.34, 'velocity', 'us', '16.3 ft/s'],
    [12345678, 'volume', 'us', '12,345,678 gal'],
    [Number.NaN, 'flow', 'us', '— gpm'],
  ])('%d of %s in %s', (value, quantity, system, shown) => {
    const { number, unit } = formatQuantity(value, quantity, system);
    expect(`${number} ${unit}`).toBe(shown);
  });

  test('with the digits or the unit asked for', () => {
    expect(formatQuantity(44.25, 'pressure', 'us', { digits: 1 }).number).toBe('44.3');
    expect(formatQuantity(20, 'pressure', 'si', { unit: 'kPa' })).toMatchObject({
      number: '138',
      unit: 'kPa',
    });
    expect(() => formatQuantity(20, 'pressure', 'si', { unit: 'gpm' })).toThrow(/not a unit/);
  });

  test('one foot, two feet', () => {
    expect(formatQuantity(1, 'length', 'us').spoken).toBe('foot');
    expect(formatQuantity(2, 'length', 'us').spoken).toBe('feet');
  });

  test('no minus before a zero', () => {
    expect(formatNumber(-0.04, 1)).toBe('0.0');
    expect(formatNumber(-0.06, 1)).toBe('−0.1');
  });
});

test('fractions: every sixteenth up to 6 in is read back as shown', () => {
  for (let sixteenths = 1; sixteenths <= 96; sixteenths += 1) {
    expect(parseFraction(formatFraction(sixteenths / 16))).toBe(sixteenths / 16);
  }
});
