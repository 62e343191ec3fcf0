/** A test that was begun and left: what was kept of it, made good against what the form knows now. */
import { type Row, rowAgain, rowOf } from './reading-rows.ts';

/**
 * The kept draft, with rows under the keys they had; null where it is none of this form's.
 * @param kept as it was stored: anything at all
 * @param fresh the form as it would begin
 * @param row an empty row's value; a number that may be cleared is undefined in it
 */
export function restoredDraft<T extends object>(kept: unknown, fresh: T, row: object): T | null {
  if (!isObject(kept)) return null;
  const entries = Object.entries(fresh).map(([name, value]): [string, unknown] => {
    const was = kept[name];
    if (Array.isArray(value)) return [name, Array.isArray(was) ? rowsOf(was, row) : value];
    // JSON leaves out a number that was cleared.
    if (value === undefined || typeof value === 'number')
      return [name, typeof was === 'number' ? was : undefined];
    return [name, typeof was === typeof value ? was : value];
  });
  return Object.fromEntries(entries) as T;
}

function rowsOf(kept: readonly unknown[], row: object): Row<object>[] {
  return kept.flatMap((one) => {
    if (!isObject(one) || !isObject(one.value)) return [];
    const { value } = one;
    const cells = Object.entries(row).map(([name, empty]) => {
      const was = value[name];
      const fits = empty === undefined ? typeof was === 'number' : typeof was === typeof empty;
      return [name, fits ? was : empty];
    });
    const whole = Object.fromEntries(cells) as object;
    return [Number.isSafeInteger(one.key) ? rowAgain(one.key as number, whole) : rowOf(whole)];
  });
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Texts that could not be read, as they were kept with it. */
export function restoredTexts(kept: unknown): Readonly<Record<string, string>> {
  if (!isObject(kept) || !isObject(kept.unread)) return {};
  const texts = Object.entries(kept.unread).filter(([, text]) => typeof text === 'string');
  return Object.fromEntries(texts) as Record<string, string>;
}
