import { limitsFor } from '../catalogue/limits.ts';
import { capabilityAt } from '../catalogue/pumps.ts';
import { checkLimits, pumpFlowCheck } from '../limits/check-limits.ts';
import { planNetwork } from '../network/plan-network.ts';
import { readState } from '../network/read-state.ts';
import type { Plan, Rig } from '../plan/plan.ts';
import { describeLine } from '../plan/ports.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { limitQuantity } from '../words/answer.ts';
import { noticesFor } from '../words/notices.ts';
import { ordersFor } from '../words/orders.ts';
import { sayIn } from '../words/say.ts';
import type { LimitCheck, MostWater, SupplyState } from './answers.ts';
import { type AttackSettings, attackSettings, pdpForFlow } from './attack-settings.ts';
import { shutOff } from './shut-off.ts';
import { SupplySearch } from './supply-search.ts';

export interface MostWaterOptions {
  /** `intake`: what reaches the scene rig. `nozzles`: what comes out of the tips, at most their rating. */
  at?: 'intake' | 'nozzles';
  /** For the sentences in the answer; US where left out. Figures are always in inside units. */
  units?: UnitSystem;
  /** As for settings: no pump set lower than it holds steadily where that breaks no limit. */
  steady?: boolean;
}

/**
 * "What do I get": the greatest flow to the scene within every hard limit, each pump at the lowest
 * setting that gives it, and the limits that stop it there.
 * @throws NetworkError where the plan cannot be solved, saying why
 */
export function mostWater(plan: Plan, options: MostWaterOptions = {}): MostWater {
  const search = new SupplySearch(plan);
  return mostWaterFound(search, search.greatestGpm(), options);
}

/** The answer for a search that stands at its greatest flow [gpm]. */
export function mostWaterFound(
  search: SupplySearch,
  supplyGpm: number,
  options: MostWaterOptions,
): MostWater {
  const at = options.at ?? 'intake';
  const { plan } = search;
  const tight = search.tightest();
  if (options.steady) search.steady(limitsFor(plan).leastDischargePsi);
  const attack = attackSettings(plan);
  const scene = plan.rigs.find((rig) => rig.id === plan.scene)!;
  const set = withSettings(attack.plan, search.pdpPsi);
  const supply = readState({ ...search.solved, plan: set });

  // The scene pump gives its lines what they are rated for, or what the supply leaves them.
  const wanted = attack.pdpPsi > 0 ? pdpForFlow(attack.plan, supplyGpm, attack.pdpPsi) : 0;
  const scenePdpPsi = attack.pdpPsi > 0 ? wanted : settingPsi(scene);
  const planSet = withSettings(set, new Map([[scene.id, Math.max(0, scenePdpPsi)]]));
  const state = joinAttack(planSet, supply, attack, scenePdpPsi, supplyGpm);
  const limits = checkLimits(planSet, state);
  const binding = bindingOf(planSet, state, limits, tight);
  const rest = shutOff(planSet, state, options.units);
  const answer: MostWater = {
    question: 'most water',
    at,
    flowGpm: at === 'intake' ? supplyGpm : Math.min(supplyGpm, nozzleGpm(state)),
    plan: planSet,
    state,
    limits,
    binding,
    orders: ordersFor(planSet, state, limits, attack.gate, options.units, {
      moreGpm: 0,
      pdpPsi: search.pdpPsi,
      tight,
    }),
    shutOff: rest,
    notices: noticesFor(planSet, state, limits, rest, options.units),
  };
  if (supplyGpm <= 0) answer.noneReason = whyNone(planSet, search.dry, limits, options.units);
  return answer;
}

function whyNone(
  plan: Plan,
  dry: boolean,
  limits: readonly LimitCheck[],
  units: UnitSystem = 'us',
): string {
  if (dry) {
    const shut = plan.lines
      .filter((line) => line.valve === 'shut')
      .map((l) => describeLine(plan, l));
    const where = shut.length > 0 ? ` Shut: ${shut.join('; ')}.` : '';
    return `No water can reach the scene: a valve is shut on the way.${where}`;
  }
  const failing = limits.find((limit) => limit.passed && limit.weight === 'hard');
  if (!failing) return 'A limit fails with no water moving.';
  const say = sayIn(units);
  const quantity = limitQuantity(failing);
  return `${failing.label} stands at ${say.full(failing.value, quantity)} with no water moving; its limit is ${say.full(failing.limit, quantity)}.`;
}

function nozzleGpm(state: SupplyState): number {
  let total = 0;
  for (const nozzle of state.nozzles) total += nozzle.flowGpm;
  for (const appliance of state.appliances)
    if (appliance.kind === 'sprinkler') total += appliance.flowGpm;
  return total;
}

