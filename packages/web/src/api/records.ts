/** Records of any kind, over HTTP. */
import type { FieldsIn, Kind, Stored } from '@plugside/records/model';
import { apiRequest } from './request.ts';

export interface RecordPage<K extends Kind> {
  records: Stored<K>[];
  total: number;
  /** Asks for the next page as `after`; left out on the last. */
  next?: string;
}

export interface RecordQuery {
  search?: string;
  /** West, south, east, north [degrees]. */
  box?: readonly [number, number, number, number];
  /** A field, with a minus in front the other way round. */
  sort?: string;
  /** 1 to 5000. */
  limit?: number;
  after?: string;
  /** Fields that must be equal, for instance `{ hydrantId }`. */
  where?: Readonly<Record<string, string | number | boolean>>;
}

/** One page of a kind. */
export function listRecords<K extends Kind>(
  kind: K,
  { search, box, sort, limit, after, where }: RecordQuery = {},
  signal?: AbortSignal,
): Promise<RecordPage<K>> {
  const query = { ...where, search, box: box?.join(','), sort, limit, after };
  return apiRequest(`/records/${kind}`, { query, signal });
}

const WHOLE_PAGE = 5000;

/** Every record of a kind, page by page. */
export async function allRecords<K extends Kind>(
  kind: K,
  query: Omit<RecordQuery, 'limit' | 'after'> = {},
  signal?: AbortSignal,
): Promise<Stored<K>[]> {
  const found: Stored<K>[] = [];
  let after: string | undefined;
  do {
    const page = await listRecords(kind, { ...query, limit: WHOLE_PAGE, after }, signal);
    found.push(...page.records);
    after = page.next;
  } while (after !== undefined);
  return found;
}

export function getRecord<K extends Kind>(
  kind: K,
  id: string,
  signal?: AbortSignal,
): Promise<Stored<K>> {
  return apiRequest(`/records/${kind}/${id}`, { signal });
}

/** @throws ProblemError with the refused fields in `problem.issues` */
export function createRecord<K extends Kind>(kind: K, fields: FieldsIn<K>): Promise<Stored<K>> {
  return apiRequest(`/records/${kind}`, { method: 'POST', json: fields });
}

/**
 * Changes the fields given; null clears one.
 * @param version the version that the change was made on
 * @throws StaleError where somebody changed the record since
 */
export function changeRecord<K extends Kind>(
  kind: K,
  id: string,
  version: number,
  changes: { [F in keyof FieldsIn<K>]?: FieldsIn<K>[F] | null },
): Promise<Stored<K>> {
  return apiRequest(`/records/${kind}/${id}`, { method: 'PATCH', json: changes, version });
}

/** @throws ProblemError (409) while others refer to it */
export function removeRecord(kind: Kind, id: string, version: number): Promise<void> {
  return apiRequest(`/records/${kind}/${id}`, { method: 'DELETE', version });
}
