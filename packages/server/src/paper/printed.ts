/** What every document has in common when it is printed in a thread. */
import type { PaperOptions } from '@plugside/paper';
import { readDistrict } from '@plugside/records';
import type { RecordsAtHand } from '../threads/records-at-hand.ts';
import type { PrintedAs } from './paper-query.ts';

/** @returns the whole document, in memory of its own: it can be handed to another thread */
export async function bytesOf(pdf: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  for await (const part of pdf) parts.push(part);
  const bytes = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

export async function optionsFor(
  { store }: Pick<RecordsAtHand, 'store'>,
  { paper, units }: PrintedAs,
): Promise<PaperOptions> {
  const { name: department } = await readDistrict(store);
  return { printedAt: new Date(), paper, units, department };
}
