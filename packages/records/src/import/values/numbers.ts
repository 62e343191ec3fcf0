/** Numbers as people write them in lists: separators, fractions, and words. */
import { parseFraction } from '@plugside/fireground';

export type Decimal = 'point' | 'comma';

const ones: Record<string, number> = {
  zero: 0,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
  thirteen: 13,
  fourteen: 14,
  fifteen: 15,
  sixteen: 16,
  seventeen: 17,
  eighteen: 18,
  nineteen: 19,
  twenty: 20,
  thirty: 30,
  forty: 40,
  fifty: 50,
  sixty: 60,
};
const parts: Record<string, number> = {
  half: 1 / 2,
  quarter: 1 / 4,
  quarters: 1 / 4,
  eighth: 1 / 8,
  eighths: 1 / 8,
};

/**
 * A number with its separators: `1,060`, `1.060,5` (decimal comma), `1 060`, `1'060`, `2 1/2`, `2½`.
 * Undefined where it is none, or where the separators contradict each other.
 */
export function readNumber(text: string, decimal: Decimal = 'point'): number | undefined {
  const plain = text
    .trim()
    .replace(/^[−–]/, '-')
    .replace(/(\d)[\s\u00a0\u202f'’](?=\d{3}(\D|$))/g, '$1');
  if (/^[+-]?(\d+\.?\d*|\.\d+)e[+-]?\d+$/i.test(plain)) return finite(Number(plain));
  const [point, thousands] = decimal === 'point' ? ['.', ','] : [',', '.'];
  const grouped = new RegExp(`^[+-]?\\d{1,3}(\\${thousands}\\d{3})+(\\${point}\\d*)?$`);
  const single = new RegExp(`^[+-]?(\\d+(\\${point}\\d*)?|\\${point}\\d+)$`);
  if (grouped.test(plain) || single.test(plain)) {
    return finite(Number(plain.replaceAll(thousands!, '').replace(point!, '.')));
  }
  const fraction = /^[\d\s/⁄½¼¾⅛⅜⅝⅞-]+$/.test(plain) ? parseFraction(plain) : null;
  return fraction === null ? undefined : finite(fraction);
}

const finite = (value: number) => (Number.isFinite(value) ? value : undefined);

/** `six`, `Twenty-four`, `two and a half`, `four and one half`; undefined where a word is another. */
export function readNumberWords(text: string): number | undefined {
  const words = text
    .toLowerCase()
    .split(/[\s-]+/)
    .filter((word) => word !== '');
  const part = parts[words.at(-1) ?? ''];
  if (part === undefined) return wholeOf(words);
  const before = words.slice(0, -1);
  const count = before.at(-1) === 'a' ? 1 : ones[before.at(-1) ?? ''];
  // "one half" counts parts; in "two half" the two is whole.
  const counted = count !== undefined && (count % 2 === 1 || before.length > 1);
  const rest = counted && before.at(-2) !== undefined ? before.slice(0, -1) : counted ? [] : before;
  const whole = rest.filter((word) => word !== 'and');
  const wholeValue = whole.length === 0 ? 0 : wholeOf(whole);
  return wholeValue === undefined ? undefined : wholeValue + (counted ? count! : 1) * part;
}

function wholeOf(words: readonly string[]): number | undefined {
  const values = words.map((word) => ones[word]);
  if (values.length === 0 || values.some((value) => value === undefined)) return undefined;
  const [first, second] = values as number[];
  if (values.length === 1) return first;
  return values.length === 2 && first! >= 20 && second! > 0 && second! < 10
    ? first! + second!
    : undefined;
}
