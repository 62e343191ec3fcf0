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
/** SP 811, "foot of water, conventional". */
const FOOT_OF_WATER_KPA = 2.989067;
/** SP 811, "kilogram-force per square centimeter". */
const KGF_PER_CM2_KPA = 98.0665;
/** SP 811, "atmosphere, standard". */
const ATMOSPHERE_KPA = 101.325;
/** SP 811, "gallon [Canadian and U.K. (Imperial)]". */
const IMPERIAL_GALLON_L = 4.54609;
/** SP 811, "cubic foot". */
const CUBIC_FOOT_L = 28.31685;

export const importUnits: readonly ImportUnit[] = [
  unit('psi', 'pressure', ['psi', 'psig', 'lb/in2', 'lbs/in2', 'lbf/in2', '#'], (v) => v),
  unit('bar', 'pressure', ['bar', 'bars', 'barg'], via('pressure', 'bar')),
  unit('kPa', 'pressure', ['kpa', 'kpag'], via('pressure', 'kPa')),
  unit('MPa', 'pressure', ['mpa'], via('pressure', 'kPa', 1000)),
  unit(
    'mH2O',
    'pressure',
    // Of a pressure, metres and feet are a head of water.
    [
      ...['mh2o', 'mwc', 'mws', 'mwg', 'mca', 'mce', 'm', 'metre', 'metres', 'meter', 'meters'],
      ...['mhead', 'mofhead', 'mwater', 'mofwater', 'metreshead', 'metershead', 'mhd'],
    ],
    via('pressure', 'kPa', METRE_OF_WATER_KPA),
  ),
  unit(
    'ftH2O',
    'pressure',
    [
      ...['fth2o', 'ft', 'feet', 'fthead', 'ftofhead', 'feethead', 'feetofhead', 'ftwater'],
      ...['ftofwater', 'fthd'],
    ],
    via('pressure', 'kPa', FOOT_OF_WATER_KPA),
  ),
  unit(
    'kg/cm²',
    'pressure',
    ['kg/cm2', 'kgf/cm2', 'kgcm2', 'kp/cm2', 'ksc'],
    via('pressure', 'kPa', KGF_PER_CM2_KPA),
  ),
  unit(
    'atm',
    'pressure',
    ['atm', 'atmosphere', 'atmospheres'],
    via('pressure', 'kPa', ATMOSPHERE_KPA),
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
    ['m3/h', 'm³/h', 'm3h', 'm3/hr', 'cmh', 'cbm/h', 'qm/h', 'kl/h', 'klh'],
    via('flow', 'L/min', 1000 / 60),
  ),
  unit(
    'm³/min',
    'flow',
    ['m3/min', 'm³/min', 'm3min', 'cbm/min', 'kl/min'],
    via('flow', 'L/min', 1000),
  ),
  unit(
    'm³/s',
    'flow',
    ['m3/s', 'm³/s', 'm3s', 'm3/sec', 'cms', 'cumec', 'cumecs', 'cbm/s'],
    via('flow', 'L/s', 1000),
  ),
  unit('L/h', 'flow', ['l/h', 'lph', 'l/hr', 'litre/h', 'liter/h'], via('flow', 'L/min', 1 / 60)),
  unit('ML/d', 'flow', ['ml/d', 'mld', 'ml/day'], via('flow', 'L/min', 1e6 / 1440)),
  unit(
    'Imp gpm',
    'flow',
    ['impgpm', 'igpm', 'ukgpm', 'imperialgpm', 'gpmimp', 'gpmuk', 'impgal/min', 'igal/min'],
    via('flow', 'L/min', IMPERIAL_GALLON_L),
  ),
  unit(
    'ft³/s',
    'flow',
    ['ft3/s', 'ft³/s', 'cfs', 'cusec', 'cusecs'],
    via('flow', 'L/s', CUBIC_FOOT_L),
  ),
  // A million US gallons a day.
  unit('MGD', 'flow', ['mgd', 'mgal/d', 'mgal/day'], (v) => (v * 1e6) / 1440),
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
  unit('m', 'diameter', ['m', 'metre', 'metres', 'meter', 'meters'], via('diameter', 'mm', 1000)),
  unit('gal', 'volume', ['gal', 'gals', 'gallon', 'gallons', 'usgal', 'g'], (v) => v),
  unit('L', 'volume', ['l', 'litre', 'litres', 'liter', 'liters', 'ltr'], via('volume', 'L')),
  unit(
    'm³',
    'volume',
    ['m3', 'm³', 'cbm', 'qm', 'cubicmetres', 'cubicmeters'],
    via('volume', 'L', 1000),
  ),
  unit(
    'Imp gal',
    'volume',
    ['impgal', 'imperialgal', 'imperialgallons', 'ukgal', 'igal'],
    via('volume', 'L', IMPERIAL_GALLON_L),
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

const byWriting = new Map(
  importUnits.flatMap((one) =>
    [one.symbol.toLowerCase().replace(' ', ''), ...one.written].map((word) => [
      `${one.measure} ${word}`,
      one,
    ]),
  ),
);

/** The unit that a text names, of that measure; undefined where it names none. */
export function findUnit(text: string, measure: Measure): ImportUnit | undefined {
  const plain = text.toLowerCase().replace(/[\s._]/g, '');
  const named = (word: string) => byWriting.get(`${measure} ${word}`);
  // "ft NAVD88", "m MSL": the unit, and above what.
  return named(plain) ?? (measure === 'length' ? named(plain.replace(datum, '')) : undefined);
}

const datum = /(navd88|navd|ngvd29|ngvd|amsl|msl|asl|ahd|aod|odn|od|nhn|nn)$/;

/** Whether a text names a unit of some other measure than this one, and none of this one. */
export const isOfOtherMeasure = (text: string, measure: Measure): boolean =>
  findUnit(text, measure) === undefined &&
  importUnits.some((one) => findUnit(text, one.measure) !== undefined);

/** Symbols of a measure, the inside unit first. */
export const unitsOf = (measure: Measure): string[] =>
  importUnits.filter((one) => one.measure === measure).map(({ symbol }) => symbol);

export const insideUnitOf = (measure: Measure): string => unitsOf(measure)[0]!;
