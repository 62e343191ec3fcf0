import { type Quantity, quantities, toInside, type UnitSystem } from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';

/** Room around a graph [px]: for the ticks on the left and below. */
export const EDGE = { left: 40, right: 14, top: 18, bottom: 28 } as const;

export const graphHeight = (widthPx: number): number =>
  Math.round(Math.min(400, Math.max(260, widthPx * 0.56)));

export interface Axis {
  /** Place of a value in its inside unit [px]. */
  at(value: number): number;
  /** Round marks in the shown unit, as text. */
  ticks: { value: number; text: string }[];
}

/** An even axis from 0 to `most` (inside unit), marked in the shown unit. */
export function evenAxis(
  most: number,
  quantity: Quantity,
  system: UnitSystem,
  [from, to]: readonly [number, number],
  count: number,
): Axis {
  const unit = quantities[quantity].shown[system];
  const inside = (shown: number) => toInside(shown, quantity, unit);
  const perShown = inside(1);
  const scale = scaleLinear([0, most], [from, to]);
  const ticks = scaleLinear([0, most / perShown], [0, 1])
    .ticks(count)
    .map((shown) => ({ value: inside(shown), text: shown.toLocaleString('en-US') }));
  return { at: (value) => scale(value), ticks };
}
