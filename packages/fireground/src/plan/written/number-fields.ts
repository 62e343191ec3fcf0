import { formatNumber } from '../../units/format-quantity.ts';
import { parseQuantity, symbolsOf } from '../../units/parse-quantity.ts';
import { fromInside, quantities } from '../../units/quantities.ts';
import { showValue } from '../issue.ts';
import { bad, field, good, type Reading } from './field.ts';
import type { FieldRange } from './ranges.ts';

function short(value: number): string {
  return formatNumber(value, Number.isInteger(value) ? 0 : 3).replace(/(\.\d*?)0+$/, '$1');
}

/** `0 to 100,000 ft`. */
export function rangeText(range: FieldRange): string {
  return `${short(range.least)} to ${short(range.greatest)} ${quantities[range.quantity].inside}`;
}

/** A bound in another unit may miss itself by the rounding of the conversion. */
function onBound(value: number, { least, greatest }: FieldRange): number {
  const isAt = (bound: number) => Math.abs(value - bound) <= 1e-11 * (Math.abs(bound) + 1);
  if (value < least && isAt(least)) return least;
  return value > greatest && isAt(greatest) ? greatest : value;
}

/** Reads a quantity and holds it to its range. */
export function readInRange(written: unknown, range: FieldRange): Reading<number> {
  const { inside, shown } = quantities[range.quantity];
  const allowed = rangeText(range);
  if (written === undefined) {
    return bad('it is missing', allowed, `Write it as a number in ${inside}.`);
  }
  const parsed = parseQuantity(written, range.quantity);
  if (!parsed.ok) return bad(parsed.message, allowed, parsed.remedy);
  const { unit } = parsed;
  const value = onBound(parsed.value, range);
  if (value >= range.least && value <= range.greatest) return good(value);
  const side = value < range.least ? 'below' : 'above';
  const bound = value < range.least ? range.least : range.greatest;
  const seen = `${short(fromInside(value, range.quantity, unit))} ${unit}`;
  return bad(
    `${seen} is ${side} ${short(bound)} ${inside}`,
    allowed,
    `Check the number and its unit; a bare number is in ${shown.us}.`,
  );
}

const numberPattern = '[-+−]?[0-9.,]+([eE][-+]?[0-9]+)?';
const inchPattern = '([ -]*[0-9]+/[0-9]+)?[⅛¼⅜½⅝¾⅞]?';

/** Pattern of a quantity written as text: an editor's first sieve; `readInRange` has the last word. */
export function quantityPattern(range: FieldRange): string {
  const fraction = range.quantity === 'diameter' ? inchPattern : '';
  return `^\\s*${numberPattern}${fraction}\\s*[a-zA-Z°"'′″/. ]*$`;
}

/** A quantity: a bare number in the inside unit, or text with a unit. */
export function quantityField(range: FieldRange, description: string) {
  const { inside } = quantities[range.quantity];
  return field((written) => readInRange(written, range), {
    description: `${description}. A bare number is in ${inside}; or text with one of ${symbolsOf(range.quantity)}. ${rangeText(range)}.`,
    anyOf: [
      { type: 'number', minimum: range.least, maximum: range.greatest },
      { type: 'string', pattern: quantityPattern(range) },
    ],
  });
}

interface PlainRange {
  least: number;
  greatest: number;
}

/** A number without a unit. */
export function plainField(range: PlainRange, description: string) {
  const allowed = `${short(range.least)} to ${short(range.greatest)}`;
  return field(
    (written): Reading<number> => {
      if (written === undefined) return bad('it is missing', allowed, 'Write a number.');
      if (typeof written !== 'number' || !Number.isFinite(written)) {
        return bad(`${showValue(written)} is not a number`, allowed, 'Write a plain number.');
      }
      if (written < range.least || written > range.greatest) {
        return bad(`${written} is out of range`, allowed, 'Check the number.');
      }
      return good(written);
    },
    { description, type: 'number', minimum: range.least, maximum: range.greatest },
  );
}

/** A whole number. */
export function countField(range: PlainRange, description: string) {
  const allowed = `a whole number from ${range.least} to ${range.greatest}`;
  return field(
    (written): Reading<number> => {
      if (written === undefined) return bad('it is missing', allowed, 'Write a number.');
      const fits =
        typeof written === 'number' &&
        Number.isInteger(written) &&
        written >= range.least &&
        written <= range.greatest;
      if (!fits) return bad(`${showValue(written)} does not fit`, allowed, 'Check the number.');
      return good(written === 0 ? 0 : written);
    },
    { description, type: 'integer', minimum: range.least, maximum: range.greatest },
  );
}
