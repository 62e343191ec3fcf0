/** What each operator sets, and says on the radio in the trade's plain words. */
import { IN_HG_PER_PSI } from '@plugside/hydraulics';
import type { Plan } from '../plan/plan.ts';
import { nameOf, pieceOf, splitPortRef } from '../plan/ports.ts';
import type {
  LimitCheck,
  LimitKind,
  RigOrder,
  RigState,
  SupplyState,
} from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { type Say, sayIn } from './say.ts';

/** Flow [gpm] under which an operator has nothing worth offering. */
const WORTH_OFFERING_GPM = 1;
/** A setting that differs by less is the same to a hand [psi]. */
const SAME_PSI = 1;

/** What the whole supply can still give. */
export interface Offer {
  /** Within every hard limit, above what is flowing [gpm]. */
  moreGpm: number;
  /** Discharge pressure by rig with that flowing [psi]; 0: no need to pump. */
  pdpPsi: ReadonlyMap<string, number>;
  /** What stops it there. */
  tight: readonly { kind: LimitKind; piece: string }[];
}

/**
 * One order per rig in the state, sources first. An operator offers what the whole supply can still
 * give, with the pressure that it takes from that pump; never what its pump alone could do.
 * @param gate lines to gate down at the scene
 * @param offer left out: nothing is offered
 */
export function ordersFor(
  plan: Plan,
  state: SupplyState,
  limits: readonly LimitCheck[],
  gate: RigOrder['gate'],
  units: UnitSystem = 'us',
  offer?: Offer,
): RigOrder[] {
  const words = { plan, state, limits, say: sayIn(units), ...(offer && { offer }) };
  const order: Record<string, number> = { booster: 0, relay: 1, attack: 2 };
  const rigs = [...state.rigs].sort((one, two) => order[one.role]! - order[two.role]!);
  return rigs.map((rig) => ({
    id: rig.id,
    setting: rig.setting,
    pdpPsi: rig.pdpPsi,
    radio: radioOf(words, rig),
    gate: rig.id === plan.scene ? gate : [],
  }));
}

interface Words {
  plan: Plan;
  state: SupplyState;
  limits: readonly LimitCheck[];
  say: Say;
  offer?: Offer;
}

function radioOf(words: Words, rig: RigState): string {
  const { plan, limits, say } = words;
  if (rig.id === plan.scene) return sceneWords(words, rig);
  const own = limits.filter((limit) => limit.weight === 'hard' && concerns(plan, limit, rig.id));
  const intake = intakeWords(rig, say);
  if (rig.setting.mode === 'idle') {
    return rig.flowGpm > 0.5
      ? `Not pumping; ${intake}; water going through.`
      : 'Not pumping. Standing by to boost.';
  }
  const pdp = say.full(rig.pdpPsi, 'pressure');
  if (rig.state === 'no flow') return `Set ${pdp}; no water moving.`;
  // Less out than in: the pump adds nothing, and no governor can be set so.
  const boosts = rig.drafting || rig.pdpPsi >= rig.intakePsi;
  const set = boosts ? `Set ${pdp}; ${intake}` : `At idle, no boost: ${pdp} out; ${intake}`;
  const passed = own.find((limit) => limit.passed);
  if (passed) return `${set}; past ${reasonWords(words, passed, rig)}: less, or I lose it.`;
  const none = noMoreWords(words, rig, own);
  if (none) return `${set}; ${none}: no more.`;
  return words.offer ? `${set}. ${offerWords(words.offer, rig, say)}` : `${set}.`;
}

/** "120 gpm more, with me at 71 psi." */
function offerWords({ moreGpm, pdpPsi }: Offer, rig: RigState, say: Say): string {
  const more = `${say.full(moreGpm, 'flow')} more`;
  const toPsi = pdpPsi.get(rig.id) ?? 0;
  if (toPsi > rig.pdpPsi + SAME_PSI) return `${more}, with me at ${say.full(toPsi, 'pressure')}.`;
  return `${more}, as I stand.`;
}

