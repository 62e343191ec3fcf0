import { fromInside, type Quantity, quantities, type UnitSystem } from '../../units/quantities.ts';

/** Far finer than anything is measured, and coarser than what converting there and back costs. */
const METRIC_DIGITS = 12;

/**
 * A quantity with its unit, as a plan file has it: in US units read back as the very same value,
 * in SI units as the same to twelve digits.
 * @param value in the inside unit
 */
export function writtenQuantity(value: number, quantity: Quantity, system: UnitSystem): string {
  const { inside, shown } = quantities[quantity];
  if (system === 'us') return `${value} ${inside}`;
  const converted = fromInside(value, quantity, shown.si);
  return `${Number(converted.toPrecision(METRIC_DIGITS))} ${shown.si}`;
}
