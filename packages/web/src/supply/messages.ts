/** What the page asks the choosing worker, and what it answers. */
import type {
  Choice,
  Criterion,
  Mishap,
  Situation,
  SupplyWay,
  UnitSystem,
} from '@plugside/fireground';

export type SupplyQuestion =
  | { ask: 'choice'; situation: Situation; ranking: Criterion[]; units: UnitSystem }
  | {
      ask: 'mishaps';
      of: Pick<SupplyWay, 'plan' | 'shuttle'>;
      demandGpm: number;
      units: UnitSystem;
    };

export interface SupplyAnswers {
  choice: Choice;
  mishaps: Mishap[];
}
