import { formatQuantity } from '../units/format-quantity.ts';
import type { Quantity, UnitSystem } from '../units/quantities.ts';

/** Numbers in sentences, in the reader's units. */
export interface Say {
  /** "185 psi" */
  full(value: number, quantity: Quantity): string;
  /** "185": for the radio, where the unit goes without saying. */
  bare(value: number, quantity: Quantity): string;
}

export function sayIn(units: UnitSystem): Say {
  return {
    full(value, quantity) {
      const { number, unit } = formatQuantity(value, quantity, units);
      return `${number} ${unit}`;
    },
    bare(value, quantity) {
      return formatQuantity(value, quantity, units).number;
    },
  };
}
