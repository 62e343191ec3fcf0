import type { Stored } from '@plugside/records/model';
import { allRecords } from '../api/records.ts';

/** As records allow. */
export const LONGEST_NAME = 120;

/** Plans on record of a name, and of that name with a number behind it. */
export async function plansNamed(title: string): Promise<Stored<'plans'>[]> {
  const found = await allRecords('plans', { search: title });
  return found.filter(({ name }) => name === title || isNumbered(name, title));
}

/** `(2)`, `(3)` … behind a name that is cut to make room for it. */
const numbered = (title: string, number: number): string => {
  const behind = ` (${number})`;
  return `${title.slice(0, LONGEST_NAME - behind.length)}${behind}`;
};

function isNumbered(name: string, title: string): boolean {
  const number = Number(/ \((\d+)\)$/.exec(name)?.[1]);
  return Number.isInteger(number) && name === numbered(title, number);
}

/** The name itself, or with the first number that none of the others has. */
export function freeName(title: string, taken: readonly { name: string }[]): string {
  const names = new Set(taken.map(({ name }) => name));
  if (!names.has(title)) return title;
  let number = 2;
  while (names.has(numbered(title, number))) number += 1;
  return numbered(title, number);
}
