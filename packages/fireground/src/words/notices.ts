/** Cautions where a plan as set is risky, and facts that its numbers rest on. */
import { coefficientFor, hoseCatalogue } from '../catalogue/hose.ts';
import type { Plan } from '../plan/plan.ts';
import { describeLine, nameOf, pieceOf } from '../plan/ports.ts';
import type { LimitCheck, Notice, ShutOff, SupplyState } from '../questions/answers.ts';
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { unsizedMainNotices } from './main-notices.ts';
import { type Say, sayIn } from './say.ts';

/** The line that ends every list of cautions. */
export const deferral =
  "Training and planning aid. Defer to your department's procedures, the water utility and the makers' data.";

/** What a reader must see beside a solved plan, the gravest first. */
export function noticesFor(
  plan: Plan,
  state: SupplyState,
  limits: readonly LimitCheck[],
  rest: ShutOff,
  units: UnitSystem = 'us',
): Notice[] {
  const say = sayIn(units);
  return [
    ...passedLimits(limits, say),
    ...unsizedMainNotices(plan),
    ...backflow(plan, state, say),
    ...rest.notices,
    ...beyondRating(plan, state, say),
    ...unfed(plan, state),
    ...supplyHose(plan, state),
    ...drafting(plan, state),
    ...assumptions(plan, state, say),
  ];
}

const QUANTITY = { psi: 'pressure', gpm: 'flow', 'ft/s': 'velocity', inHg: 'vacuum' } as const;

function passedLimits(limits: readonly LimitCheck[], say: Say): Notice[] {
  return limits
    .filter((limit) => limit.passed)
    .map((limit) => {
      const quantity = QUANTITY[limit.unit];
      const side = limit.sense === 'min' ? 'under' : 'over';
      return {
        level: 'caution' as const,
        piece: limit.piece,
        text: `${limit.label}: ${say.full(limit.value, quantity)}, ${side} its limit of ${say.full(limit.limit, quantity)}.${WHY[limit.kind] ?? ''}`,
      };
    });
}

const WHY: Partial<Record<LimitCheck['kind'], string>> = {
  'main residual':
    ' A main drawn lower can take in foul water or collapse: ease back, and tell the water utility.',
  'booster intake': ' The pump is running out of water: ease back before it cavitates.',
  'relay intake': ' The pump is running out of water: ease back before it cavitates.',
  'attack intake': ' The pump is running out of water: shut a line or ask for more.',
  'draft vacuum': ' The pump may lose its prime.',
  'hilltop pressure':
    ' Soft hose goes flat there and lets less through: put a pump before the hill, or set the one there higher.',
  'hose pressure': ' Hose can burst: bring the pressure down.',
};

function backflow(plan: Plan, state: SupplyState, say: Say): Notice[] {
  return state.hydrants
    .filter((hydrant) => hydrant.flowGpm < -0.5)
    .map((hydrant) => ({
      level: 'caution' as const,
      piece: hydrant.id,
      text: `${say.full(-hydrant.flowGpm, 'flow')} runs back into the main at ${nameOf(pieceOf(plan, hydrant.id)!)}. It can foul the drinking water: shut that outlet or fit a check.`,
    }));
}

function beyondRating(plan: Plan, state: SupplyState, say: Say): Notice[] {
  return state.rigs
    .filter((rig) => rig.beyondRating && rig.netPsi > 0.5)
    .map((rig) => {
      const piece = plan.rigs.find((candidate) => candidate.id === rig.id)!;
      return {
        level: 'caution' as const,
        piece: rig.id,
        text: `${nameOf(piece)} pumps ${say.full(rig.flowGpm, 'flow')}, beyond its rated ${say.full(piece.ratedGpm, 'flow')}: prove it by test before you count on it.`,
      };
    });
}

function unfed(plan: Plan, state: SupplyState): Notice[] {
  return state.rigs
    .filter((rig) => rig.tankMinutes !== undefined)
    .map((rig) => ({
      level: 'caution' as const,
      piece: rig.id,
      text: `${nameOf(pieceOf(plan, rig.id)!)} draws on its tank: about ${Math.max(0.1, rig.tankMinutes!).toFixed(1)} minutes of water at this flow.`,
    }));
}

function supplyHose(plan: Plan, state: SupplyState): Notice[] {
  const large = plan.lines.filter(
    (line) =>
      hoseCatalogue[line.hose].limitClass === 'supply' &&
      state.lines.some((other) => other.id === line.id),
  );
  if (large.length === 0) return [];
  return [
    {
      level: 'caution',
      text: 'Large supply hose: lay it to one side, take the twists out, keep people clear, charge it slowly and raise the pressure in steps. No vehicle crosses it unbridged.',
    },
  ];
}

function drafting(plan: Plan, state: SupplyState): Notice[] {
  return state.rigs
    .filter((rig) => rig.drafting)
    .map((rig) => ({
      level: 'caution' as const,
      piece: rig.id,
      text: `${nameOf(pieceOf(plan, rig.id)!)} drafts: keep the strainer covered and off the bottom, every suction joint tight, and the prime within the time its maker allows. Test the lift before you plan on it.`,
    }));
}

function assumptions(plan: Plan, state: SupplyState, say: Say): Notice[] {
  const facts: Notice[] = [];
  const sizes = new Set<string>();
  for (const line of plan.lines) {
    if (hoseCatalogue[line.hose].limitClass !== 'supply' || sizes.has(line.hose)) continue;
    const { coefficient, origin } = coefficientFor(plan, line);
    if (origin.kind === 'measured' || origin.kind === 'department') continue;
    sizes.add(line.hose);
    facts.push({
      level: 'fact',
      piece: line.id,
      text: `${describeLine(plan, line)}: friction coefficient ${coefficient} for ${formatHoseSize(line.hose)} hose is a book value (${origin.text}). Hose in service differs; measuring your own settles it.`,
    });
  }
  if (state.assistValves.length > 0) {
    const psi = (value: number) => say.bare(value, 'pressure');
    const spread = `${psi(5)} to ${psi(23)}, ${psi(1)} to ${psi(15)} and ${psi(0)} to ${say.full(5, 'pressure')} at ${say.full(1000, 'flow')}`;
    facts.push({
      level: 'fact',
      text: `The assist valve's losses are the ones in this plan; published field figures spread from ${spread} for its three paths. Ask for the maker's or measure yours.`,
    });
  }
  return facts;
}
