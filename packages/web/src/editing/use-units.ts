import {
  type FormattedQuantity,
  formatHoseSize,
  formatNumber,
  formatQuantity,
  type HoseSize,
  type Quantity,
  type UnitSystem,
} from '@plugside/fireground';
import { useMemo } from 'react';
import { useView } from '../plan-store/view.ts';

/** Values as this person reads them. */
export interface Units {
  system: UnitSystem;
  /** Number and unit apart, for setting them in different sizes. */
  of(value: number, quantity: Quantity): FormattedQuantity;
  /** `185 psi` in one run of text. */
  text(value: number, quantity: Quantity): string;
  /** The number alone, where the unit stands elsewhere. */
  number(value: number, quantity: Quantity): string;
  hose(size: HoseSize): string;
}

/** Formatting in one system of units. */
export function unitsIn(system: UnitSystem): Units {
  const of = (value: number, quantity: Quantity) => formatQuantity(value, quantity, system);
  return {
    system,
    of,
    text: (value, quantity) => {
      const { number, unit } = of(value, quantity);
      return `${number} ${unit}`;
    },
    number: (value, quantity) => of(value, quantity).number,
    hose: (size) => formatHoseSize(size, system),
  };
}

export function useUnits(): Units {
  const system = useView((view) => view.units);
  return useMemo(() => unitsIn(system), [system]);
}

export { formatNumber };
