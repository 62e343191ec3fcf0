import { checkLimits } from '../limits/check-limits.ts';
import { planNetwork } from '../network/plan-network.ts';
import { readState } from '../network/read-state.ts';
import type { Plan } from '../plan/plan.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { noticesFor } from '../words/notices.ts';
import { ordersFor } from '../words/orders.ts';
import type { Now, SupplyState } from './answers.ts';
import { offerNow } from './offer.ts';
import { shutOff } from './shut-off.ts';

/**
 * "What happens now": every flow and pressure with the plan's settings and valves as they stand.
 * @throws NetworkError where the plan cannot be solved, saying why
 */
export function whatNow(plan: Plan, options: { units?: UnitSystem } = {}): Now {
  const state = solveNow(plan);
  const limits = checkLimits(plan, state);
  const rest = shutOff(plan, state, options.units);
  return {
    question: 'now',
    plan,
    state,
    limits,
    orders: ordersFor(plan, state, limits, [], options.units, offerNow(plan, state)),
    shutOff: rest,
    notices: noticesFor(plan, state, limits, rest, options.units),
  };
}

/** The plan's state alone, with no limits or words. @throws NetworkError */
export function solveNow(plan: Plan): SupplyState {
  const solved = planNetwork(plan);
  solved.network.solve();
  return readState(solved);
}
