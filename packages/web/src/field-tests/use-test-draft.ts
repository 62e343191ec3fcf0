import { useRef, useState } from 'react';
import { restoredDraft, restoredTexts } from './restored-draft.ts';
import type { UnreadTexts } from './unread-texts.ts';

/** Where a form's typing is kept while it is not saved. */
export interface KeptTyping {
  /** What was typed before; undefined where nothing was. */
  draft: unknown;
  keep(draft: object): void;
}

/**
 * What is being written in a test's form: begun afresh, or gone on with from what was kept; and the
 * texts that its fields could not read.
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
  const texts = useRef(restoredTexts(kept?.draft));
  const keep = () => kept?.keep({ ...now.current, unread: texts.current });
  const change = (part: Partial<T>) => {
    now.current = { ...now.current, ...part };
    setDraft(now.current);
    keep();
  };
  const unread: UnreadTexts = {
    texts: texts.current,
    put: (field, text) => {
      if ((texts.current[field] ?? null) === text) return;
      const { [field]: _, ...others } = texts.current;
      texts.current = text === null ? others : { ...others, [field]: text };
      keep();
    },
  };
  return [draft, change, unread] as const;
}
