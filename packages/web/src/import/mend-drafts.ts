/** Cells and places written anew and not yet sent, kept over a reload of the page. */
import type { MendedRow } from '../api/imports.ts';

export type MendDraft = Omit<MendedRow, 'row'>;

/** By row. */
export type MendDrafts = Readonly<Record<string, MendDraft>>;

export const NOT_MENDED: MendDraft = { values: {} };

/** Whether there is anything to send. */
export const isMended = ({ values, place }: MendDraft): boolean =>
  Object.keys(values).length > 0 || place !== undefined;

const nameOf = (importId: string) => `plugside.mended-rows:${importId}`;

/** What was typed for an import so far, by row. */
export function keptDrafts(importId: string): MendDrafts {
  try {
    const drafts: unknown = JSON.parse(globalThis.sessionStorage.getItem(nameOf(importId)) ?? '{}');
    return typeof drafts === 'object' && drafts !== null ? (drafts as MendDrafts) : {};
  } catch {
    return {};
  }
}

/** Keeps what is typed; none to forget it. */
export function keepDrafts(importId: string, drafts: MendDrafts | null): void {
  try {
    if (drafts) globalThis.sessionStorage.setItem(nameOf(importId), JSON.stringify(drafts));
    else globalThis.sessionStorage.removeItem(nameOf(importId));
  } catch {
    // Then it lives as long as the page.
  }
}
