import { limitsFor } from '../catalogue/limits.ts';
import { checkLimits } from '../limits/check-limits.ts';
import { readState } from '../network/read-state.ts';
import type { Plan } from '../plan/plan.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { noticesFor } from '../words/notices.ts';
import { ordersFor } from '../words/orders.ts';
import type { LimitCheck, SettingsFor } from './answers.ts';
import { attackSettings, demandOf, pdpForFlow } from './attack-settings.ts';
import { joinAttack, mostWater, withSettings } from './most-water.ts';
import { offerOf } from './offer.ts';
import { shutOff } from './shut-off.ts';
import { SupplySearch } from './supply-search.ts';

export interface SettingsOptions {
  /** For the sentences; US where left out. */
  units?: UnitSystem;
  /** No pump set lower than it holds steadily, or under its own intake, where that breaks no limit. */
  steady?: boolean;
}

/**
 * "How do I set it": each pump's lowest discharge pressure for a flow at the scene, and the gating that
 * gives every open nozzle its rated pressure; where it cannot be had, how much is missing and what stops it.
 * @param demandGpm flow wanted at the scene [gpm, above 0]; left out: the plan's own demand
 * @throws RangeError where there is no demand, NetworkError where the plan cannot be solved
 */
export function settingsFor(
  plan: Plan,
  demandGpm: number = demandOf(plan),
  options: SettingsOptions = {},
): SettingsFor {
  if (!(demandGpm > 0) || !Number.isFinite(demandGpm)) {
    throw new RangeError(
      `The demand is ${demandGpm} gpm. Give one above 0, or open a nozzle past ${plan.scene}.`,
    );
  }
  return settingsFound(new SupplySearch(plan), demandGpm, options);
}

/**
 * The same of a search made before, wherever it stands.
 * @param options `mostGpm`: the greatest flow of the search, where it is known [gpm]
 */
export function settingsFound(
  search: SupplySearch,
  demandGpm: number,
  options: SettingsOptions & { mostGpm?: number } = {},
): SettingsFor {
  const { plan } = search;
  const room = search.roomAt(demandGpm);
  if (options.steady) search.steady(limitsFor(plan).leastDischargePsi);
  const attack = attackSettings(plan);
  const set = withSettings(attack.plan, search.pdpPsi);
  const supply = readState({ ...search.solved, plan: set });
  const scenePdp =
    attack.pdpPsi > 0 ? pdpForFlow(attack.plan, demandGpm, attack.pdpPsi) : undefined;
  const planSet =
    scenePdp === undefined ? set : withSettings(set, new Map([[plan.scene, scenePdp]]));

  if (room >= -1e-6) {
    const state = joinAttack(planSet, supply, attack, scenePdp ?? 0, demandGpm);
    const limits = checkLimits(planSet, state);
    // Intakes and hilltops stand at their least because the settings put them there: no sign that
    // more cannot be had.
    for (const limit of limits) {
      const set = limit.kind.endsWith('intake') || limit.kind === 'hilltop pressure';
      if (set && !limit.passed) limit.binds = false;
    }
    const failing = limits.filter((limit) => limit.passed && limit.weight === 'hard');
    const rest = shutOff(planSet, state, options.units);
    const offer = offerOf(search, demandGpm, options.mostGpm);
    return {
      question: 'settings',
      demandGpm,
      possible: failing.length === 0,
      shortfallGpm: 0,
      failing,
      plan: planSet,
      state,
      limits,
      orders: ordersFor(planSet, state, limits, attack.gate, options.units, offer),
      shutOff: rest,
      notices: noticesFor(planSet, state, limits, rest, options.units),
    };
  }
  const atDemand = checkLimits(set, { ...supply, nozzles: [] });
  const failing: LimitCheck[] = atDemand.filter((limit) => limit.passed && limit.weight === 'hard');
  const best = mostWater(plan, options);
  return {
    question: 'settings',
    demandGpm,
    possible: false,
    shortfallGpm: Math.max(0, demandGpm - best.flowGpm),
    failing,
    plan: best.plan,
    state: best.state,
    limits: best.limits,
    orders: best.orders,
    shutOff: best.shutOff,
    notices: best.notices,
  };
}
