/** Cells written anew and not yet sent, kept over a reload of the page. */

export type MendDrafts = Readonly<Record<string, Readonly<Record<string, string>>>>;

const nameOf = (importId: string) => `plugside.mended:${importId}`;

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
