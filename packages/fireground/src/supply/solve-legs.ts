/** How much some legs bring together. */
import { NetworkError } from '@plugside/hydraulics';
import { hoseLink } from '../network/plan-network.ts';
import type { Line, Plan } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';
import type { LimitCheck, LimitKind, MainRange, Notice, RigOrder } from '../questions/answers.ts';
import { mainRange } from '../questions/main-range.ts';
import { mostWater, mostWaterFound, supplyBinding } from '../questions/most-water.ts';
import { settingsFound } from '../questions/settings-for.ts';
import { SupplySearch } from '../questions/supply-search.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { mainNotices } from '../words/main-notices.ts';
import type { Arrangement, LineAtFire } from './arrangement.ts';
import { takenGpm } from './at-the-fire.ts';
import type { CancelSignal } from './cancel.ts';
import { rigName } from './crew.ts';
import { type FireAsk, firePumpCheck } from './fire-pumps.ts';
import { hilltopNotices } from './hilltops.ts';
import { planOfLegs } from './leg-plan.ts';
import type { RespondingRig, Situation } from './situation.ts';
import { wayTitle } from './title.ts';

/** A way's water, in the words of the questions. */
export interface SolvedWay {
  plan: Plan;
  mostGpm: number;
  binding: LimitCheck[];
  orders: RigOrder[];
  /** At that setting, into the attack engine [psi]. */
  setIntakePsi: number;
  /** And what comes to each engine at the fire, in the order of `atFire` [gpm]. */
  setFireGpm: readonly number[];
  mains?: MainRange;
  notices: Notice[];
  /** Why there is none, where there is none. */
  none?: { reason: string; limit?: LimitCheck };
}

/** Flow under which a way brings nothing worth a line [gpm]. */
const NOTHING_GPM = 1;
const NOTHING_SET = { setIntakePsi: 0, setFireGpm: [] };
/** A demand is met to within this [gpm]. */
export const MET_WITHIN_GPM = 0.01;

interface Found {
  plan: Plan;
  /** Brought to the fire, whatever the pumps there put out. */
  mostGpm: number;
  /** Of that by line, in the order of legs and lines; left out where one engine takes it all. */
  lineGpm?: readonly number[];
  /** What stops it there. */
  tight: readonly LimitKind[];
  failed?: string;
}

export class LegSolver {
  readonly #situation: Situation;
  readonly #attack: RespondingRig;
  readonly #units: UnitSystem;
  readonly #signal: CancelSignal | undefined;
  readonly #most = new Map<string, Found>();
  readonly #fire: FireAsk;

  constructor(
    situation: Situation,
    attack: RespondingRig,
    fire: FireAsk,
    units: UnitSystem,
    signal: CancelSignal | undefined,
  ) {
    this.#situation = situation;
    this.#attack = attack;
    this.#units = units;
    this.#signal = signal;
    this.#fire = fire;
  }

  /** Greatest flow that an arrangement brings to the fire [gpm]; 0 where there is none. Solved once. */
  broughtGpm(arrangement: Arrangement): number {
    return this.#solved(arrangement).mostGpm;
  }

  /** What its engines at the fire can take of that [gpm]. */
  mostGpm(arrangement: Arrangement): number {
    const { mostGpm } = this.#solved(arrangement);
    const taken = this.takenGpm(arrangement);
    return taken.length === 1 ? taken[0]! : Math.min(mostGpm, sumOf(taken));
  }

