import { formatFraction } from './fractions.ts';
import { fromInside, type Quantity, quantities, type UnitSystem, unitRow } from './quantities.ts';

export interface FormattedQuantity {
  /** For people: `1,060`, `4.8`, `−3`, `2½`. */
  number: string;
  /** The symbol beside it. */
  unit: string;
  /** The unit spoken in full, singular for 1. */
  spoken: string;
}

export interface FormatOptions {
  /** Digits after the point; left out: what is worth showing for the unit. */
  digits?: number;
  /** Another unit of the quantity than the system's own, for instance `kPa`. */
  unit?: string;
}

function groupThousands(digits: string): string {
  return digits.replace(/\B(?=(\d{3})+(?!\d))/g, ',');
}

/** A number as shown everywhere: thousands grouped, a true minus, never "−0". */
export function formatNumber(value: number, digits: number): string {
  if (!Number.isFinite(value)) return '—';
  const fixed = Math.abs(value).toFixed(digits);
  const [whole = '0', part] = fixed.split('.');
  const sign = value < 0 && Number(fixed) !== 0 ? '−' : '';
  return `${sign}${groupThousands(whole)}${part === undefined ? '' : `.${part}`}`;
}

/**
 * Number and unit for a value in its inside unit, rounded to what is worth showing: whole
 * psi, gpm, L/min and ft, one digit of bar. Heights and short lengths under 20 m keep one
 * digit. Inches show as fractions where they are sixteenths.
 *
 * A value that is not finite shows as a dash. Throws for a unit the quantity does not have.
 */
export function formatQuantity(
  value: number,
  quantity: Quantity,
  system: UnitSystem,
  options: FormatOptions = {},
): FormattedQuantity {
  const symbol = options.unit ?? quantities[quantity].shown[system];
  const unit = unitRow(quantity, symbol);
  const shown = fromInside(value, quantity, symbol);
  const spoken = shown === 1 ? unit.singular : unit.plural;
  if (symbol === 'in' && options.digits === undefined && shown > 0 && Number.isFinite(shown)) {
    return { number: formatFraction(shown), unit: symbol, spoken };
  }
  const short = symbol === 'm' && Math.abs(shown) < 20;
  const digits = options.digits ?? (short ? 1 : unit.digits);
  return { number: formatNumber(shown, digits), unit: symbol, spoken };
}
