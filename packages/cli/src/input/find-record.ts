import { CommandFailure } from '../failure.ts';

/** Names told where none fits. */
const MOST_NAMES = 12;

/**
 * The record of that name or id; case does not matter.
 * @param what in the singular, for the message: "rig"
 * @throws CommandFailure where there is none, or more than one of the name
 */
export function recordNamed<T extends { id: string; name: string }>(
  records: readonly T[],
  wanted: string,
  what: string,
): T {
  const plain = wanted.trim().toLowerCase();
  const found = records.filter(
    ({ id, name }) => id.toLowerCase() === plain || name.toLowerCase() === plain,
  );
  if (found.length === 1) return found[0]!;
  if (found.length > 1) {
    const ids = found.map(({ id }) => id).join(', ');
    throw new CommandFailure(
      `There are ${found.length} records of a ${what} "${wanted}". Name one by its id: ${ids}.`,
    );
  }
  const names = records
    .map(({ name }) => name)
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  const more = names.length > MOST_NAMES ? ` and ${names.length - MOST_NAMES} more` : '';
  const known = names.length > 0 ? `${names.slice(0, MOST_NAMES).join(', ')}${more}` : 'none';
  throw new CommandFailure(`There is no ${what} "${wanted}" on record. There are: ${known}.`);
}
