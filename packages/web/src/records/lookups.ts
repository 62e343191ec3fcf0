/** Records that others name by their ids, fetched a hundred at a time so that an address stays short. */
import type { Kind, Stored } from '@plugside/records/model';
import { allRecords, type RecordPage } from '../api/records.ts';
import { apiRequest } from '../api/request.ts';

const AT_ONCE = 100;

/** Records of a kind where a field has one of these values, in no order. */
export async function recordsWhere<K extends Kind>(
  kind: K,
  field: string,
  values: Iterable<string>,
  signal?: AbortSignal,
): Promise<Stored<K>[]> {
  const wanted = [...new Set(values)];
  const chunks: string[][] = [];
  for (let at = 0; at < wanted.length; at += AT_ONCE) chunks.push(wanted.slice(at, at + AT_ONCE));
  const pages = await Promise.all(chunks.map((chunk) => whole(kind, field, chunk, signal)));
  return pages.flat();
}

async function whole<K extends Kind>(
  kind: K,
  field: string,
  values: readonly string[],
  signal?: AbortSignal,
): Promise<Stored<K>[]> {
  if (values.length === 1) return allRecords(kind, { where: { [field]: values[0]! } }, signal);
  const found: Stored<K>[] = [];
  let after: string | undefined;
  do {
    const asked = new URLSearchParams(values.map((value) => [field, value]));
    asked.set('limit', '5000');
    if (after !== undefined) asked.set('after', after);
    const page = await apiRequest<RecordPage<K>>(`/records/${kind}?${asked}`, { signal });
    found.push(...page.records);
    after = page.next;
  } while (after !== undefined);
  return found;
}
