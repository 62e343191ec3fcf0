import type { Source } from './sources.ts';

/**
 * published: inputs and answer are printed. corrected: the printed answer breaks its source's own
 * formula, and the formula's answer stands. recalled: from memory. derived: formula and constants
 * are the source's, the answer worked by hand. field test: measured, with our arithmetic.
 */
export type Basis = 'published' | 'corrected' | 'recalled' | 'derived' | 'field test';

/** One worked value from outside the project. */
export interface PublishedRow<Given, Expected> {
  given: Given;
  expected: Expected;
  /** Absolute tolerance of each number: what its source rounds to. */
  within: { readonly [quantity: string]: number };
  source: Source;
  basis: Basis;
  note?: string;
}

const written = (values: object) =>
  Object.entries(values)
    .map(([name, value]) => `${name} ${JSON.stringify(value)}`)
    .join(', ');

/** Each row with a title that carries its values, its basis and its source. */
export function titled<Row extends PublishedRow<object, object>>(
  rows: readonly Row[],
): [title: string, row: Row][] {
  return rows.map((row) => [
    `${written(row.given)} → ${written(row.expected)} (${row.basis}: ${row.source.title})`,
    row,
  ]);
}

/** What an answer misses of a row, in words; empty when it holds. A number without a tolerance must be equal. */
export function misses<Expected extends object>(
  row: PublishedRow<object, Expected>,
  got: { [Name in keyof Expected]: unknown },
): string[] {
  return Object.entries(row.expected).flatMap(([name, expected]) => {
    const value = (got as Record<string, unknown>)[name];
    const tolerance = row.within[name] ?? 0;
    const holds =
      typeof expected === 'number'
        ? typeof value === 'number' && Math.abs(value - expected) <= tolerance
        : value === expected;
    return holds ? [] : [`${name} is ${String(value)}, source ${String(expected)} ± ${tolerance}`];
  });
}
