/** What a mishap comes to: one verdict for screen, command and paper. */
import type { Plan } from '../plan/plan.ts';
import type { Mishap } from '../supply/choice.ts';
import { SLACK_GPM } from '../supply/mishap-measures.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { limitWords } from './answer.ts';
import { sayIn } from './say.ts';

export interface MishapVerdict {
  /** What is wanted comes within every hard limit, as the pumps stand or set anew. */
  met: boolean;
  /** "met", "met if set anew", "95 gpm short". */
  words: string;
  /** "the main at H-369 (20 psi)": what is passed as the pumps stand; empty where nothing is. */
  past: string;
}

/**
 * The verdict on a mishap, from the mishap's own figures: water past a limit is not counted, and a
 * further line that is wanted counts as demand.
 * @param mishap flows and shortfall [gpm], limits passed
 * @param plan the supply that it befell; names the pieces
 * @param units of the words
 * Valid: any mishap. Throws nothing.
 * Source: none; the mishap's own account.
 */
export function mishapVerdict(
  mishap: Pick<Mishap, 'flowGpm' | 'wantedGpm' | 'stillMeets' | 'shortfallGpm' | 'passed'>,
  plan: Plan | null,
  units: UnitSystem = 'us',
): MishapVerdict {
  const { flowGpm, wantedGpm, stillMeets, shortfallGpm, passed } = mishap;
  const over = flowGpm >= 1 ? passed : [];
  const past = plan ? over.map((limit) => limitWords(plan, limit, units)) : [];
  const asTheyStand = over.length === 0 && flowGpm >= wantedGpm - SLACK_GPM;
  const words = !stillMeets
    ? `${sayIn(units).full(shortfallGpm, 'flow')} short`
    : asTheyStand
      ? 'met'
      : 'met if set anew';
  return { met: stillMeets, words, past: [...new Set(past)].join(' and ') };
}
