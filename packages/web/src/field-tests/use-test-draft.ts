import { useRef, useState } from 'react';
import { restoredDraft } from './restored-draft.ts';

/** Where a form's typing is kept while it is not saved. */
export interface KeptTyping {
  /** What was typed before; undefined where nothing was. */
  draft: unknown;
  keep(draft: object): void;
}

/**
 * What is being written in a test's form: begun afresh, or gone on with from what was kept.
 * @param row an empty row's value, as `restoredDraft` takes it
 */
export function useTestDraft<T extends object>(
  kept: KeptTyping | undefined,
  fresh: () => T,
  row: object,
) {
  const [draft, setDraft] = useState<T>(() => {
    const begun = fresh();
    return restoredDraft(kept?.draft, begun, row) ?? begun;
  });
  // Two changes in one turn both count.
  const now = useRef(draft);
  const change = (part: Partial<T>) => {
    now.current = { ...now.current, ...part };
    setDraft(now.current);
    kept?.keep(now.current);
  };
  return [draft, change] as const;
}
