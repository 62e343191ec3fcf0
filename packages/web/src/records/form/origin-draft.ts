/** Where values come from, while it is being written. */
import type { RecordOrigin } from '@plugside/records/model';
import { sameValue } from '../same-value.ts';

export interface OriginDraft {
  /** Empty: entered by the department, which needs no note. */
  kind: RecordOrigin['kind'] | '';
  text: string;
  date: string;
}

export type OriginDrafts = Readonly<Record<string, OriginDraft>>;

type Origins = Readonly<Record<string, RecordOrigin>>;

export const originKinds = [
  'measured',
  'maker',
  'standard',
  'department',
  'common practice',
  'default',
  'estimated',
  'imported',
] as const satisfies readonly RecordOrigin['kind'][];

export const originDraft = (origin: RecordOrigin | undefined): OriginDraft => ({
  kind: origin?.kind ?? '',
  text: origin?.text ?? '',
  date: origin?.date ?? '',
});

/**
 * Origins that are another than before, by field; null takes one away.
 * @returns also what is wrong, by `origins.<field>`
 */
export function readOrigins(drafts: OriginDrafts, before: Origins) {
  const changes: Record<string, RecordOrigin | null> = {};
  const problems: Record<string, string> = {};
  for (const [field, { kind, text, date }] of Object.entries(drafts)) {
    if (kind === '') {
      if (before[field]) changes[field] = null;
      continue;
    }
    const words = text.trim();
    if (words === '') {
      problems[`origins.${field}`] =
        'Say where it comes from, in up to 500 characters: a test, a plate, a letter. Or choose “entered by the department”.';
      continue;
    }
    const origin = { kind, text: words, ...(date !== '' && { date }) };
    if (!sameValue(origin, before[field])) changes[field] = origin;
  }
  return { changes, problems };
}
