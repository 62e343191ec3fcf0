/** Typing and stepping a quantity, apart from the field that shows it. */
import {
  formatNumber,
  formatQuantity,
  fromInside,
  parseQuantity,
  type Quantity,
  quantities,
  toInside,
  type UnitSystem,
} from '@plugside/fireground';

/**
 * `count` is a bare whole number; `coefficient` a bare number with two or three digits; `share` a
 * part of 1, shown and typed in per cent.
 */
export type EntryKind = Quantity | 'count' | 'coefficient' | 'share';

export interface EntryRange {
  /** In the inside unit. */
  min: number;
  max: number;
  /** One step in the shown unit, per system; left out: the usual one of the quantity. */
  step?: Record<UnitSystem, number>;
}

const STEPS: Record<EntryKind, Record<UnitSystem, number>> = {
  pressure: { us: 1, si: 0.1 },
  flow: { us: 10, si: 50 },
  length: { us: 1, si: 1 },
  diameter: { us: 0.125, si: 1 },
  volume: { us: 50, si: 100 },
  velocity: { us: 1, si: 0.5 },
  force: { us: 1, si: 5 },
  mass: { us: 1, si: 1 },
  temperature: { us: 1, si: 1 },
  vacuum: { us: 1, si: 0.1 },
  area: { us: 100, si: 10 },
  space: { us: 1000, si: 50 },
  distance: { us: 0.1, si: 0.1 },
  density: { us: 0.01, si: 0.5 },
  count: { us: 1, si: 1 },
  coefficient: { us: 0.005, si: 0.005 },
  share: { us: 5, si: 5 },
};

/** Shift with a step, and Page Up and Page Down. */
export const BIG_STEP = 10;

const bare = (kind: EntryKind): kind is 'count' | 'coefficient' =>
  kind === 'count' || kind === 'coefficient';

const PERCENT = 100;

/** The number in a field, and the unit beside it (empty for bare numbers). */
export function shownEntry(
  value: number,
  kind: EntryKind,
  system: UnitSystem,
): { number: string; unit: string } {
  if (kind === 'count') return { number: formatNumber(value, 0), unit: '' };
  if (kind === 'coefficient') return { number: String(Number(value.toFixed(4))), unit: '' };
  if (kind === 'share') return { number: String(Number((value * PERCENT).toFixed(1))), unit: '%' };
  return formatQuantity(value, kind, system);
}

/** The value one or more steps on, on a round number of steps, held in its range. */
export function stepped(
  value: number,
  steps: number,
  kind: EntryKind,
  system: UnitSystem,
  range: EntryRange,
): number {
  const step = (range.step ?? STEPS[kind])[system];
  const shown = asShown(value, kind, system);
  // From an odd value the first step lands on the next round one.
  const from = shown / step;
  const near = Math.abs(from - Math.round(from)) < 1e-6 ? Math.round(from) : null;
  const target =
    near !== null ? near + steps : steps > 0 ? Math.floor(from) + steps : Math.ceil(from) + steps;
  const next = Number((target * step).toPrecision(12));
  return Math.min(Math.max(asInside(next, kind, system), range.min), range.max);
}

function asShown(value: number, kind: EntryKind, system: UnitSystem): number {
  if (bare(kind)) return value;
  if (kind === 'share') return value * PERCENT;
  return fromInside(value, kind, quantities[kind].shown[system]);
}

function asInside(shown: number, kind: EntryKind, system: UnitSystem): number {
  if (bare(kind)) return shown;
  if (kind === 'share') return shown / PERCENT;
  return toInside(shown, kind, quantities[kind].shown[system]);
}

export type Entry = { ok: true; value: number } | { ok: false; message: string };

/** Reads what was typed: a bare number counts in the unit shown beside the field. */
export function readEntry(
  text: string,
  kind: EntryKind,
  system: UnitSystem,
  range: EntryRange,
): Entry {
  const trimmed = text.trim();
  let value: number;
  if (bare(kind) || kind === 'share') {
    const number = kind === 'share' ? trimmed.replace(/\s*%$/, '') : trimmed;
    value = Number(number.replaceAll(',', ''));
    if (number === '' || !Number.isFinite(value)) {
      return { ok: false, message: `"${trimmed}" is not a number.` };
    }
    if (kind === 'count') value = Math.round(value);
    if (kind === 'share') value /= PERCENT;
  } else {
    const unit = quantities[kind].shown[system];
    const hasUnit = /[a-z"'″′]/i.test(trimmed);
    const parsed = parseQuantity(hasUnit || trimmed === '' ? trimmed : `${trimmed} ${unit}`, kind);
    if (!parsed.ok) return { ok: false, message: `${parsed.message}. ${parsed.remedy}` };
    value = parsed.value;
  }
  if (value < range.min || value > range.max) {
    const least = shownEntry(range.min, kind, system);
    const most = shownEntry(range.max, kind, system);
    const unit = most.unit === '' ? '' : ` ${most.unit}`;
    return { ok: false, message: `Between ${least.number} and ${most.number}${unit}, please.` };
  }
  return { ok: true, value };
}
