/**
 * The one table of quantities: what each is measured in, and the factor of every unit.
 *
 * Inside units are the trade's (gpm, psi, ft, in, gal), because every published source
 * prints in them. Factors are given to the SI unit as printed in NIST Special Publication
 * 811 (2008), "Guide for the Use of the International System of Units", appendix B.8
 * (https://www.nist.gov/pml/special-publication-811), so that the digits can be compared.
 */

export type Quantity =
  | 'pressure'
  | 'flow'
  | 'length'
  | 'diameter'
  | 'volume'
  | 'velocity'
  | 'force'
  | 'mass'
  | 'temperature'
  | 'vacuum'
  | 'area'
  | 'space'
  | 'distance'
  | 'density';

export type UnitSystem = 'us' | 'si';

export interface UnitRow {
  /** As shown beside a number, and as written in a plan. */
  symbol: string;
  singular: string;
  plural: string;
  /** Multiply by this for the quantity's SI unit. */
  toSi: number;
  /** Added before multiplying; temperature only. */
  offset?: number;
  /** Other ways to write it, lower case. */
  also: readonly string[];
  /** Digits after the point that are worth showing. */
  digits: number;
}

export interface QuantityRow {
  /** What the factors lead to. */
  siUnit: string;
  /** Symbol of the inside unit. */
  inside: string;
  /** Symbol shown in each system. */
  shown: Record<UnitSystem, string>;
  units: readonly UnitRow[];
}

const psi: UnitRow = {
  symbol: 'psi',
  singular: 'pound per square inch',
  plural: 'pounds per square inch',
  toSi: 6.894757e3,
  also: ['psig', 'lb/in2', 'lbf/in2'],
  digits: 0,
};
const bar: UnitRow = {
  symbol: 'bar',
  singular: 'bar',
  plural: 'bar',
  toSi: 1.0e5,
  also: ['bars'],
  digits: 1,
};
const kPa: UnitRow = {
  symbol: 'kPa',
  singular: 'kilopascal',
  plural: 'kilopascals',
  toSi: 1.0e3,
  also: [],
  digits: 0,
};
const inHg: UnitRow = {
  symbol: 'inHg',
  singular: 'inch of mercury',
  plural: 'inches of mercury',
  // "inch of mercury, conventional (inHg)"
  toSi: 3.386389e3,
  also: ['in hg', 'in. hg'],
  digits: 0,
};
const foot: UnitRow = {
  symbol: 'ft',
  singular: 'foot',
  plural: 'feet',
  toSi: 3.048e-1,
  also: ["'", '′'],
  digits: 0,
};
const metre: UnitRow = {
  symbol: 'm',
  singular: 'metre',
  plural: 'metres',
  toSi: 1,
  also: ['meter', 'meters'],
  digits: 0,
};
const inch: UnitRow = {
  symbol: 'in',
  singular: 'inch',
  plural: 'inches',
  toSi: 2.54e-2,
  also: ['"', '″', 'in.'],
  digits: 3,
};
const millimetre: UnitRow = {
  symbol: 'mm',
  singular: 'millimetre',
  plural: 'millimetres',
  toSi: 1e-3,
  also: ['millimeter', 'millimeters'],
  digits: 0,
};

