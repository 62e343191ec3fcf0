import { parseFraction } from './fractions.ts';
import { type Quantity, quantities, toInside, type UnitRow } from './quantities.ts';

export type ParsedQuantity =
  | {
      ok: true;
      /** In the inside unit. */
      value: number;
      /** Symbol of the unit that was written, or the inside one where none was. */
      unit: string;
    }
  | { ok: false; message: string; remedy: string };

/** Ways to write a value of this quantity, for a message. */
function waysToWrite(quantity: Quantity): string {
  return `a number in ${quantities[quantity].inside}, or a number with its unit (${symbolsOf(quantity)})`;
}

/** The symbols a quantity can be written in, for a message. */
export function symbolsOf(quantity: Quantity): string {
  return quantities[quantity].units.map((unit) => unit.symbol).join(', ');
}

function findUnit(quantity: Quantity, text: string): UnitRow | undefined {
  const { units } = quantities[quantity];
  const exact = units.find((unit) => unit.symbol === text);
  if (exact) return exact;
  const lower = text.toLowerCase();
  return units.find(
    (unit) =>
      unit.symbol.toLowerCase() === lower ||
      unit.singular.toLowerCase() === lower ||
      unit.plural.toLowerCase() === lower ||
      unit.also.includes(lower),
  );
}

function readNumber(text: string, quantity: Quantity): number | string {
  const signed = text.replace(/^[−–]/, '-');
  if (/^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(signed)) return Number(signed.replaceAll(',', ''));
  if (signed.includes(',')) return 'a comma only separates thousands; write a decimal point';
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(signed)) return Number(signed);
  if (quantity === 'diameter') {
    const inches = parseFraction(signed);
    if (inches !== null) return inches;
  }
  return 'no number in it';
}

/**
 * Reads a quantity as people write it into its inside unit: `900`, `'900 ft'`, `'4.8 bar'`,
 * `'1,060 gpm'`, `'1 1/8 in'`. A bare number is in the inside unit already and comes back
 * unchanged. Fractions are for diameters only.
 *
 * Never throws; the failure says what was seen and what can be written instead. Takes any
 * finite number: ranges belong to the field that holds the value.
 */
export function parseQuantity(input: unknown, quantity: Quantity): ParsedQuantity {
  const remedy = `Write ${waysToWrite(quantity)}.`;
  if (typeof input === 'number') {
    if (!Number.isFinite(input)) {
      return { ok: false, message: `${input} is not a ${quantity}`, remedy };
    }
    return { ok: true, value: input === 0 ? 0 : input, unit: quantities[quantity].inside };
  }
  if (typeof input !== 'string' || input.trim() === '') {
    const seen = input === null || input === '' ? 'nothing is written' : `not a ${quantity}`;
    return { ok: false, message: seen, remedy };
  }
  const text = input.trim();
  const split =
    /^([+\-−–]?[\d.,]+(?:e[+-]?\d+)?(?:\s*[-\s]\s*\d+\s*[/⁄]\s*\d+|\s*[/⁄]\s*\d+)?\s*[⅛¼⅜½⅝¾⅞]?|[⅛¼⅜½⅝¾⅞])\s*(.*)$/i.exec(
      text,
    );
  if (!split) return { ok: false, message: `"${text}" does not begin with a number`, remedy };
  const [, numberText = '', unitText = ''] = split;
  const value = readNumber(numberText.trim(), quantity);
  if (typeof value === 'string') return { ok: false, message: `"${text}": ${value}`, remedy };
  const unit =
    unitText === ''
      ? findUnit(quantity, quantities[quantity].inside)
      : findUnit(quantity, unitText.trim());
  if (!unit) {
    return { ok: false, message: `"${unitText.trim()}" is not a unit of ${quantity}`, remedy };
  }
  const inside = toInside(value, quantity, unit.symbol);
  if (!Number.isFinite(inside)) {
    return { ok: false, message: `"${text}" is too large a number`, remedy };
  }
  return { ok: true, value: inside === 0 ? 0 : inside, unit: unit.symbol };
}
