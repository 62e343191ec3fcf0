import type { Cell } from '../source/source.ts';
import type { Read } from './measures.ts';

export type DateOrder = 'day first' | 'month first';

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const remedy = 'Write the date as 2024-03-31.';

export type DateRead =
  | Read<string>
  | { ok: false; reason: string; remedy: string; ambiguous: true };

/**
 * A day as ISO text from the forms that lists have: `2024-03-31`, `20240331`, `3/31/2024`,
 * `31.03.2024`, `31-Mar-24`, `March 31, 2024`, each with or without a weekday and a time; a number of
 * milliseconds (as web map services write it) or seconds since 1970; a spreadsheet's day number. The day
 * is the one that is written, whatever its time zone. Where day and month cannot be told apart, `order`
 * decides; without it the date is refused as ambiguous. Two-digit years are of 1970 to 2069. With dots
 * the day is first, as wherever dates are written so. A day that programs count from is none.
 * @param own the date is one that we wrote ourselves: any day is meant
 */
export function readDate(cell: Cell, order?: DateOrder, own = false): DateRead {
  const read = readAnyDate(cell, order);
  return read.ok && !own && noDays.has(read.value)
    ? fail('Programs write that day where they have none.')
    : read;
}

function readAnyDate(cell: Cell, order: DateOrder | undefined): DateRead {
  if (typeof cell === 'number') return fromNumber(cell);
  if (typeof cell !== 'string') return fail('It is no date.');
  const text = cell
    .trim()
    .replace(/^(mon|tue|tues|wed|wednes|thu|thur|thurs|fri|sat|satur|sun)(day)?[,.]?\s+/i, '')
    .replace(
      /[T,\s]+\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?\s*([ap]\.?m\.?)?\s*(Z|UTC|GMT|[+-]\d{2}(:?\d{2})?)?$/i,
      '',
    );
  const iso =
    /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text) ??
    // With hours, minutes and seconds run on, too.
    /^(\d{4})(\d{2})(\d{2})(?:[01]\d[0-5]\d[0-5]\d|2[0-3][0-5]\d[0-5]\d)?$/.exec(text);
  if (iso) return day(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const figures = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})$/.exec(text);
  if (figures) {
    const [first, second] = [Number(figures[1]), Number(figures[3])];
    const year = fullYear(figures[4]!);
    const told =
      figures[2] === '.'
        ? 'day first'
        : first > 12
          ? 'day first'
          : second > 12
            ? 'month first'
            : order;
    if (told === undefined && first !== second) {
      return {
        ok: false,
        ambiguous: true,
        reason: 'Day and month cannot be told apart.',
        remedy: 'Say whether the list writes the day or the month first, or write 2024-03-31.',
      };
    }
    return told === 'day first' ? day(year, second, first) : day(year, first, second);
  }
  const named =
    /^(?<d>\d{1,2})(?:st|nd|rd|th)?[\s.-]*(?<m>[a-z]{3,9})\.?[\s,.-]*(?<y>\d{4}|\d{2})$/i.exec(
      text,
    ) ?? /^(?<m>[a-z]{3,9})\.?\s*(?<d>\d{1,2})(?:st|nd|rd|th)?[\s,]+(?<y>\d{4}|\d{2})$/i.exec(text);
  if (named?.groups) {
    const month = months.indexOf(named.groups.m!.slice(0, 3).toLowerCase()) + 1;
    if (month > 0) return day(fullYear(named.groups.y!), month, Number(named.groups.d));
  }
  if (/^\d{10,14}$/.test(text) || /^\d{5}(\.\d+)?$/.test(text)) return fromNumber(Number(text));
  if (/^\d{4}([-/]\d{1,2})?(\s*\(.*\))?$/.test(text)) return fail('It names no day.');
  return fail('It is no date that is understood.');
}

const fail = (reason: string): DateRead => ({ ok: false, reason, remedy });

const fullYear = (text: string) => {
  const year = Number(text);
  return text.length === 4 ? year : year + (year >= 70 ? 1900 : 2000);
};

/** The day that programs count from, which stands for a blank one. */
const noDays = new Set(['1899-12-30', '1899-12-31', '1900-01-01', '1970-01-01']);

function day(year: number, month: number, date: number): DateRead {
  const made = new Date(Date.UTC(year, month - 1, date));
  const real =
    made.getUTCFullYear() === year &&
    made.getUTCMonth() === month - 1 &&
    made.getUTCDate() === date;
  if (!real || year < 1850 || year > 2100) return fail('There is no such day.');
  return { ok: true, value: made.toISOString().slice(0, 10) };
}

function fromNumber(value: number): DateRead {
  if (Number.isInteger(value) && value >= 18500101 && value <= 21001231) {
    const text = String(value);
    return day(Number(text.slice(0, 4)), Number(text.slice(4, 6)), Number(text.slice(6)));
  }
  // A spreadsheet counts days so that 2000-01-01 is 36526.
  if (value >= 20_000 && value < 80_000) {
    const made = new Date(Date.UTC(2000, 0, 1) + (Math.floor(value) - 36_526) * 86_400_000);
    return { ok: true, value: made.toISOString().slice(0, 10) };
  }
  // Seconds since 1970, from 2001 to 2100.
  if (value >= 1e9 && value < 4.2e9) return fromNumber(value * 1000);
  if (Math.abs(value) >= 1e10 && Math.abs(value) < 4.2e12) {
    return { ok: true, value: new Date(value).toISOString().slice(0, 10) };
  }
  return fail('It is no date that is understood.');
}
