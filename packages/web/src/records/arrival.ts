/** How a page was come to: on to it, or back to it. */

export interface Arrival {
  /** Of the browser's entry for this page, as long as the tab lives. */
  entry: string;
  /** It was here before: Back, Forward, or loaded anew. */
  back: boolean;
}

let last: Arrival | null = null;
let marks = 0;

/**
 * Marks the browser's entry for this page when it is first come to, and tells it again afterwards.
 * What is said of an entry stays the same until another is gone to.
 */
export function arrive(): Arrival {
  const state: unknown = window.history.state;
  const marked =
    typeof state === 'object' && state !== null && 'entry' in state ? String(state.entry) : null;
  if (marked !== null && last?.entry === marked) return last;
  if (marked !== null) last = { entry: marked, back: true };
  else {
    last = { entry: `${Date.now()}:${marks++}`, back: false };
    window.history.replaceState({ ...(state as object | null), entry: last.entry }, '');
  }
  return last;
}
