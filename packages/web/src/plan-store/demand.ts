import { nozzleRatedGpm, type Plan } from '@plugside/fireground';

/** What the scene needs [gpm]: the plan's own figure, else what its open nozzles take at their rating. */
export function demandOf(plan: Plan): number {
  if (plan.demandGpm !== undefined) return plan.demandGpm;
  return plan.nozzles
    .filter((one) => one.open)
    .reduce((sum, one) => sum + nozzleRatedGpm(one), 0);
}