  /** The same by engine, in the order of `atFire` [gpm]. */
  takenGpm(arrangement: Arrangement): number[] {
    const { mostGpm, lineGpm } = this.#solved(arrangement);
    const { atFire } = arrangement;
    if (!lineGpm)
      return atFire.map((_, at) => (at === 0 ? Math.min(mostGpm, this.#fire.takers[0].gpm) : 0));
    return takenGpm(atFire, (line) => lineGpm[placeIn(arrangement, line)]!);
  }

  /** The limits that stop an arrangement at its most. */
  tight(arrangement: Arrangement): readonly LimitKind[] {
    return this.#solved(arrangement).tight;
  }

  #solved(arrangement: Arrangement): Found {
    const known = this.#most.get(arrangement.id);
    if (known) return known;
    this.#signal?.throwIfAborted();
    const title = wayTitle(arrangement, this.#units);
    const plan = planOfLegs(this.#situation, this.#attack, arrangement.work, title);
    const found = { plan, ...this.#greatest(plan) };
    this.#most.set(arrangement.id, found);
    return found;
  }

  #greatest(plan: Plan): Omit<Found, 'plan'> {
    try {
      const search = new SupplySearch(plan);
      const mostGpm = search.greatestGpm();
      const tight = search.tightest().map(({ kind }) => kind);
      // More than the attack engine's pump puts out: several engines may share it.
      if (mostGpm <= this.#fire.takers[0].gpm) return { mostGpm, tight };
      return { mostGpm, tight, lineGpm: flowsToScene(search) };
    } catch (error) {
      if (!(error instanceof NetworkError)) throw error;
      return { mostGpm: 0, tight: [], failed: error.message };
    }
  }

  /** The whole answer for an arrangement: set to the demand where it meets it, else to its most. */
  answer(arrangement: Arrangement): SolvedWay {
    const { plan, mostGpm: broughtGpm, failed } = this.#solved(arrangement);
    const mostGpm = this.mostGpm(arrangement);
    if (failed !== undefined) {
      const none = { reason: failed };
      return { plan, mostGpm: 0, binding: [], orders: [], ...NOTHING_SET, notices: [], none };
    }
    const options = { units: this.#units, steady: true };
    if (mostGpm < NOTHING_GPM) {
      const most = mostWater(plan, options);
      const limit =
        most.limits.find((one) => one.passed && one.weight === 'hard') ?? most.binding[0];
      const reason = most.noneReason ?? 'Nothing worth laying for comes this way.';
      return { ...most, ...NOTHING_SET, mostGpm: 0, none: { reason, ...(limit && { limit }) } };
    }
    const { demandGpm } = this.#situation;
    const meets = mostGpm >= demandGpm - MET_WITHIN_GPM;
    // The most is known: the search is only set to it.
    const held = this.#heldAtFire(arrangement);
    const search = new SupplySearch(this.#withEngines(plan, arrangement, held.length > 0));
    search.roomAt(mostGpm);
    const binding = held.length > 0 ? held : supplyBinding(search);
    if (held.length > 0 && held.length < arrangement.atFire.length) {
      const brought = new SupplySearch(plan);
      brought.roomAt(broughtGpm);
      binding.push(...supplyBinding(brought));
    }
    const answer =
      meets || held.length > 0
        ? settingsFound(search, Math.min(demandGpm, mostGpm), { ...options, mostGpm })
        : mostWaterFound(search, mostGpm, options);
    this.#signal?.throwIfAborted();
    const mains = withinPumps(mainRange(plan, broughtGpm), mostGpm);
    const setGpm = linesToScene(plan).map(
      ({ id }) => answer.state.lines.find((line) => line.id === id)!.flowGpm,
    );
    return {
      plan: answer.plan,
      mostGpm,
      binding,
      orders: answer.orders,
      setIntakePsi: answer.state.rigs.find(({ id }) => id === plan.scene)!.intakePsi,
      setFireGpm: arrangement.atFire.map(({ lines }) =>
        sumOf(lines.map((line) => setGpm[placeIn(arrangement, line)]!)),
      ),
      ...(mains && { mains }),
      notices: [
        ...(mains ? mainNotices(plan, mains, this.#units) : []),
        ...hilltopNotices(answer.plan, answer.state, this.#units),
        ...answer.notices.filter(({ about }) => about !== 'mains'),
      ],
    };
  }

  /** The plan with the engines at the fire: what their pumps put out, or where that is the limit what each takes. */
  #withEngines(plan: Plan, arrangement: Arrangement, held: boolean): Plan {
    const taken = this.takenGpm(arrangement);
    const drawn = linesToScene(plan);
    const several = arrangement.atFire.length > 1;
    const sceneEngines = arrangement.atFire.map(({ rig, gpm, lines }, at) => ({
      name: rigName(rig),
      mostGpm: Math.max(1, held ? taken[at]! : gpm),
      ...(several && { lines: lines.map((line) => drawn[placeIn(arrangement, line)]!.id) }),
    }));
    return { ...plan, sceneEngines };
  }

  /** The limits of the pumps at the fire that have no more to give. */
  #heldAtFire(arrangement: Arrangement): LimitCheck[] {
    const taken = this.takenGpm(arrangement);
    const held = arrangement.atFire.map(({ rig }, at) =>
      firePumpCheck(rig, taken[at]!, this.#fire.pressure),
    );
    return this.mostGpm(arrangement) < this.broughtGpm(arrangement) - MET_WITHIN_GPM
      ? held.filter(({ binds }) => binds)
      : [];
  }
}

/** Place of a line among those that a plan draws to the scene. */
function placeIn({ work }: Arrangement, { leg, line }: LineAtFire): number {
  const counts = work.map(({ leg: one }) => one.stretches.at(-1)!.lines.length);
  return sumOf(counts.slice(0, leg)) + line;
}

/** Lines into the scene, in the order in which the plan draws them. */
function linesToScene({ lines, scene }: Plan): Line[] {
  return lines.filter(({ to }) => splitPortRef(to).pieceId === scene);
}

/** Flow through each of them [gpm]. */
function flowsToScene({ plan, solved: { network } }: SupplySearch): number[] {
  return linesToScene(plan).map((line) => network.flowGpm[network.linkIndex(hoseLink(line))]!);
}

function sumOf(figures: readonly number[]): number {
  return figures.reduce((sum, figure) => sum + figure, 0);
}

/** A range of which the pumps at the fire take no more than a flow [gpm]; null where nothing hangs on it then. */
function withinPumps(range: MainRange | null, mostGpm: number): MainRange | null {
  if (!range || range.counted <= mostGpm + MET_WITHIN_GPM) return range;
  const atMost = (gpm: number) => Math.min(gpm, mostGpm);
  const [shared, apart] = [atMost(range.shared), atMost(range.apart)];
  const open = range.basis === 'tested together' || shared < mostGpm;
  return open ? { ...range, counted: mostGpm, shared, apart } : null;
}
