import { formatQuantity, type Quantity, quantities, type UnitSystem } from '@plugside/fireground';

/** Numbers in the reader's units. */
export interface Figures {
  units: UnitSystem;
  /** `1,305` */
  bare(value: number, quantity: Quantity): string;
  /** `1,305 gpm` */
  full(value: number, quantity: Quantity): string;
  /** `gpm` */
  unit(quantity: Quantity): string;
}

export function figuresIn(units: UnitSystem = 'us'): Figures {
  return {
    units,
    bare: (value, quantity) => formatQuantity(value, quantity, units).number,
    full(value, quantity) {
      const { number, unit } = formatQuantity(value, quantity, units);
      return `${number} ${unit}`;
    },
    unit: (quantity) => quantities[quantity].shown[units],
  };
}
