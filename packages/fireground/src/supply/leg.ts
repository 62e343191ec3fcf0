/** One way for water into the attack engine, before anyone is told to lay it. */
import type { HoseSize } from '../plan/plan.ts';
import type { WayKind } from './choice.ts';
import { rigName } from './crew.ts';
import type { GroundLine } from './ground.ts';
import type { HydrantAtHand, RespondingRig, Situation, WaterAtHand } from './situation.ts';

export type LegSource = { kind: 'hydrant'; at: HydrantAtHand } | { kind: 'water'; at: WaterAtHand };

/** Hose from one pump, or the hydrant, to the next. */
export interface Stretch {
  /** One or two lines side by side, the larger first. */
  lines: readonly HoseSize[];
  /** Along the streets from the water [ft]. Hose lies in whole sections, so more of it is laid. */
  fromFt: number;
  toFt: number;
  /** Hose that a single line goes on with from a place, where its first size runs out. */
  change?: { hose: HoseSize; fromFt: number };
}

export interface Leg {
  source: LegSource;
  /** From the water on; the first stands at the water. None: hydrant pressure alone. */
  pumps: readonly RespondingRig[];
  /** One more than there are pumps between the ends. */
  stretches: readonly Stretch[];
  /** The pump at the hydrant stands on an assist valve; in an arrangement only where a rig that goes there brings one. */
  valve: boolean;
  /** Whose valve it is, in an arrangement. */
  valveBy?: RespondingRig;
  /** Hose of each line from the hydrant's side outlets into its pump, besides the main one. */
  suction: readonly HoseSize[];
}

export function sourceId({ source }: Pick<Leg, 'source'>): string {
  return source.kind === 'hydrant' ? source.at.hydrant.id : source.at.draft.id;
}

export function sourceName({ source }: Pick<Leg, 'source'>): string {
  return source.kind === 'hydrant'
    ? (source.at.hydrant.name ?? source.at.hydrant.id)
    : (source.at.draft.name ?? source.at.draft.id);
}

/** The ground of a leg with the height of both its ends. A pump at draft stands above the water. */
export function groundOf(source: LegSource, scene: Situation['scene']): GroundLine {
  const fromElevationFt =
    source.kind === 'hydrant'
      ? source.at.hydrant.elevationFt
      : source.at.draft.waterElevationFt + source.at.liftFt;
  const { lengthFt, terrain } = source.at;
  return { lengthFt, terrain, fromElevationFt, toElevationFt: scene.elevationFt };
}

/** Height at which a leg's pump stands [ft]. */
export function standsAtFt(leg: Leg, pump: number): number {
  return leg.stretches[pump]!.fromFt;
}

/** What a way is called for its legs. */
export function kindOfLegs(legs: readonly Leg[]): WayKind {
  const [leg, ...others] = legs;
  if (!leg) throw new RangeError('A way has at least one source.');
  if (others.length > 0) {
    const hydrants = legs.every(({ source }) => source.kind === 'hydrant');
    const pumps = legs.reduce((sum, { pumps: of }) => sum + of.length, 0);
    return legs.length === 2 && hydrants && pumps <= 1 ? 'two hydrants' : 'combined';
  }
  if (leg.source.kind === 'water') return 'draft';
  if (leg.pumps.length === 0) {
    return leg.stretches[0]!.lines.length > 1 ? 'dual lines' : 'direct lay';
  }
  if (leg.pumps.length > 1) return 'relay';
  if (leg.suction.length > 0) return 'boosted with suction lines';
  return leg.valve ? 'boosted at the hydrant' : 'reverse lay';
}

/** The same for the same legs, whatever else a choice holds. */
export function idOfLegs(legs: readonly Leg[]): string {
  const parts = legs.map((leg) => {
    const hose = leg.stretches
      .map(({ lines, change }) => `${lines.join('+')}${change ? `~${change.hose}` : ''}`)
      .join(',');
    const pumps = leg.pumps.map(({ rig }) => rig.id).join('>');
    const extra = leg.suction.map((size) => `+${size}`).join('');
    const valve = leg.valve ? ':valve' : '';
    return [sourceId(leg), hose, pumps && `${pumps}${extra}${valve}`].filter(Boolean).join(':');
  });
  return `${kindOfLegs(legs)} ${parts.join(' & ')}`.replaceAll(' ', '-');
}

/** All rigs that pump in some legs, each once. */
export function pumpsOf(legs: readonly Leg[]): RespondingRig[] {
  const pumps: RespondingRig[] = [];
  for (const leg of legs) for (const pump of leg.pumps) if (!pumps.includes(pump)) pumps.push(pump);
  return pumps;
}

/** "Engine 2 and Engine 3". */
export function rigNames(rigs: readonly RespondingRig[]): string {
  return listed(rigs.map(rigName));
}

/** "a, b and c". */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
