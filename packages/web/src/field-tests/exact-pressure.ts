import { formatQuantity } from '@plugside/fireground';
import type { Units } from '../editing/use-units.ts';

/** A pressure with one digit more than usual, where small differences are the point. */
export function exactPressure(valuePsi: number, { system }: Pick<Units, 'system'>): string {
  const digits = system === 'us' ? 1 : 2;
  const { number, unit } = formatQuantity(valuePsi, 'pressure', system, { digits });
  return `${number} ${unit}`;
}