function settingPsi(rig: Rig): number {
  return rig.setting.mode === 'governed' ? rig.setting.pdpPsi : 0;
}

/** The plan with pumps governed at these pressures [psi]; 0: passing water, not pumping. */
export function withSettings(plan: Plan, pdpPsi: ReadonlyMap<string, number>): Plan {
  return {
    ...plan,
    rigs: plan.rigs.map((rig) => {
      const psi = pdpPsi.get(rig.id);
      if (psi === undefined) return rig;
      return { ...rig, setting: psi > 0 ? { mode: 'governed', pdpPsi: psi } : { mode: 'idle' } };
    }),
  };
}

/** The supply side's state with the scene pump and its lines beside it, fed at the intake pressure found. */
export function joinAttack(
  plan: Plan,
  supply: SupplyState,
  attack: AttackSettings,
  pdpPsi: number,
  supplyGpm: number,
): SupplyState {
  if (attack.pdpPsi <= 0) return { ...supply, sceneGpm: supplyGpm };
  const solved = planNetwork(plan, { part: 'attack' });
  solved.network.setFixedPsi(`${plan.scene}:discharge`, Math.max(pdpPsi, 0));
  solved.network.solve();
  const side = readState(solved);
  const scene = supply.rigs.find((rig) => rig.id === plan.scene)!;
  let flowGpm = 0;
  for (const line of side.lines)
    if (plan.lines.some((l) => l.id === line.id && l.from.startsWith(`${plan.scene}.`)))
      flowGpm += line.flowGpm;
  const piece = plan.rigs.find((rig) => rig.id === plan.scene)!;
  const pumped = planPump(piece, flowGpm, scene.intakePsi, pdpPsi);
  return {
    ...supply,
    sceneGpm: supplyGpm,
    lines: [
      ...supply.lines,
      ...side.lines.filter((line) => !supply.lines.some((other) => other.id === line.id)),
    ],
    nozzles: [
      ...supply.nozzles,
      ...side.nozzles.filter((n) => !supply.nozzles.some((other) => other.id === n.id)),
    ],
    appliances: [
      ...supply.appliances,
      ...side.appliances.filter((a) => !supply.appliances.some((other) => other.id === a.id)),
    ],
    rigs: [
      ...supply.rigs.map((rig) => (rig.id === plan.scene ? { ...rig, ...pumped } : rig)),
      ...side.rigs.filter(
        (rig) => rig.id !== plan.scene && !supply.rigs.some((other) => other.id === rig.id),
      ),
    ],
  };
}

function planPump(piece: Rig, flowGpm: number, intakePsi: number, pdpPsi: number) {
  const capability = capabilityAt(piece, flowGpm);
  const netPsi = pdpPsi - intakePsi;
  return {
    setting: piece.setting,
    flowGpm,
    pdpPsi: Math.max(pdpPsi, intakePsi),
    netPsi: Math.max(0, netPsi),
    state: netPsi > 0 ? ('holding' as const) : ('passing' as const),
    capabilityPsi: capability,
    capabilityFraction: netPsi <= 0 ? 0 : capability > 0 ? Math.min(1, netPsi / capability) : 1,
    beyondRating: flowGpm > piece.ratedGpm + 0.5,
  };
}

/** What stops the flow of a search that stands at its greatest, for its supply side alone. */
export function supplyBinding(search: SupplySearch): LimitCheck[] {
  const plan = withSettings(search.plan, search.pdpPsi);
  const state = readState({ ...search.solved, plan });
  return bindingOf(plan, state, checkLimits(plan, state), search.tightest());
}

/**
 * The limits the search ran into bind, and no others: an intake that the settings hold at its least is
 * no limit to the answer. A pump that lets through more than it could pump is none of its own, and
 * yet the limit where a little more would have to be pumped.
 */
function bindingOf(
  plan: Plan,
  state: SupplyState,
  limits: LimitCheck[],
  tight: readonly { kind: string; piece: string }[],
): LimitCheck[] {
  for (const limit of limits) {
    limit.binds = tight.some((one) => `${one.kind}:${one.piece}` === limit.id);
    if (limit.binds && Math.abs(limit.margin) < 0.02) limit.passed = false;
  }
  const letThrough = tight.flatMap(({ kind, piece }) => {
    const rig = kind === 'pump capability' && state.rigs.find(({ id }) => id === piece);
    const listed = limits.some((limit) => limit.kind === kind && limit.piece === piece);
    return rig && !listed ? [{ ...pumpFlowCheck(plan, rig), binds: true, passed: false }] : [];
  });
  return [...limits.filter(({ binds, weight }) => binds && weight === 'hard'), ...letThrough];
}