export const quantities: Readonly<Record<Quantity, QuantityRow>> = {
  pressure: {
    siUnit: 'Pa',
    inside: 'psi',
    shown: { us: 'psi', si: 'bar' },
    units: [psi, bar, kPa],
  },
  flow: {
    siUnit: 'm³/s',
    inside: 'gpm',
    shown: { us: 'gpm', si: 'L/min' },
    units: [
      {
        symbol: 'gpm',
        singular: 'gallon per minute',
        plural: 'gallons per minute',
        // "gallon (U.S.) per minute (gpm)"
        toSi: 6.30902e-5,
        also: ['gal/min', 'usgpm', 'us gpm'],
        digits: 0,
      },
      {
        symbol: 'L/min',
        singular: 'litre per minute',
        plural: 'litres per minute',
        // One litre per minute is 1/60 000 m³/s by definition.
        toSi: 1e-3 / 60,
        also: ['lpm', 'liter per minute', 'liters per minute'],
        digits: 0,
      },
      {
        symbol: 'L/s',
        singular: 'litre per second',
        plural: 'litres per second',
        toSi: 1e-3,
        also: ['lps'],
        digits: 1,
      },
    ],
  },
  length: {
    siUnit: 'm',
    inside: 'ft',
    shown: { us: 'ft', si: 'm' },
    units: [foot, metre],
  },
  diameter: {
    siUnit: 'm',
    inside: 'in',
    shown: { us: 'in', si: 'mm' },
    units: [inch, millimetre],
  },
  volume: {
    siUnit: 'm³',
    inside: 'gal',
    shown: { us: 'gal', si: 'L' },
    units: [
      {
        symbol: 'gal',
        singular: 'gallon',
        plural: 'gallons',
        // "gallon (U.S.) (gal)"
        toSi: 3.785412e-3,
        also: ['us gal'],
        digits: 0,
      },
      {
        symbol: 'L',
        singular: 'litre',
        plural: 'litres',
        toSi: 1e-3,
        also: ['liter', 'liters'],
        digits: 0,
      },
    ],
  },
  velocity: {
    siUnit: 'm/s',
    inside: 'ft/s',
    shown: { us: 'ft/s', si: 'm/s' },
    units: [
      {
        symbol: 'ft/s',
        singular: 'foot per second',
        plural: 'feet per second',
        toSi: 3.048e-1,
        also: ['fps'],
        digits: 1,
      },
      {
        symbol: 'm/s',
        singular: 'metre per second',
        plural: 'metres per second',
        toSi: 1,
        also: ['meter per second', 'meters per second'],
        digits: 1,
      },
    ],
  },
  force: {
    siUnit: 'N',
    inside: 'lbf',
    shown: { us: 'lbf', si: 'N' },
    units: [
      {
        symbol: 'lbf',
        singular: 'pound-force',
        plural: 'pounds-force',
        toSi: 4.448222,
        also: ['lb'],
        digits: 0,
      },
      { symbol: 'N', singular: 'newton', plural: 'newtons', toSi: 1, also: [], digits: 0 },
    ],
  },
  mass: {
    siUnit: 'kg',
    inside: 'lb',
    shown: { us: 'lb', si: 'kg' },
    units: [
      {
        symbol: 'lb',
        singular: 'pound',
        plural: 'pounds',
        // "pound (avoirdupois) (lb)"
        toSi: 4.535924e-1,
        also: ['lbs'],
        digits: 0,
      },
      { symbol: 'kg', singular: 'kilogram', plural: 'kilograms', toSi: 1, also: [], digits: 0 },
    ],
  },
  temperature: {
    // Not kelvin: NIST SP 811 prints t/°C = (t/°F − 32)/1.8.
    siUnit: '°C',
    inside: '°F',
    shown: { us: '°F', si: '°C' },
    units: [
      {
        symbol: '°F',
        singular: 'degree Fahrenheit',
        plural: 'degrees Fahrenheit',
        toSi: 1 / 1.8,
        offset: -32,
        also: ['f', 'deg f'],
        digits: 0,
      },
      {
        symbol: '°C',
        singular: 'degree Celsius',
        plural: 'degrees Celsius',
        toSi: 1,
        also: ['c', 'deg c'],
        digits: 0,
      },
    ],
  },
  vacuum: {
    siUnit: 'Pa',
    inside: 'inHg',
    shown: { us: 'inHg', si: 'kPa' },
    units: [inHg, kPa, bar],
  },
  area: {
    siUnit: 'm²',
    inside: 'ft²',
    shown: { us: 'ft²', si: 'm²' },
    units: [
      {
        symbol: 'ft²',
        singular: 'square foot',
        plural: 'square feet',
        toSi: 9.290304e-2,
        also: ['ft2', 'sq ft', 'sqft'],
        digits: 0,
      },
      {
        symbol: 'm²',
        singular: 'square metre',
        plural: 'square metres',
        toSi: 1,
        also: ['m2', 'sq m'],
        digits: 0,
      },
    ],
  },
  // Room inside a building; water in a tank is a volume.
  space: {
    siUnit: 'm³',
    inside: 'ft³',
    shown: { us: 'ft³', si: 'm³' },
    units: [
      {
        symbol: 'ft³',
        singular: 'cubic foot',
        plural: 'cubic feet',
        toSi: 2.831685e-2,
        also: ['ft3', 'cu ft'],
        digits: 0,
      },
      {
        symbol: 'm³',
        singular: 'cubic metre',
        plural: 'cubic metres',
        toSi: 1,
        also: ['m3', 'cu m'],
        digits: 0,
      },
    ],
  },
  // Along a road; hose and heights are lengths.
  distance: {
    siUnit: 'm',
    inside: 'mi',
    shown: { us: 'mi', si: 'km' },
    units: [
      {
        symbol: 'mi',
        singular: 'mile',
        plural: 'miles',
        toSi: 1.609344e3,
        also: [],
        digits: 1,
      },
      {
        symbol: 'km',
        singular: 'kilometre',
        plural: 'kilometres',
        toSi: 1e3,
        also: ['kilometer', 'kilometers'],
        digits: 1,
      },
    ],
  },
  // Water on each part of a floor, as sprinklers are designed for.
  density: {
    siUnit: 'm/s',
    inside: 'gpm/ft²',
    shown: { us: 'gpm/ft²', si: 'mm/min' },
    units: [
      {
        symbol: 'gpm/ft²',
        singular: 'gallon per minute per square foot',
        plural: 'gallons per minute per square foot',
        // The factor of gpm over the factor of ft².
        toSi: 6.30902e-5 / 9.290304e-2,
        also: ['gpm/ft2', 'gpm/sq ft'],
        digits: 2,
      },
      {
        symbol: 'mm/min',
        singular: 'millimetre per minute',
        plural: 'millimetres per minute',
        toSi: 1e-3 / 60,
        also: ['millimeter per minute', 'millimeters per minute'],
        digits: 1,
      },
    ],
  },
};

