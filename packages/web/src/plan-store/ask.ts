/** Asks the question that is on the page; a failure comes back in words, never as a wrong number. */
import {
  type LimitCheck,
  type MostWater,
  mostWater,
  type Notice,
  type Now,
  type Plan,
  type RigOrder,
  type SettingsFor,
  type ShutOff,
  type SupplyState,
  settingsFor,
  whatNow,
} from '@plugside/fireground';
import type { Question } from './view.ts';

/** What the drawings and lists need of an answer, whichever question it is to. */
export interface Answered {
  question: Question;
  answer: MostWater | SettingsFor | Now;
  /** The plan with the settings that hold in the state. */
  plan: Plan;
  state: SupplyState;
  limits: readonly LimitCheck[];
  orders: readonly RigOrder[];
  shutOff: ShutOff;
  notices: readonly Notice[];
}

export type Asked = { ok: true; answered: Answered } | { ok: false; problem: string };

/** What went wrong, in words. */
export function problemIn(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Answers a question about a plan. Never throws. */
export function ask(plan: Plan, question: Question): Asked {
  try {
    const answer =
      question === 'most'
        ? mostWater(plan)
        : question === 'set'
          ? settingsFor(plan)
          : whatNow(plan);
    const { plan: set, state, limits, orders, shutOff, notices } = answer;
    return {
      ok: true,
      answered: { question, answer, plan: set, state, limits, orders, shutOff, notices },
    };
  } catch (error) {
    return { ok: false, problem: problemIn(error) };
  }
}
