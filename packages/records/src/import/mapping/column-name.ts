import { findUnit, isOfOtherMeasure, type Measure } from '../values/units.ts';

/** A column's name in lower case with single spaces: `STATIC_PSI`, `staticPsi` → `static psi`. */
export function plainName(column: string): string {
  return column
    .replace(/kPa|[fm]t?H2O/g, (unit) => unit.toLowerCase())
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}@/³²"']+/gu, ' ')
    .trim();
}

export interface NamedUnit {
  /** The name without its unit. */
  name: string;
  unit?: string;
}

/**
 * The unit that a column's name states and that cannot be read for the measure: `Flow (gal/fortnight)`,
 * `Static (gpm)`. Its numbers must not be taken for another unit. Undefined where it states none.
 */
export function strangeUnit(column: string, measure: Measure): string | undefined {
  const inside = /[([]\s*([^)\]]+?)\s*[)\]]/.exec(column)?.[1];
  if (inside !== undefined && !findUnit(inside, measure)) {
    const ratio = /^\p{L}{1,9}[\d²³]?\s*\/\s*\p{L}{1,9}[\d²³]?$/u.test(inside);
    if (ratio || isOfOtherMeasure(inside, measure)) return inside;
  }
  const last = plainName(column).split(' ').at(-1)!;
  return last.length > 2 && last !== plainName(column) && isOfOtherMeasure(last, measure)
    ? last
    : undefined;
}

/** Takes a unit off a column's name: `flow_gpm`, `Main Size (in)`, `PSI static`, `Flow [m³/h]`. */
export function unitInName(column: string, measure: Measure): NamedUnit {
  const bracketed = /[([]\s*([^)\]]+?)\s*[)\]]/.exec(column);
  const inBrackets = bracketed && findUnit(bracketed[1]!, measure);
  if (inBrackets) {
    return { name: plainName(column.replace(bracketed[0], ' ')), unit: inBrackets.symbol };
  }
  const words = plainName(column).split(' ');
  // "l s" for L/s, "m3 h" for m³/h: two words at the end first.
  for (const count of [2, 1]) {
    if (words.length <= count) continue;
    const last = findUnit(words.slice(-count).join(count === 2 ? '/' : ''), measure);
    if (last) return { name: words.slice(0, -count).join(' '), unit: last.symbol };
  }
  if (words.length > 1) {
    const first = findUnit(words[0]!, measure);
    // "Meter pressure" is one read off a meter.
    if (first && words[0]!.length > 1 && !/H2O/.test(first.symbol))
      return { name: words.slice(1).join(' '), unit: first.symbol };
  }
  if (words.length === 1) {
    const whole = findUnit(words[0]!, measure);
    if (whole) return { name: words[0]!, unit: whole.symbol };
    // "FLOWGPM": units that are no end of another word.
    const joined = /^(.{3,}?)(psi|kpa|gpm|lpm)$/.exec(words[0]!);
    const end = joined && findUnit(joined[2]!, measure);
    if (end) return { name: joined[1]!, unit: end.symbol };
  }
  return { name: words.join(' ') };
}

/** How well a column's name fits one of a field's names: 0 not at all, 0.9 exactly. */
export function nameScore(name: string, names: readonly string[]): number {
  const compact = name.replaceAll(' ', '');
  const words = new Set(name.split(' '));
  let best = 0;
  names.forEach((one, at) => {
    // Names earlier in the list are the likelier.
    best = Math.max(best, score(one) - Math.min(at, 40) * 0.0005);
  });
  return best;

  function score(one: string): number {
    if (one === name) return 0.9;
    const other = one.replaceAll(' ', '');
    if (other === compact) return 0.88;
    // A shapefile cuts names off after ten letters.
    if (compact.length >= 8 && compact.length <= 10 && other.startsWith(compact)) return 0.72;
    if (other.length >= 5 && compact.startsWith(other)) return 0.6;
    const parts = one.split(' ');
    if (other.length >= 4 && parts.every((part) => words.has(part))) {
      return 0.5 + 0.15 * (parts.length / words.size);
    }
    return 0;
  }
}
