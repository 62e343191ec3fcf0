/**
 * Units as lists write them, on top of the trade's own: what a suffix of a column's name or of a
 * value means. Factors that fireground does not have come from NIST Special Publication 811 (2008),
 * appendix B.8, and from definitions.
 */
import { type Quantity, toInside } from '@plugside/fireground';

/** Quantities that a field can have; `area` is here alone. */
export type Measure =
  | Extract<Quantity, 'pressure' | 'flow' | 'length' | 'diameter' | 'volume'>
  | 'area';

interface ImportUnit {
  symbol: string;
  measure: Measure;
  /** Lower case, without spaces and points. */
  written: readonly string[];
  /** In the inside unit: gpm, psi, ft, in, gal, ft². */
  toInside: (value: number) => number;
}

const via =
  (measure: Quantity, symbol: string, factor = 1) =>
  (value: number) =>
    toInside(value * factor, measure, symbol);

/** Metres of water at 4 °C: 9.80665 kPa (SP 811, "meter of water, conventional"). */
const METRE_OF_WATER_KPA = 9.80665;

export const importUnits: readonly ImportUnit[] = [
  unit('psi', 'pressure', ['psi', 'psig', 'lb/in2', 'lbs/in2', 'lbf/in2', '#'], (v) => v),
  unit('bar', 'pressure', ['bar', 'bars', 'barg'], via('pressure', 'bar')),
  unit('kPa', 'pressure', ['kpa', 'kpag'], via('pressure', 'kPa')),
  unit('MPa', 'pressure', ['mpa'], via('pressure', 'kPa', 1000)),
  unit(
    'mH2O',
    'pressure',
    ['mh2o', 'mwc', 'mws', 'mwg', 'mca', 'mce'],
    via('pressure', 'kPa', METRE_OF_WATER_KPA),
  ),
  unit('gpm', 'flow', ['gpm', 'usgpm', 'gal/min', 'gals/min', 'galmin', 'g/m'], (v) => v),
  unit(
    'L/min',
    'flow',
    ['l/min', 'lpm', 'lmin', 'litre/min', 'liter/min', 'ltr/min', 'l/m'],
    via('flow', 'L/min'),
  ),
  unit(
    'L/s',
    'flow',
    ['l/s', 'lps', 'ls', 'l/sec', 'litre/s', 'liter/s', 'ltr/s'],
    via('flow', 'L/s'),
  ),
  unit(
    'm³/h',
    'flow',
    ['m3/h', 'm³/h', 'm3h', 'm3/hr', 'cmh', 'cbm/h', 'qm/h'],
    via('flow', 'L/min', 1000 / 60),
  ),
  unit('ft', 'length', ['ft', 'feet', 'foot', "'", '′', 'usft', 'ftus'], (v) => v),
  unit(
    'm',
    'length',
    ['m', 'metre', 'metres', 'meter', 'meters', 'mtr', 'müm', 'münn', 'masl', 'münhn'],
    via('length', 'm'),
  ),
  unit('in', 'diameter', ['in', 'inch', 'inches', '"', '″', '”', "''", 'zoll'], (v) => v),
  unit(
    'mm',
    'diameter',
    ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'dn', 'nw'],
    via('diameter', 'mm'),
  ),
  unit('cm', 'diameter', ['cm'], via('diameter', 'mm', 10)),
  unit('gal', 'volume', ['gal', 'gals', 'gallon', 'gallons', 'usgal', 'g'], (v) => v),
  unit('L', 'volume', ['l', 'litre', 'litres', 'liter', 'liters', 'ltr'], via('volume', 'L')),
  unit(
    'm³',
    'volume',
    ['m3', 'm³', 'cbm', 'qm', 'cubicmetres', 'cubicmeters'],
    via('volume', 'L', 1000),
  ),
  unit('ft²', 'area', ['ft2', 'ft²', 'sqft', 'sf', 'squarefeet'], (v) => v),
  // A foot is 0.3048 m.
  unit('m²', 'area', ['m2', 'm²', 'sqm', 'squaremetres', 'squaremeters'], (v) => v / 0.3048 ** 2),
];

function unit(
  symbol: string,
  measure: Measure,
  written: readonly string[],
  inside: (value: number) => number,
): ImportUnit {
  return { symbol, measure, written, toInside: inside };
}

/** The unit that a text names, of that measure; undefined where it names none. */
export function findUnit(text: string, measure: Measure): ImportUnit | undefined {
  const plain = text.toLowerCase().replace(/[\s._]/g, '');
  return importUnits.find(
    (one) =>
      one.measure === measure &&
      (one.symbol.toLowerCase() === plain || one.written.includes(plain)),
  );
}

/** Symbols of a measure, the inside unit first. */
export const unitsOf = (measure: Measure): string[] =>
  importUnits.filter((one) => one.measure === measure).map(({ symbol }) => symbol);

export const insideUnitOf = (measure: Measure): string => unitsOf(measure)[0]!;
