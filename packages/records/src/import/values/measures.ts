import type { Cell } from '../source/source.ts';
import { type Decimal, readNumber, readNumberWords } from './numbers.ts';
import { findUnit, insideUnitOf, type Measure, unitsOf } from './units.ts';

export type Read<T> = { ok: true; value: T } | { ok: false; reason: string; remedy: string };

/** What stands after a main's size: its material, and "main" or "line". */
const material =
  /\s*\b(d\.?i\.?p?|c\.?i\.?p?|a\.?c\.?p?|pvc|hdpe|pe|stl|steel|ductile( iron)?|cast( iron)?|iron|asbestos( cement)?|main|line|pipe|dia|diam|diameter)\.?$/i;

export interface MeasureOptions {
  /** Unit of a bare number; left out: the inside unit. */
  unit?: string;
  decimal?: Decimal;
}

/**
 * A quantity in its inside unit (gpm, psi, ft, in, gal, ft²) from a cell of a list: `345 ft`, `3ft`,
 * `5' 6"`, `DN 100`, `6"`, `150 mm`, `six inch`, `1,060`, `2 1/2`. A unit in the value goes before
 * the column's. Never throws.
 */
export function readMeasure(
  cell: Cell,
  measure: Measure,
  { unit, decimal = 'point' }: MeasureOptions = {},
): Read<number> {
  const remedy = `Write a number in ${unit ?? insideUnitOf(measure)}, or with its unit (${unitsOf(measure).join(', ')}).`;
  const columnUnit = findUnit(unit ?? insideUnitOf(measure), measure);
  if (!columnUnit) return { ok: false, reason: `${unit} is no unit of ${measure}.`, remedy };
  if (typeof cell === 'number') return { ok: true, value: columnUnit.toInside(cell) };
  if (typeof cell !== 'string') return { ok: false, reason: 'It is no number.', remedy };
  const text = cell.trim();
  const read =
    withUnit(text, measure, decimal) ?? withUnit(withoutMaterial(text), measure, decimal);
  if (!read) return { ok: false, reason: `It is not understood as a ${measure}.`, remedy };
  const from = read.unit === undefined ? columnUnit : read.unit;
  const value = from.toInside(read.value);
  return Number.isFinite(value)
    ? { ok: true, value }
    : { ok: false, reason: 'It is too large a number.', remedy };
}

function withoutMaterial(text: string): string {
  const once = text.replace(material, '');
  return once === text ? text : withoutMaterial(once);
}

type Unit = NonNullable<ReturnType<typeof findUnit>>;

function withUnit(
  text: string,
  measure: Measure,
  decimal: Decimal,
): { value: number; unit?: Unit } | undefined {
  const bare = readNumber(text, decimal);
  if (bare !== undefined) return { value: bare };
  if (measure === 'length') {
    const feet = /^(\d+(?:\.\d+)?)\s*(?:'|ft\.?)\s*-?\s*(\d+(?:\.\d+)?)\s*(?:"|in\.?)$/i.exec(text);
    const foot = findUnit('ft', 'length')!;
    if (feet) return { value: Number(feet[1]) + Number(feet[2]) / 12, unit: foot };
  }
  if (measure === 'diameter') {
    // Nominal sizes: DN (ISO 6708), the older NW, and a diameter sign.
    const nominal = /^(dn|nw|ø|⌀|d)\s*=?\s*(\d+)(\s*mm)?$/i.exec(text);
    if (nominal && (nominal[3] || /^(dn|nw)/i.test(text) || Number(nominal[2]) >= 40)) {
      return { value: Number(nominal[2]), unit: findUnit('mm', 'diameter')! };
    }
  }
  // The longest number at the start, then a unit.
  const split =
    /^([+\-−–]?[\d.,\s\u00a0\u202f'’]*[\d.½¼¾⅛⅜⅝⅞](?:\s*[-\s]\s*\d+\s*[/⁄]\s*\d+|\s*[/⁄]\s*\d+)?\s*[½¼¾⅛⅜⅝⅞]?|[½¼¾⅛⅜⅝⅞])\s*[-]?\s*(\D.*)$/.exec(
      text,
    );
  if (split) {
    const value = readNumber(split[1]!, decimal);
    const unit = findUnit(split[2]!, measure);
    if (value !== undefined && unit) return { value, unit };
  }
  const words = /^([a-z][a-z\s-]*?)[\s-]*\b(inch|inches|in|mm|feet|foot|ft|gpm|psi|bar)?\.?$/i.exec(
    text,
  );
  const value = words ? readNumberWords(words[1]!) : undefined;
  if (value === undefined) return undefined;
  const unit = words![2] ? findUnit(words![2], measure) : undefined;
  return words![2] && !unit ? undefined : { value, ...(unit && { unit }) };
}

/**
 * Storeys of which one is a part: `2.5` (two and a half), `3+1` (and an attic). The part counts as one
 * more, since more storeys ask for more water. Undefined for any other cell.
 */
export function readParts(cell: Cell, decimal: Decimal = 'point'): Read<number> | undefined {
  if (typeof cell !== 'number' && typeof cell !== 'string') return undefined;
  const sum = /^\s*(\d{1,3}(?:[.,]\d)?)\s*\+\s*(\d(?:[.,]\d)?)\s*$/.exec(String(cell));
  const terms = (sum ? sum.slice(1) : [String(cell)]).map((one) => readNumber(one, decimal));
  if (terms.some((one) => one === undefined || one < 0)) return undefined;
  return { ok: true, value: Math.ceil(terms.reduce<number>((all, one) => all + one!, 0)) };
}

/** A whole number: digits or a word. */
export function readCount(cell: Cell, decimal: Decimal = 'point'): Read<number> {
  const value =
    typeof cell === 'number'
      ? cell
      : typeof cell === 'string'
        ? (readNumber(cell, decimal) ?? readNumberWords(cell))
        : undefined;
  return value !== undefined && Number.isInteger(value)
    ? { ok: true, value }
    : { ok: false, reason: 'It is no whole number.', remedy: 'Write a whole number, such as 2.' };
}
