import { formatQuantity, type UnitSystem } from '@plugside/fireground';
import { type EntryKind, shownEntry } from '../editing/quantity-entry.ts';

/** Digits after the point that a written reading keeps. */
const KEPT_DIGITS: Partial<Record<EntryKind, Record<UnitSystem, number>>> = {
  pressure: { us: 2, si: 2 },
  flow: { us: 1, si: 0 },
  length: { us: 1, si: 2 },
};

/**
 * A reading as it stands in its field: with the digits that a gauge shows, so that what was typed
 * does not seem to change. Values elsewhere are rounded to what is worth showing.
 */
export function readingText(value: number, kind: EntryKind, system: UnitSystem): string {
  const digits = KEPT_DIGITS[kind]?.[system];
  if (digits === undefined || kind === 'count' || kind === 'coefficient' || kind === 'share') {
    return shownEntry(value, kind, system).number;
  }
  const { number } = formatQuantity(value, kind, system, { digits });
  return number.includes('.') ? number.replace(/\.?0+$/, '') : number;
}
