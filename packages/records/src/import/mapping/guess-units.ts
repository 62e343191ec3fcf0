/** Units and decimal signs that no name tells, from the values themselves. */
import type { Cell, Source } from '../source/source.ts';
import { readMeasure } from '../values/measures.ts';
import { type Decimal, readNumber } from '../values/numbers.ts';
import type { Measure } from '../values/units.ts';

export interface UnitGuess {
  unit: string;
  /** Said to whoever looks at the mapping; left out where there is no doubt. */
  doubt?: string;
  /** Of pressures: the middle of the numbers. */
  median?: number;
}

/**
 * The unit of bare numbers by their size: mains of 80 to 600 are in mm, all below 1 in m;
 * pressures of 150 up in kPa, below 16 in bar. What can be either is the trade's own unit, and said so.
 */
export function unitFromValues(
  values: readonly Cell[],
  measure: Measure,
  decimal: Decimal,
): UnitGuess {
  const numbers = values
    .map((value) => (typeof value === 'number' ? value : readNumber(String(value), decimal)))
    .filter((value) => value !== undefined)
    .filter((value) => value > 0)
    .sort((a, b) => a - b);
  const median = numbers[numbers.length >> 1];
  if (median === undefined) return { unit: inside[measure] };
  const said = `by their size (half of them are over ${Math.round(median * 100) / 100})`;
  if (measure === 'diameter') {
    if (median > 36) return { unit: 'mm', doubt: `taken as mm ${said}` };
    if (numbers.at(-1)! < 1) return { unit: 'm', doubt: `taken as m ${said}` };
    return { unit: 'in' };
  }
  if (measure === 'pressure') {
    if (median > 180) return { unit: 'kPa', doubt: `taken as kPa ${said}`, median };
    if (median < 14 && numbers.at(-1)! < 25) {
      return { unit: 'bar', doubt: `taken as bar ${said}`, median };
    }
    return { unit: 'psi', median };
  }
  if (measure === 'length')
    return { unit: 'ft', doubt: 'taken as feet; say so if they are metres' };
  if (measure === 'flow' && median < 120) {
    return { unit: 'gpm', doubt: 'taken as gpm, though small for it; say so if they are L/s' };
  }
  return { unit: inside[measure], doubt: `taken as ${inside[measure]}` };
}

const inside: Record<Measure, string> = {
  pressure: 'psi',
  flow: 'gpm',
  length: 'ft',
  diameter: 'in',
  volume: 'gal',
  area: 'ft²',
};

/**
 * What separates decimals in a column. A comma that is not followed by exactly three digits does;
 * where every comma could separate thousands, it does so, but for a table with semicolons. In a file
 * that has decimal commas elsewhere, a point before three digits separates thousands.
 */
export function decimalOf(
  values: readonly Cell[],
  delimiter: string | undefined,
  comma = false,
): { decimal: Decimal; doubt?: string } {
  const texts = values.filter((value) => typeof value === 'string');
  const commas = texts.filter((text) => /\d,\d/.test(text));
  const dots = texts.filter((text) => /\d\.\d/.test(text));
  if (commas.length === 0) {
    const grouped = comma && dots.length > 0 && dots.every((text) => isGrouped(text));
    return grouped
      ? {
          decimal: 'comma',
          doubt: 'its points are taken to separate thousands, as the file has decimal commas',
        }
      : { decimal: 'point' };
  }
  const asPoint = texts.filter((text) => readMeasureLike(text, 'point')).length;
  const asComma = texts.filter((text) => readMeasureLike(text, 'comma')).length;
  if (asComma !== asPoint) return { decimal: asComma > asPoint ? 'comma' : 'point' };
  if (dots.length === 0 && (comma || delimiter === 'semicolon')) {
    return { decimal: 'comma', doubt: 'the comma is taken for a decimal sign' };
  }
  return { decimal: 'point' };
}

/** `1.045`, `1.045 m`, `12.345.678`. */
const isGrouped = (text: string) => /^\s*[-+]?\d{1,3}(\.\d{3})+(?![.\d])/.test(text);

/** Whether a file's numbers have decimal commas: some column's can be nothing else, and no column's are points. */
export function commaInFile({ columns, sample, format }: Source): boolean {
  if (format !== 'csv') return false;
  let commas = false;
  for (const column of columns) {
    for (const { values } of sample.slice(0, 100)) {
      const text = values[column];
      if (typeof text !== 'string') continue;
      if (/^\s*[-+]?\d+\.(\d{1,2}|\d{4,})\s*$/.test(text)) return false;
      commas ||= /^\s*[-+]?\d+,(\d{1,2}|\d{4,})\s*$/.test(text);
    }
  }
  return commas;
}

const readMeasureLike = (text: string, decimal: Decimal) =>
  readNumber(text, decimal) !== undefined || readMeasure(text, 'length', { decimal }).ok;

/** Numbers without a unit of their own. */
export const bareOf = (values: readonly Cell[]) =>
  values.filter((value) => typeof value === 'number' || !/[a-z"'′″]/i.test(String(value)));
