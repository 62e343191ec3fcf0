/** How much some legs bring, together and each alone. */
import { NetworkError } from '@plugside/hydraulics';
import type { Plan } from '../plan/plan.ts';
import type { LimitCheck, LimitKind, Notice, RigOrder } from '../questions/answers.ts';
import { mostWater, withSettings } from '../questions/most-water.ts';
import { settingsFor } from '../questions/settings-for.ts';
import { shutOff } from '../questions/shut-off.ts';
import { SupplySearch } from '../questions/supply-search.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { noticesFor } from '../words/notices.ts';
import { ordersFor } from '../words/orders.ts';
import type { Arrangement, LegWork } from './arrangement.ts';
import { supplyAsSet } from './as-set.ts';
import type { CancelSignal } from './cancel.ts';
import { hilltopNotices } from './hilltops.ts';
import { idOfLegs } from './leg.ts';
import { planOfLegs } from './leg-plan.ts';
import type { RespondingRig, Situation } from './situation.ts';

/** A way's water, in the words of the questions. */
export interface SolvedWay {
  plan: Plan;
  mostGpm: number;
  binding: LimitCheck[];
  orders: RigOrder[];
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
  /** Settings that give it, by rig [psi]. */
  pdpPsi: ReadonlyMap<string, number>;
  failed?: string;
}

export class LegSolver {
  readonly #situation: Situation;
  readonly #attack: RespondingRig;
  readonly #units: UnitSystem;
  readonly #signal: CancelSignal | undefined;
  readonly #most = new Map<string, Found>();
  /** Legs that were solved alone only for the sake of others beside them. */
  readonly #beside = new Map<string, Found>();

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
  mostGpm(arrangement: Arrangement, title: string): number {
    return this.#solved(arrangement, title).mostGpm;
  }

  /** The limits that stop an arrangement at its most. */
  tight(arrangement: Arrangement, title: string): readonly LimitKind[] {
    return this.#solved(arrangement, title).tight;
  }

  #solved(arrangement: Arrangement, title: string): Found {
    const known = this.#most.get(arrangement.id);
    if (known) return known;
    this.#signal?.throwIfAborted();
    const plan = planOfLegs(this.#situation, this.#attack, arrangement.work, title);
    const found = { plan, ...this.#greatest(plan, arrangement) };
    this.#most.set(arrangement.id, found);
    return found;
  }

  #greatest(plan: Plan, arrangement: Arrangement): Omit<Found, 'plan'> {
    try {
      const search = new SupplySearch(plan);
      const together = search.greatestGpm();
      const tight = search.tightest().map(({ kind }) => kind);
      const { pdpPsi } = search;
      const apart = this.#setApart(plan, arrangement);
      return { mostGpm: Math.max(together, apart?.mostGpm ?? 0), tight, pdpPsi };
    } catch (error) {
      if (!(error instanceof NetworkError)) throw error;
      return { mostGpm: 0, tight: [], pdpPsi: new Map(), failed: error.message };
    }
  }

