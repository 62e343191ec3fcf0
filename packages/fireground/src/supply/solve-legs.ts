/** How much some legs bring together. */
import { NetworkError } from '@plugside/hydraulics';
import type { Plan } from '../plan/plan.ts';
import type { LimitCheck, LimitKind, MainRange, Notice, RigOrder } from '../questions/answers.ts';
import { mainRange } from '../questions/main-range.ts';
import { mostWater, mostWaterFound, supplyBinding } from '../questions/most-water.ts';
import { settingsFound } from '../questions/settings-for.ts';
import { SupplySearch } from '../questions/supply-search.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { mainNotices } from '../words/main-notices.ts';
import type { Arrangement } from './arrangement.ts';
import type { CancelSignal } from './cancel.ts';
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
  mains?: MainRange;
  notices: Notice[];
  /** Why there is none, where there is none. */
  none?: { reason: string; limit?: LimitCheck };
}

/** Flow under which a way brings nothing worth a line [gpm]. */
const NOTHING_GPM = 1;
/** A demand is met to within this [gpm]. */
export const MET_WITHIN_GPM = 0.01;

interface Found {
  plan: Plan;
  mostGpm: number;
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

  constructor(
    situation: Situation,
    attack: RespondingRig,
    units: UnitSystem,
    signal: CancelSignal | undefined,
  ) {
    this.#situation = situation;
    this.#attack = attack;
    this.#units = units;
    this.#signal = signal;
  }

  /** Greatest flow of an arrangement [gpm]; 0 where there is none. Solved once. */
  mostGpm(arrangement: Arrangement): number {
    return this.#solved(arrangement).mostGpm;
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
      return { mostGpm, tight: search.tightest().map(({ kind }) => kind) };
    } catch (error) {
      if (!(error instanceof NetworkError)) throw error;
      return { mostGpm: 0, tight: [], failed: error.message };
    }
  }

  /** The whole answer for an arrangement: set to the demand where it meets it, else to its most. */
  answer(arrangement: Arrangement): SolvedWay {
    const { plan, mostGpm, failed } = this.#solved(arrangement);
    if (failed !== undefined) {
      return { plan, mostGpm: 0, binding: [], orders: [], notices: [], none: { reason: failed } };
    }
    const options = { units: this.#units };
    if (mostGpm < NOTHING_GPM) {
      const most = mostWater(plan, options);
      const limit =
        most.limits.find((one) => one.passed && one.weight === 'hard') ?? most.binding[0];
      const reason = most.noneReason ?? 'Nothing worth laying for comes this way.';
      return { ...most, mostGpm: 0, none: { reason, ...(limit && { limit }) } };
    }
    const { demandGpm } = this.#situation;
    const meets = mostGpm >= demandGpm - MET_WITHIN_GPM;
    // The most is known: the search is only set to it.
    const search = new SupplySearch(plan);
    search.roomAt(mostGpm);
    const binding = supplyBinding(search);
    const answer = meets
      ? settingsFound(search, Math.min(demandGpm, mostGpm), { ...options, mostGpm })
      : mostWaterFound(search, mostGpm, options);
    this.#signal?.throwIfAborted();
    const mains = mainRange(plan, mostGpm);
    return {
      plan: answer.plan,
      mostGpm,
      binding,
      orders: answer.orders,
      ...(mains && { mains }),
      notices: [
        ...(mains ? mainNotices(plan, mains, this.#units) : []),
        ...hilltopNotices(answer.plan, answer.state, this.#units),
        ...answer.notices.filter(({ about }) => about !== 'mains'),
      ],
    };
  }
}
