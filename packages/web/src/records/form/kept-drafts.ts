/** Forms that were left without saving: what was typed stays until it is saved or thrown away. */
import { create } from 'zustand';
import type { Drafts, Values } from './draft.ts';
import type { OriginDrafts } from './origin-draft.ts';

export interface KeptForm {
  /** The record that the changes were begun on; null for a new one. */
  before: Values | null;
  drafts: Drafts;
  origins: OriginDrafts;
  /** A test's form as it stands, in place of drafts. */
  test?: object;
  /** When it was last typed in [ms since 1970]. */
  typedAtMs?: number;
}

interface KeptDrafts {
  /** By the form's address. */
  forms: Readonly<Record<string, KeptForm>>;
  keep(address: string, form: KeptForm): void;
  drop(address: string): void;
}

/** One entry of the device's memory for each form, so that tabs do not write over each other's. */
const MEMORY = 'plugside.form:';

function remembered(): Record<string, KeptForm> {
  const forms: Record<string, KeptForm> = {};
  try {
    const { localStorage } = globalThis;
    for (let at = 0; at < localStorage.length; at += 1) {
      const key = localStorage.key(at) ?? '';
      if (!key.startsWith(MEMORY)) continue;
      const form = formIn(localStorage.getItem(key));
      if (form) forms[key.slice(MEMORY.length)] = form;
    }
  } catch {
    // Switched off: what was read so far is all there is.
  }
  return forms;
}

function formIn(text: string | null): KeptForm | null {
  try {
    const read: unknown = JSON.parse(text ?? 'null');
    const fits = isObject(read) && isObject(read.drafts) && isObject(read.origins);
    return fits ? (read as unknown as KeptForm) : null;
  } catch {
    return null;
  }
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

function remember(address: string, form: KeptForm | null): void {
  try {
    if (form) globalThis.localStorage?.setItem(MEMORY + address, JSON.stringify(form));
    else globalThis.localStorage?.removeItem(MEMORY + address);
  } catch {
    // Switched off or full: the form is kept until the page is loaded anew.
  }
}

export const useKeptDrafts = create<KeptDrafts>()((set) => ({
  forms: remembered(),
  keep: (address, form) => {
    const kept = { ...form, typedAtMs: Date.now() };
    set(({ forms }) => ({ forms: { ...forms, [address]: kept } }));
    remember(address, kept);
  },
  drop: (address) => {
    set(({ forms: { [address]: _, ...others } }) => ({ forms: others }));
    remember(address, null);
  },
}));
