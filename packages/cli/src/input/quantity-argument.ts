import {
  type FieldRange,
  formatNumber,
  parseQuantity,
  type Quantity,
  quantities,
} from '@plugside/fireground';
import { InvalidArgumentError } from 'commander';

/** Reads `900`, `'900 ft'`, `'275 m'` within a range; the value comes back in inside units. */
export function readQuantity(text: string, range: FieldRange): number {
  const read = parseQuantity(text, range.quantity);
  if (!read.ok) throw new InvalidArgumentError(`${read.message}. ${read.remedy}`);
  if (read.value < range.least || read.value > range.greatest) {
    throw new InvalidArgumentError(
      `Allowed: ${rangeText(range)}. Write ${wayToWrite(range.quantity)}.`,
    );
  }
  return read.value;
}

/** An option's reader for a quantity. */
export const quantityArgument = (range: FieldRange) => (text: string) => readQuantity(text, range);

/** `0 to 100,000 ft` */
export function rangeText({ quantity, least, greatest }: FieldRange): string {
  const digits = (value: number) => (Number.isInteger(value) ? 0 : 1);
  const bound = (value: number) => formatNumber(value, digits(value));
  return `${bound(least)} to ${bound(greatest)} ${quantities[quantity].inside}`;
}

function wayToWrite(quantity: Quantity): string {
  const { inside, shown } = quantities[quantity];
  return `a number in ${inside}, or with its unit (${inside}, ${shown.si})`;
}