/** The row of a unit by its symbol. Throws for a symbol that the quantity does not have. */
export function unitRow(quantity: Quantity, symbol: string): UnitRow {
  const row = quantities[quantity].units.find((unit) => unit.symbol === symbol);
  if (!row) {
    const known = quantities[quantity].units.map((unit) => unit.symbol).join(', ');
    throw new RangeError(`${symbol} is not a unit of ${quantity}; use one of ${known}.`);
  }
  return row;
}

/** The row of a quantity's inside unit. */
export function insideUnit(quantity: Quantity): UnitRow {
  return unitRow(quantity, quantities[quantity].inside);
}

/**
 * A value in the inside unit from a value in `symbol`. A value already in the inside
 * unit comes back unchanged, to the last bit.
 */
export function toInside(value: number, quantity: Quantity, symbol: string): number {
  const unit = unitRow(quantity, symbol);
  const inside = insideUnit(quantity);
  if (unit === inside) return value;
  return ((value + (unit.offset ?? 0)) * unit.toSi) / inside.toSi - (inside.offset ?? 0);
}

/** A value in `symbol` from a value in the inside unit. */
export function fromInside(value: number, quantity: Quantity, symbol: string): number {
  const unit = unitRow(quantity, symbol);
  const inside = insideUnit(quantity);
  if (unit === inside) return value;
  return ((value + (inside.offset ?? 0)) * inside.toSi) / unit.toSi - (unit.offset ?? 0);
}
