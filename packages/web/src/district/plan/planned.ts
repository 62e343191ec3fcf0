/** The lay as a plan, solved. */
import { type BoostComparison, compareBoost } from '@plugside/fireground';
import {
  type BuildingPlan,
  type BuildingPlanRequest,
  planForBuilding,
} from '@plugside/records/planning';
import type { Units } from '../../editing/use-units.ts';
import { type Answered, ask, problemIn } from '../../plan-store/ask.ts';

export interface Planned extends BuildingPlan {
  /** None where there is no plan, or it cannot be solved. */
  answered: Answered | null;
  /** With and without the rig at the hydrant; none as above. */
  boost: BoostComparison | null;
  problem: string | null;
}

/** Makes the plan and asks it for the most water. Never throws. */
export function planned(request: BuildingPlanRequest, units: Units['system']): Planned {
  const made = planForBuilding(request);
  if (!made.plan) return { ...made, answered: null, boost: null, problem: null };
  const asked = ask(made.plan, 'most', units);
  if (!asked.ok) return { ...made, answered: null, boost: null, problem: asked.problem };
  try {
    const boost = compareBoost(made.plan, { units });
    return { ...made, answered: asked.answered, boost, problem: null };
  } catch (error) {
    return { ...made, answered: asked.answered, boost: null, problem: problemIn(error) };
  }
}
