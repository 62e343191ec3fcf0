import { QuantityError } from './quantity-error.ts';

const CHECK_ENTRY = 'Check the number and its unit.';

/** Throws a `QuantityError` unless `value` is a finite number. */
export function requireFinite(field: string, value: number, unit: string, remedy = CHECK_ENTRY) {
  if (!Number.isFinite(value)) {
    throw new QuantityError({ field, value, allowed: `a finite number of ${unit}`, remedy });
  }
}

/** Throws a `QuantityError` unless `value` is finite and more than 0. */
export function requirePositive(field: string, value: number, unit: string, remedy = CHECK_ENTRY) {
  if (!(Number.isFinite(value) && value > 0)) {
    throw new QuantityError({ field, value, allowed: `more than 0 ${unit}`, remedy });
  }
}

/** Throws a `QuantityError` unless `value` is finite and 0 or more. */
export function requireZeroOrMore(
  field: string,
  value: number,
  unit: string,
  remedy = CHECK_ENTRY,
) {
  if (!(Number.isFinite(value) && value >= 0)) {
    throw new QuantityError({ field, value, allowed: `0 ${unit} or more`, remedy });
  }
}

/** Throws a `QuantityError` unless `least` ≤ `value` ≤ `greatest`. */
export function requireWithin(
  field: string,
  value: number,
  [least, greatest]: readonly [least: number, greatest: number],
  unit: string,
  remedy = CHECK_ENTRY,
) {
  if (!(value >= least && value <= greatest)) {
    throw new QuantityError({ field, value, allowed: `${least} to ${greatest} ${unit}`, remedy });
  }
}

/** Throws a `QuantityError` unless `value` is a whole number of at least `least`. */
export function requireCount(field: string, value: number, least: number, remedy = CHECK_ENTRY) {
  if (!(Number.isInteger(value) && value >= least)) {
    throw new QuantityError({ field, value, allowed: `a whole number, ${least} or more`, remedy });
  }
}
