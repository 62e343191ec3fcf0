/** Undo and redo over whole values: every change keeps the value before it. */
export interface History<T> {
  past: readonly { value: T; label: string }[];
  present: T;
  future: readonly { value: T; label: string }[];
  /** Changes with this key fold into the last one: a drag is one step. */
  openKey: string | null;
}

/** Steps kept; the oldest are forgotten first. */
const MOST_STEPS = 200;

/** A history with nothing to undo. */
export function startHistory<T>(present: T): History<T> {
  return { past: [], present, future: [], openKey: null };
}

/**
 * Records a change.
 * @param label for people: what "Undo" takes back
 * @param key folds into the change before it when that had the same key and was not sealed
 */
export function record<T>(history: History<T>, value: T, label: string, key?: string): History<T> {
  if (value === history.present) return history;
  if (key !== undefined && key === history.openKey) {
    return { ...history, present: value, future: [] };
  }
  const past = [...history.past, { value: history.present, label }].slice(-MOST_STEPS);
  return { past, present: value, future: [], openKey: key ?? null };
}

/** Ends a run of folded changes: the next change is its own step. */
export function seal<T>(history: History<T>): History<T> {
  return history.openKey === null ? history : { ...history, openKey: null };
}

/** Back one step; the same history when there is none. */
export function undo<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (!last) return history;
  return {
    past: history.past.slice(0, -1),
    present: last.value,
    future: [{ value: history.present, label: last.label }, ...history.future],
    openKey: null,
  };
}

/** Forward one step; the same history when there is none. */
export function redo<T>(history: History<T>): History<T> {
  const next = history.future[0];
  if (!next) return history;
  return {
    past: [...history.past, { value: history.present, label: next.label }],
    present: next.value,
    future: history.future.slice(1),
    openKey: null,
  };
}
