/** Addresses of the records: `/records`, `/records/<kind>`, and a record under its kind. */
import { type Kind, kinds } from '@plugside/records/model';

export type RecordsAddress =
  | { at: 'start' }
  | { at: 'list'; kind: Kind }
  | { at: 'new'; kind: Kind }
  | { at: 'record'; kind: Kind; id: string }
  | { at: 'edit'; kind: Kind; id: string }
  | { at: 'nowhere'; asked: string };

const isKind = (text: string): text is Kind => (kinds as readonly string[]).includes(text);

/** What an address asks for. */
export function recordsAddress(pathname: string): RecordsAddress {
  const [, , kind = '', id = '', rest = '', more] = pathname.split('/');
  if (kind === '') return { at: 'start' };
  if (!isKind(kind) || more) return { at: 'nowhere', asked: pathname };
  if (id === '') return { at: 'list', kind };
  if (id === 'new') return { at: 'new', kind };
  if (rest === 'edit') return { at: 'edit', kind, id };
  return rest === '' ? { at: 'record', kind, id } : { at: 'nowhere', asked: pathname };
}

export const kindPath = (kind: Kind): string => `/records/${kind}`;

export const recordPath = (kind: Kind, id: string): string => `/records/${kind}/${id}`;

export const editPath = (kind: Kind, id: string): string => `/records/${kind}/${id}/edit`;

/** A new record, with what is known of it already: `newPath('flow-tests', { hydrantId })`. */
export function newPath(kind: Kind, known: Readonly<Record<string, string>> = {}): string {
  const search = new URLSearchParams(known).toString();
  return `/records/${kind}/new${search === '' ? '' : `?${search}`}`;
}
