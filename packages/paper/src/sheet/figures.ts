import {
  formatNumber,
  formatQuantity,
  fromInside,
  type Quantity,
  quantities,
  type UnitSystem,
} from '@plugside/fireground';

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

/** Litres a minute are read and set in tens. */
const TEN_LPM = 10;

export function figuresIn(units: UnitSystem = 'us'): Figures {
  const shown = (value: number, quantity: Quantity) => {
    if (units === 'us' || quantity !== 'flow' || !Number.isFinite(value)) {
      return formatQuantity(value, quantity, units);
    }
    const tens = Math.round(fromInside(value, 'flow', 'L/min') / TEN_LPM) * TEN_LPM;
    return { number: formatNumber(tens, 0), unit: 'L/min' };
  };
  return {
    units,
    bare: (value, quantity) => shown(value, quantity).number,
    full(value, quantity) {
      const { number, unit } = shown(value, quantity);
      return `${number} ${unit}`;
    },
    unit: (quantity) => quantities[quantity].shown[units],
  };
}

/** A sentence of others' making with its litres a minute in tens, as everywhere on paper. */
export function inTens(text: string): string {
  return text.replace(/([\d,]+) L\/min/g, (whole, digits: string) => {
    const flow = Number(digits.replaceAll(',', ''));
    if (!Number.isFinite(flow)) return whole;
    return `${formatNumber(Math.round(flow / TEN_LPM) * TEN_LPM, 0)} L/min`;
  });
}
