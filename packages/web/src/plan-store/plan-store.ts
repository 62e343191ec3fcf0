/** The plan being worked on, with its way back. */
import type { Plan } from '@plugside/fireground';
import { create } from 'zustand';
import { type History, record, redo, seal, startHistory, undo } from './history.ts';
import { firstPlan } from './starts.ts';

export interface PlanState {
  history: History<Plan>;
  /** Something to tell about the last file, link or edit; told until dismissed or replaced. */
  message: PlanMessage | null;
  /**
   * Changes the plan as one step.
   * @param label for people: what it changes
   * @param key changes with the same key in a row make one step until `endStep`
   */
  change(label: string, edit: (plan: Plan) => Plan, key?: string): void;
  endStep(): void;
  undo(): void;
  redo(): void;
  /** Replaces the whole plan; undo brings the one before back. */
  open(plan: Plan, label: string): void;
  tell(message: PlanMessage | null): void;
}

export interface PlanMessage {
  kind: 'done' | 'problem';
  text: string;
  /** One line each, with what to do. */
  details?: readonly { where?: string; text: string; remedy?: string }[];
}

export const usePlan = create<PlanState>()((set) => ({
  history: startHistory(firstPlan()),
  message: null,
  change: (label, edit, key) =>
    set((state) => {
      try {
        const plan = edit(state.history.present);
        return { history: record(state.history, plan, label, key) };
      } catch (error) {
        // A pattern or an edit that cannot be done says so in its message; the plan stays.
        const text = error instanceof Error ? error.message : String(error);
        return { message: { kind: 'problem', text } };
      }
    }),
  endStep: () => set((state) => ({ history: seal(state.history) })),
  undo: () => set((state) => ({ history: undo(state.history) })),
  redo: () => set((state) => ({ history: redo(state.history) })),
  open: (plan, label) =>
    set((state) => ({ history: seal(record(state.history, plan, label)), message: null })),
  tell: (message) => set({ message }),
}));
