import { formatQuantity, type Quantity, quantities, type UnitSystem } from '@plugside/fireground';

/** Numbers in the reader's units. */
export interface Figures {
  /** `1,305` */
  bare(value: number, quantity: Quantity): string;
  /** `1,305 gpm` */
  full(value: number, quantity: Quantity): string;
  /** `gpm` */
  unit(quantity: Quantity): string;
  /** A column's head: `Flow, gpm` */
  head(label: string, quantity: Quantity): string;
}

export function figuresIn(units: UnitSystem): Figures {
  return {
    bare: (value, quantity) => formatQuantity(value, quantity, units).number,
    full(value, quantity) {
      const { number, unit } = formatQuantity(value, quantity, units);
      return `${number} ${unit}`;
    },
    unit: (quantity) => quantities[quantity].shown[units],
    head: (label, quantity) => `${label}, ${quantities[quantity].shown[units]}`,
  };
}

/** The quantity behind a limit's unit. */
export const quantityOfUnit = {
  psi: 'pressure',
  gpm: 'flow',
  'ft/s': 'velocity',
  inHg: 'vacuum',
} as const satisfies Record<string, Quantity>;