  /**
   * Several pumps into one intake, each set for its own source: the search on a plan gives pumps
   * that feed the same intake one setting, so each leg is set alone, its intake at its least,
   * and the settings are tried together.
   */
  #setApart(
    plan: Plan,
    { work }: Arrangement,
    demandGpm?: number,
  ): { mostGpm: number; plan: Plan } | undefined {
    if (work.filter(({ leg }) => leg.pumps.length > 0).length < 2) return undefined;
    const legs = work.map((one) => ({
      ...this.#alone(one),
      pumped: one.leg.pumps.length > 0,
    }));
    const sum = (pumped: boolean) =>
      legs.reduce((gpm, leg) => (leg.pumped === pumped ? gpm + leg.mostGpm : gpm), 0);
    const totalGpm = sum(true) + sum(false);
    const share =
      demandGpm === undefined ? 1 : Math.min(1, Math.max(0, demandGpm - sum(false)) / sum(true));
    const settings = new Map<string, number>();
    for (const leg of legs) {
      const pdpPsi =
        leg.pumped && share < 1 ? settingsAt(leg.plan, leg.mostGpm * share) : leg.pdpPsi;
      for (const [rig, psi] of pdpPsi) settings.set(rig, psi);
    }
    const set = withSettings(plan, settings);
    const asked = demandGpm ?? totalGpm;
    const { flowGpm, limits } = supplyAsSet(set, asked);
    const passed = limits.some((limit) => limit.passed && limit.weight === 'hard');
    // A fixed setting holds its flow to rounding, not exactly.
    if (passed || flowGpm < asked - 0.5) return undefined;
    return { mostGpm: demandGpm === undefined ? totalGpm : flowGpm, plan: set };
  }

  /** One leg by itself, solved once whatever it stands beside. */
  #alone(one: LegWork): Found {
    const id = idOfLegs([one.leg]);
    const known = this.#most.get(id) ?? this.#beside.get(id);
    if (known) return known;
    const plan = planOfLegs(this.#situation, this.#attack, [one], '');
    const search = new SupplySearch(plan);
    const mostGpm = search.greatestGpm();
    const found: Found = { plan, mostGpm, tight: [], pdpPsi: search.pdpPsi };
    this.#beside.set(id, found);
    return found;
  }

  /** The whole answer for an arrangement: set to the demand where it meets it, else to its most. */
  answer(arrangement: Arrangement, title: string): SolvedWay {
    const { plan, mostGpm, failed } = this.#solved(arrangement, title);
    if (failed !== undefined) {
      return { plan, mostGpm: 0, binding: [], orders: [], notices: [], none: { reason: failed } };
    }
    const options = { units: this.#units };
    const most = mostWater(plan, options);
    if (mostGpm < NOTHING_GPM) {
      const limit =
        most.limits.find((one) => one.passed && one.weight === 'hard') ?? most.binding[0];
      const reason = most.noneReason ?? 'Nothing worth laying for comes this way.';
      return { ...most, mostGpm: 0, none: { reason, ...(limit && { limit }) } };
    }
    const { demandGpm } = this.#situation;
    const meets = mostGpm >= demandGpm - MET_WITHIN_GPM;
    if (mostGpm > most.flowGpm + 0.5) return this.#apart(plan, arrangement, mostGpm, meets);
    const answer = meets ? settingsFor(plan, Math.min(demandGpm, mostGpm), options) : most;
    return {
      plan: answer.plan,
      mostGpm,
      binding: most.binding,
      orders: answer.orders,
      notices: [...hilltopNotices(answer.plan, answer.state, this.#units), ...answer.notices],
    };
  }

  #apart(plan: Plan, arrangement: Arrangement, mostGpm: number, meets: boolean): SolvedWay {
    const { demandGpm } = this.#situation;
    const set =
      (meets ? this.#setApart(plan, arrangement, demandGpm) : undefined) ??
      this.#setApart(plan, arrangement)!;
    const { state, limits } = supplyAsSet(set.plan, meets ? demandGpm : mostGpm);
    const rest = shutOff(set.plan, state, this.#units);
    const binding = arrangement.work.flatMap((one) => {
      const alone = planOfLegs(this.#situation, this.#attack, [one], '');
      return mostWater(alone, { units: this.#units }).binding;
    });
    return {
      plan: set.plan,
      mostGpm,
      binding: binding.filter((one, at) => binding.findIndex(({ id }) => id === one.id) === at),
      orders: ordersFor(set.plan, state, limits, [], this.#units),
      notices: [
        ...hilltopNotices(set.plan, state, this.#units),
        ...noticesFor(set.plan, state, limits, rest, this.#units),
      ],
    };
  }
}

/** Settings of a leg for a flow, by rig [psi]. */
function settingsAt(plan: Plan, flowGpm: number): ReadonlyMap<string, number> {
  const search = new SupplySearch(plan);
  search.roomAt(flowGpm);
  return search.pdpPsi;
}
