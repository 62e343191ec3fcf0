/** Forms that were left without saving: what was typed stays until it is saved or thrown away. */
import { create } from 'zustand';
import type { Drafts, Values } from './draft.ts';
import type { OriginDrafts } from './origin-draft.ts';

export interface KeptForm {
  /** The record that the changes were begun on; null for a new one. */
  before: Values | null;
  drafts: Drafts;
  origins: OriginDrafts;
}

interface KeptDrafts {
  /** By the form's address. */
  forms: Readonly<Record<string, KeptForm>>;
  keep(address: string, form: KeptForm): void;
  drop(address: string): void;
}

const MEMORY = 'plugside.record-forms';

/** Of this tab: what another tab writes is another form. */
function remembered(): Record<string, KeptForm> {
  try {
    const read: unknown = JSON.parse(globalThis.sessionStorage?.getItem(MEMORY) ?? '{}');
    return typeof read === 'object' && read !== null ? (read as Record<string, KeptForm>) : {};
  } catch {
    return {};
  }
}

export const useKeptDrafts = create<KeptDrafts>()((set) => ({
  forms: remembered(),
  keep: (address, form) => set(({ forms }) => ({ forms: { ...forms, [address]: form } })),
  drop: (address) =>
    set(({ forms: { [address]: _, ...others } }) => ({
      forms: others,
    })),
}));

useKeptDrafts.subscribe(({ forms }) => {
  try {
    globalThis.sessionStorage?.setItem(MEMORY, JSON.stringify(forms));
  } catch {
    // Switched off or full: the form is kept until the page is loaded anew.
  }
});
