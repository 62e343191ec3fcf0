/** The lay being drawn from a hydrant to a building, with its way back. */
import type { Place } from '@plugside/records/streets';
import { create } from 'zustand';
import { type History, record, redo, seal, startHistory, undo } from '../../plan-store/history.ts';

export interface LayDraft {
  /** Places that the hose goes by, from hydrant to building. */
  via: readonly Place[];
  /** Rig at the building; null: the first due. */
  attackId: string | null;
  /** Rig that pumps at the hydrant; null: none. */
  boosterId: string | null;
}

interface LayState {
  /** Which hydrant and building it is drawn for. */
  between: string;
  history: History<LayDraft>;
  /** Begins a lay between others; the rigs stay picked. */
  begin(between: string): void;
  change(label: string, changes: Partial<LayDraft>, key?: string): void;
  endStep(): void;
  undo(): void;
  redo(): void;
}

export const useLayDraft = create<LayState>()((set) => ({
  between: '',
  history: startHistory<LayDraft>({ via: [], attackId: null, boosterId: null }),
  begin: (between) =>
    set((state) =>
      state.between === between
        ? state
        : { between, history: startHistory({ ...state.history.present, via: [] }) },
    ),
  change: (label, changes, key) =>
    set(({ history }) => ({
      history: record(history, { ...history.present, ...changes }, label, key),
    })),
  endStep: () => set(({ history }) => ({ history: seal(history) })),
  undo: () => set(({ history }) => ({ history: undo(history) })),
  redo: () => set(({ history }) => ({ history: redo(history) })),
}));

/** Puts a place among those that the hose goes by, before the one at `index`. */
export function withVia(via: readonly Place[], index: number, place: Place): Place[] {
  return [...via.slice(0, index), place, ...via.slice(index)];
}

export function movedVia(via: readonly Place[], index: number, place: Place): Place[] {
  return via.map((one, i) => (i === index ? place : one));
}

export function withoutVia(via: readonly Place[], index: number): Place[] {
  return via.filter((_, i) => i !== index);
}
