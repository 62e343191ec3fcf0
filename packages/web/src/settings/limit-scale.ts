/** A limit as a bar: where the value stands, which side is out of bounds, and the room between. */
import type { LimitCheck } from '@plugside/fireground';

export interface LimitBar {
  /** Shares of the bar's width, 0 … 1. */
  valueAt: number;
  limitAt: number;
  /** The part between limit and value that is left to use. */
  roomFrom: number;
  roomTo: number;
  /** The forbidden side. */
  outFrom: number;
  outTo: number;
}

/** Places value and limit. The limit stands at a fifth from its forbidden end. */
export function limitBar(check: Pick<LimitCheck, 'value' | 'limit' | 'sense'>): LimitBar {
  const spanOf = Math.max(Math.abs(check.limit), 1);
  const inRange = (share: number) => Math.min(Math.max(share, 0.01), 0.99);
  if (check.sense === 'min') {
    // From nothing to four and a half times the limit: most intakes and mains lie in between.
    const limitAt = 0.22;
    const valueAt = inRange(limitAt + ((check.value - check.limit) / spanOf) * 0.25);
    return {
      valueAt,
      limitAt,
      roomFrom: limitAt,
      roomTo: Math.max(valueAt, limitAt),
      outFrom: 0,
      outTo: limitAt,
    };
  }
  const limitAt = 0.82;
  const valueAt = inRange((check.value / spanOf) * limitAt);
  return {
    valueAt,
    limitAt,
    roomFrom: Math.min(valueAt, limitAt),
    roomTo: limitAt,
    outFrom: limitAt,
    outTo: 1,
  };
}