function sceneWords(words: Words, rig: RigState): string {
  const { state, limits, say, offer, plan } = words;
  if (state.sceneGpm < 0.5)
    return rig.tankGpm > 0.5 ? 'On tank water; no supply yet.' : 'No water coming.';
  const intake = intakeWords(rig, say);
  const spoken =
    rig.pdpPsi > rig.intakePsi + 0.5
      ? `Set ${say.full(rig.pdpPsi, 'pressure')}; ${intake}`
      : intake;
  const own = limits.filter((limit) => limit.weight === 'hard' && concerns(plan, limit, rig.id));
  if (own.some((limit) => limit.kind === 'attack intake' && limit.passed)) {
    return `${spoken}; losing my intake. Need more or I shut a line.`;
  }
  const coming = `${spoken}; ${say.full(state.sceneGpm, 'flow')} coming`;
  const none = noMoreWords(words, rig, own);
  if (none) return `${coming}; ${none}: hold what you have.`;
  if (!offer) return `${coming}.`;
  const more = say.full(offer.moreGpm, 'flow');
  const raised = state.rigs.some(
    ({ id, pdpPsi }) => id !== plan.scene && (offer.pdpPsi.get(id) ?? 0) > pdpPsi + SAME_PSI,
  );
  return `${coming}. ${more} more to be had${raised ? ' if the pumps before me go up' : ''}.`;
}

/** "14 psi in", "12 inHg vacuum". */
function intakeWords(rig: RigState, say: Say): string {
  return rig.drafting && rig.intakePsi < 0
    ? `${say.full(-rig.intakePsi * IN_HG_PER_PSI, 'vacuum')} vacuum`
    : `${say.full(rig.intakePsi, 'pressure')} in`;
}

/** Why no more can be had, in the operator's own terms; undefined where there is more, or nobody knows. */
function noMoreWords(words: Words, rig: RigState, own: readonly LimitCheck[]): string | undefined {
  const { offer, limits } = words;
  if (offer && offer.moreGpm >= WORTH_OFFERING_GPM) return undefined;
  if (!offer) {
    const at = own.find((limit) => limit.binds || Math.abs(limit.margin) < 0.02);
    return at && `at ${reasonWords(words, at, rig)}`;
  }
  const binding = limits.filter(({ kind, piece }) =>
    offer.tight.some((one) => one.kind === kind && one.piece === piece),
  );
  const first = binding.find((limit) => own.includes(limit)) ?? binding[0];
  return first ? `at ${reasonWords(words, first, rig)}` : 'all there is';
}

/** "my least intake", "the main's least at H-114", "Engine 3's pump". */
function reasonWords({ plan, say }: Words, limit: LimitCheck, rig: RigState): string {
  const own = limit.piece === rig.id;
  const piece = pieceOf(plan, limit.piece);
  const name = piece ? nameOf(piece) : limit.piece;
  switch (limit.kind) {
    case 'main residual':
      return `the main's least at ${name}`;
    case 'booster intake':
    case 'relay intake':
    case 'attack intake':
      return own ? 'my least intake' : `${name}'s least intake`;
    case 'draft vacuum':
      return own ? 'my deepest vacuum' : `${name}'s deepest vacuum`;
    case 'pump capability':
      return own ? "my pump's most" : `the most of ${name}'s pump`;
    case 'hose pressure':
      return hoseWords(plan, limit, rig, say);
    default:
      return limit.label;
  }
}

/** "the 185 psi of my hose", "the 185 psi of the hose from Engine 3". */
function hoseWords(plan: Plan, limit: LimitCheck, rig: RigState, say: Say): string {
  const most = `the ${say.full(limit.limit, 'pressure')} of`;
  const line = plan.lines.find(({ id }) => id === limit.piece);
  const from = line && pieceOf(plan, splitPortRef(line.from).pieceId);
  if (!from) return `${most} the hose`;
  return from.id === rig.id ? `${most} my hose` : `${most} the hose from ${nameOf(from)}`;
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
