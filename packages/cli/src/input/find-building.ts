import type { RecordStore } from '@plugside/records';
import { CommandFailure } from '../failure.ts';

/** How many buildings are told where several fit. */
const NAMED = 5;

/**
 * The id of the one building that the words fit: an id, a whole name or address, or a part of one.
 * @throws CommandFailure where none does, or more than one
 */
export async function buildingNamed(store: RecordStore, asked: string): Promise<string> {
  const words = asked.trim();
  const byId = /^[0-9A-HJKMNP-TV-Z]{26}$/i.test(words)
    ? await store.get('buildings', words.toUpperCase())
    : undefined;
  if (byId) return byId.id;
  const { records, total } = await store.list('buildings', { search: words, limit: 5000 });
  const plain = words.toLowerCase();
  const exact = records.filter(
    ({ name, address }) => name.toLowerCase() === plain || address?.toLowerCase() === plain,
  );
  const fit = exact.length > 0 ? exact : records;
  if (fit.length === 1) return fit[0]!.id;
  if (fit.length === 0) {
    throw new CommandFailure(
      `No building on record is called "${words}". Give its name or address as the records have it.`,
    );
  }
  const named = fit.slice(0, NAMED).map(({ id, name }) => `${name} (${id})`);
  const more = Math.max(total, fit.length) - named.length;
  throw new CommandFailure(
    `Several buildings fit "${words}": ${named.join('; ')}${more > 0 ? ` and ${more} more` : ''}. Give one by its id.`,
  );
}
