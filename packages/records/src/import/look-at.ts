/** What a person should look at in a row that was taken all the same. */
import { flowTestResult } from '@plugside/fireground';
import { type Fields, recordSchemas } from '../model/index.ts';
import type { ImportKind } from './mapping/mapping.ts';
import type { NotedRow } from './report.ts';
import type { Cell } from './source/source.ts';

type Draft = Record<string, unknown>;
export type Noted = Omit<NotedRow, 'row'>;

/** A record's note holds so much. */
const MOST_NOTE = 4000;

/** Words by which a list says that somebody has still to find out. */
const toBeFoundOut: ReadonlySet<string> = new Set(['fixme', 'tbd', '?', 'todo', 'check']);

/** Whether a cell that gives no value holds a word that must not be lost. */
export const mustBeLookedAt = (cell: Cell): boolean =>
  typeof cell === 'string' && toBeFoundOut.has(cell.trim().toLowerCase());

/** A count that is no whole number: `2.5`, `3+1`. */
export const isPart = (cell: Cell): boolean => /\+|[.,](?!0+\s*$)/.test(String(cell));

/** Puts a value that could not be read as it stands into the note, beside what is there. */
export function keptInNote(
  draft: Draft,
  column: string,
  cell: Cell,
  label: string,
  what = `"${String(cell).trim()}" says none. It is left out and stands in the note.`,
): Noted {
  const said = `${column}: ${String(cell).trim()}`;
  const before = typeof draft.note === 'string' ? draft.note : '';
  if (before === '') draft.note = said;
  else if (before.length + said.length + 2 <= MOST_NOTE) draft.note = `${before}; ${said}`;
  return {
    record: '',
    what: 'kept in the note',
    text: `${label}: ${what}`,
  };
}

/** Why plans cannot use a test; undefined where they can, and for what is no flow test. */
export function unusable(kind: ImportKind, fields: Draft): Noted | undefined {
  if (kind !== 'flow-tests') return undefined;
  const read = recordSchemas['flow-tests'].safeParse(fields);
  if (!read.success) return undefined;
  const why = flowTestResult(read.data as Fields<'flow-tests'>).notices.find(
    ({ level }) => level === 'error',
  );
  return why && { record: '', what: 'cannot be used', text: why.text };
}

/** By its name, else by its hydrant as the list calls it, and its day. */
export const namedAs = (noted: readonly Noted[], draft: Draft, hydrant?: string): Noted[] => {
  const day = [hydrant, draft.testedOn].filter((one) => typeof one === 'string').join(', ');
  const record = typeof draft.name === 'string' ? draft.name : day;
  return noted.map((one) => ({ ...one, record }));
};
