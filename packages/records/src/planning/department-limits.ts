import { defaultLimits, type LimitValues } from '@plugside/fireground';
import type { Fields } from '../model/index.ts';

/** Setting that holds limits by name, each a number in inside units: `{ "leastDischargePsi": 60 }`. */
const SETTING = 'limits';
/** As plan files allow: pressures to 2,000 psi; the others are less. */
const MOST = 2000;

/**
 * The limits that a department has set for itself, by their names in `LimitValues` [psi, inHg, ft/s,
 * share of the rated pressure]; empty where there is no such setting.
 * @throws RangeError naming the limit and what is allowed
 */
export function departmentLimits(
  settings: readonly Pick<Fields<'settings'>, 'name' | 'value'>[],
): Partial<LimitValues> {
  const value = settings.find(({ name }) => name === SETTING)?.value;
  if (value === undefined) return {};
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new RangeError(
      `The setting "${SETTING}" is ${JSON.stringify(value).slice(0, 60)}; allowed: names and numbers, as { "leastDischargePsi": 60 }. Correct it among the records.`,
    );
  }
  const limits: Partial<LimitValues> = {};
  for (const [name, given] of Object.entries(value)) {
    if (!Object.hasOwn(defaultLimits, name)) {
      throw new RangeError(
        `The setting "${SETTING}" has "${name.slice(0, 40)}"; allowed: ${Object.keys(defaultLimits).join(', ')}. Correct it among the records.`,
      );
    }
    if (typeof given !== 'number' || !(given >= 0 && given <= MOST)) {
      throw new RangeError(
        `The setting "${SETTING}" has ${name} ${JSON.stringify(given)?.slice(0, 40)}; allowed: a number from 0 to ${MOST}. Correct it among the records.`,
      );
    }
    limits[name as keyof LimitValues] = given;
  }
  return limits;
}
