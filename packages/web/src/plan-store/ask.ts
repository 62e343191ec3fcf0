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
  type UnitSystem,
  whatNow,
  withMainRange,
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

function answerTo(plan: Plan, question: Question, units: UnitSystem): Answered['answer'] {
  switch (question) {
    case 'most':
      return mostWater(plan, { units });
    case 'set':
      return settingsFor(plan, undefined, { units });
    case 'now':
      return whatNow(plan, { units });
  }
}

/**
 * Answers a question about a plan. Never throws.
 * @param units for the sentences in the answer; its figures are always in inside units
 */
export function ask(plan: Plan, question: Question, units: UnitSystem): Asked {
  try {
    const answer = withMainRange(plan, answerTo(plan, question, units), { units });
    const { plan: set, state, limits, orders, shutOff, notices } = answer;
    return {
      ok: true,
      answered: { question, answer, plan: set, state, limits, orders, shutOff, notices },
    };
  } catch (error) {
    return { ok: false, problem: problemIn(error) };
  }
}
