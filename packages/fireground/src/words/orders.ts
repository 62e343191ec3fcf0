/** What each operator sets, and says on the radio in the trade's plain words. */
import type { Plan } from '../plan/plan.ts';
import type { LimitCheck, RigOrder, RigState, SupplyState } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { type Say, sayIn } from './say.ts';

/** Pressure [psi] under which an operator has nothing worth offering. */
const WORTH_OFFERING_PSI = 2;

/**
 * One order per rig in the state, sources first.
 * @param gate lines to gate down at the scene
 */
export function ordersFor(
  plan: Plan,
  state: SupplyState,
  limits: readonly LimitCheck[],
  gate: RigOrder['gate'],
  units: UnitSystem = 'us',
): RigOrder[] {
  const say = sayIn(units);
  const order: Record<string, number> = { booster: 0, relay: 1, attack: 2 };
  const rigs = [...state.rigs].sort((one, two) => order[one.role]! - order[two.role]!);
  return rigs.map((rig) => ({
    id: rig.id,
    setting: rig.setting,
    pdpPsi: rig.pdpPsi,
    radio: radioOf(plan, state, rig, limits, say),
    gate: rig.id === plan.scene ? gate : [],
  }));
}

function radioOf(
  plan: Plan,
  state: SupplyState,
  rig: RigState,
  limits: readonly LimitCheck[],
  say: Say,
): string {
  const own = limits.filter((limit) => limit.weight === 'hard' && concerns(plan, limit, rig.id));
  const intake = `${say.bare(rig.intakePsi, 'pressure')} in`;
  if (rig.id === plan.scene) {
    const atMost = limits.some((limit) => limit.binds && limit.weight === 'hard');
    return sceneWords(state, rig, own, intake, atMost, say);
  }
  if (rig.setting.mode === 'idle') {
    return rig.flowGpm > 0.5
      ? `Not pumping; ${intake}; water going through.`
      : 'Not pumping. Standing by to boost.';
  }
  if (rig.state === 'no flow') return `Set ${say.bare(rig.pdpPsi, 'pressure')}; no water moving.`;
  const set = `Set ${say.bare(rig.pdpPsi, 'pressure')}; ${intake}`;
  if (own.some((limit) => limit.passed)) return `${set}; over the limit: ${reason(own)}.`;
  const spare = sparePsi(rig, own);
  if (own.some((limit) => limit.binds) || spare < WORTH_OFFERING_PSI)
    return `${set}; no more to give.`;
  return `${set}; ${say.bare(spare, 'pressure')} more available.`;
}

function sceneWords(
  state: SupplyState,
  rig: RigState,
  own: readonly LimitCheck[],
  intake: string,
  atMost: boolean,
  say: Say,
): string {
  const coming = say.bare(state.sceneGpm, 'flow');
  if (state.sceneGpm < 0.5)
    return rig.tankGpm > 0.5 ? 'On tank water; no supply yet.' : 'No water coming.';
  const spoken =
    rig.pdpPsi > rig.intakePsi + 0.5
      ? `Set ${say.bare(rig.pdpPsi, 'pressure')}; ${intake}`
      : intake;
  if (own.some((limit) => limit.kind === 'attack intake' && limit.passed)) {
    return `${spoken}; losing my intake. Need more or I shut a line.`;
  }
  if (atMost) return `${spoken}; ${coming} coming. Hold what you have.`;
  return `${spoken}; ${coming} coming. Room for more.`;
}

/** Whether a limit is one that a rig's operator sees at the panel: own intake and pump, hose from its discharges, its hydrant. */
function concerns(plan: Plan, limit: LimitCheck, rigId: string): boolean {
  if (limit.piece === rigId) return true;
  const line = plan.lines.find((candidate) => candidate.id === limit.piece);
  if (line) return line.from.startsWith(`${rigId}.`);
  const hydrant = plan.hydrants.find((candidate) => candidate.id === limit.piece);
  if (!hydrant) return false;
  const valve = plan.appliances.find(
    (a) => a.kind === 'assist-valve' && a.on.startsWith(`${hydrant.id}.`),
  );
  return plan.lines.some(
    (candidate) =>
      candidate.to.startsWith(`${rigId}.`) &&
      (candidate.from.startsWith(`${hydrant.id}.`) ||
        (valve && candidate.from.startsWith(`${valve.id}.`))),
  );
}

/** How far the discharge could rise at this flow before a hose or the pump stops it [psi]. */
function sparePsi(rig: RigState, own: readonly LimitCheck[]): number {
  let spare = Math.max(0, rig.capabilityPsi - rig.netPsi);
  for (const limit of own)
    if (limit.kind === 'hose pressure') spare = Math.min(spare, Math.max(0, limit.margin));
  return spare;
}

function reason(own: readonly LimitCheck[]): string {
  const first = own.find((limit) => limit.passed);
  return first ? first.kind : '';
}
