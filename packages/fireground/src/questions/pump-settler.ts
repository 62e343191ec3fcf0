/** Sets the pumps of a supply side for the flow that is asked of it. */
import type { Network } from '@plugside/hydraulics';
import type { Plan } from '../plan/plan.ts';
import type { GroupPump, PumpGroup } from './pump-groups.ts';
import { fallingRootNear } from './root.ts';
import type { Constraint } from './supply-constraints.ts';
import { LimitOwners } from './whose-limits.ts';

/** Greatest discharge pressure a search will try [psi]. */
const MOST_PDP_PSI = 600;
/** A limit is held to within this share of its scale. */
const HELD_WITHIN = 2e-7;
/** A limit that is passed by less than this share counts as held. */
const HELD = -1e-6;
/** Pressure that a share of an intake's or main's limit is worth [psi]. */
const PSI_SCALE = 50;

/** Less than this is no flow [gpm]. */
const NO_FLOW_GPM = 0.01;

/** Pumps of a group that their own limits hold down while the others rise. */
interface Held {
  pumps: GroupPump[];
  limits: Constraint[];
  group: PumpGroup;
}

/**
 * Pumps into the same intakes rise together, no higher than the intakes need, until a limit of some
 * of them alone is reached: its source's, its own, its way's. Those are held there and the rest rise on.
 * So nothing more can be had where the last of them reaches a limit too.
 */
export class PumpSettler {
  readonly #network: Network;
  readonly #groups: readonly PumpGroup[];
  readonly #constraints: readonly Constraint[];
  readonly #owners: LimitOwners;
  /** Groups of several pumps, farthest from the scene first. */
  readonly #shared: readonly PumpGroup[];
  readonly #relieved: ReadonlyMap<PumpGroup, readonly Constraint[]>;
  /** Where pumps were held last, by their ids [psi]: seldom far from where they are held next. */
  readonly #heldAt = new Map<string, number>();
  #held: Held[] = [];

  constructor(
    plan: Plan,
    network: Network,
    groups: readonly PumpGroup[],
    constraints: readonly Constraint[],
  ) {
    this.#network = network;
    this.#groups = groups;
    this.#constraints = constraints;
    this.#owners = new LimitOwners(plan, constraints);
    this.#shared = groups.filter(({ pumps }) => pumps.length > 1).reverse();
    const relieved = new Map<PumpGroup, readonly Constraint[]>();
    if (plan.hydrants.length + plan.drafts.length > 1) {
      for (const group of groups) {
        const mains = this.#owners.relievedBy(group);
        if (mains.length > 0) relieved.set(group, mains);
      }
    }
    this.#relieved = relieved;
  }

  /** Sets every pump for the network's demand and solves. */
  settle(): void {
    this.#held = [];
    for (const group of this.#groups) {
      group.free = group.pumps;
      if (group.pdpPsi <= 0) group.pdpPsi = 100;
    }
    this.#settleGroups();
    if (this.#shared.length === 0) return;
    for (let held = this.#toHold(); held; held = this.#toHold()) {
      const { group, pumps } = held;
      group.free = group.free.filter((pump) => !pumps.includes(pump));
      this.#held.push(held);
      this.#settleHeld();
    }
  }

  /** Whether the settings themselves keep a limit: its pumps are held at it, or others relieve it. */
  keeps(constraint: Constraint): boolean {
    if (this.#held.length === 0 && this.#relieved.size === 0) return false;
    const kept =
      this.#held.some(({ limits }) => limits.includes(constraint)) ||
      this.#groups.some(
        (group) => group.pdpPsi > 0 && this.#relieved.get(group)?.includes(constraint),
      );
    return kept && constraint.room() >= HELD;
  }

  /** The limit that is passed most of those that hold some pumps of a group and not the others. */
  #toHold(): Held | undefined {
    let worst = 0;
    let found: Held | undefined;
    for (const constraint of this.#constraints) {
      const { metBy } = constraint;
      if (metBy && metBy.pdpPsi > 0) continue;
      const room = constraint.room();
      if (room >= worst) continue;
      if (room >= HELD && this.#held.some(({ limits }) => limits.includes(constraint))) continue;
      for (const group of this.#shared) {
        const pumps = this.#owners.of(constraint, group.free);
        if (pumps.length === 0 || pumps.length === group.free.length) continue;
        worst = room;
        found = { pumps, limits: this.#owners.ownedBy(pumps, group), group };
        break;
      }
    }
    return found;
  }

  /** Raises or lowers each group's free pumps until its next intakes stand at their least. */
  #settleGroups(): void {
    const network = this.#network;
    const groups = this.#groups;
    for (const group of groups) this.#setFree(group, group.pdpPsi);
    network.solve({ warm: true });
    if (groups.length === 0) return;
    // With the flow given, an intake follows the pump before it psi for psi, so one step is often all;
    // beside other sources it follows less, as the steps made so far show.
    for (let round = 0; round < 8; round++) {
      let worst = 0;
      for (const group of groups) worst = Math.max(worst, this.#step(group, round === 0));
      // So near, the pressures that are solved already hold.
      if (worst < 1e-9) return;
      network.solve({ warm: true });
      if (worst < 1e-7) return;
    }
    // Where groups share water with other paths: one at a time, last before the scene first.
    for (let sweep = 0; sweep < 12; sweep++) {
      let worst = 0;
      for (const group of groups) {
        const { pdpPsi } = group;
        this.#settleGroup(group);
        worst = Math.max(worst, Math.abs(group.pdpPsi - pdpPsi));
      }
      if (worst < 1e-6) return;
    }
  }

  /**
   * Moves a group's free pumps by what its intakes stand off their least.
   * @returns by how much [psi]
   */
  #step(group: PumpGroup, first: boolean): number {
    const { last, pdpPsi } = group;
    const sparePsi = this.#spare(group);
    const moved = pdpPsi - last.pdpPsi;
    if (first) last.slope = 1;
    else if (Math.abs(moved) > 1e-6)
      last.slope = Math.min(1, Math.max(0.05, (sparePsi - last.sparePsi) / moved));
    last.pdpPsi = pdpPsi;
    last.sparePsi = sparePsi;
    const next = Math.min(MOST_PDP_PSI, Math.max(0, pdpPsi - sparePsi / last.slope));
    this.#setFree(group, next);
    return Math.abs(next - pdpPsi);
  }

  #settleGroup(group: PumpGroup): void {
    const shortAt = (pdpPsi: number) => {
      this.#setFree(group, pdpPsi);
      this.#network.solve({ warm: true });
      return -this.#spare(group);
    };
    const near = { guess: group.pdpPsi, reach: 1, least: 0, most: MOST_PDP_PSI };
    shortAt(fallingRootNear(shortAt, near, 1e-8));
  }

  /** Each held set of pumps to where its nearest limit is just reached. */
  #settleHeld(): void {
    for (let sweep = 0; sweep < 24; sweep++) {
      let worst = 0;
      for (const held of this.#held) worst = Math.max(worst, this.#settleOne(held));
      if (this.#held.length === 1 || worst < 1e-5) return;
    }
  }

  /** @returns how far the setting moved [psi] */
  #settleOne({ pumps, limits }: Held): number {
    const id = pumps.map(({ rig }) => rig.id).join('|');
    const roomAt = (pdpPsi: number) => {
      for (const pump of pumps) this.#set(pump, pdpPsi);
      this.#settleGroups();
      return leastRoom(limits);
    };
    const before = pumps[0]!.pdpPsi;
    const guess = this.#heldAt.get(id) ?? before;
    const near = { guess, reach: 2, least: 0, most: MOST_PDP_PSI };
    const pdpPsi = fallingRootNear(roomAt, near, 1e-7, (room) => Math.abs(room) < HELD_WITHIN);
    if (pumps[0]!.pdpPsi !== pdpPsi) roomAt(pdpPsi);
    this.#heldAt.set(id, pdpPsi);
    return Math.abs(pdpPsi - before);
  }

  #setFree(group: PumpGroup, pdpPsi: number): void {
    group.pdpPsi = pdpPsi;
    for (const pump of group.free) this.#set(pump, pdpPsi);
  }

  #set(pump: GroupPump, pdpPsi: number): void {
    pump.pdpPsi = pdpPsi;
    this.#network.setPdpPsi(pump.link, pdpPsi);
  }

  /** Pressure [psi] by which a group's next intakes, and the sources that it relieves, stand above their least. */
  #spare(group: PumpGroup): number {
    let least = Number.POSITIVE_INFINITY;
    for (const { node, leastPsi } of group.targets) {
      least = Math.min(least, this.#network.pressurePsi[node]! - leastPsi);
    }
    for (const { hills } of group.free) for (const hill of hills) least = Math.min(least, hill());
    const relieved = this.#relieved.get(group);
    if (relieved) least = Math.min(least, PSI_SCALE * leastRoom(relieved));
    for (const held of this.#held) {
      if (held.group !== group || held.pumps[0]!.pdpPsi > 0) continue;
      // What no longer gives water gains nothing more by their rise.
      if (this.#network.flowOf(held.pumps[0]!.link) < NO_FLOW_GPM) continue;
      const gaining = held.limits.filter((limit) => this.#owners.gainsBy(group, limit));
      least = Math.min(least, PSI_SCALE * leastRoom(gaining));
    }
    return least;
  }
}

function leastRoom(constraints: readonly Constraint[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const constraint of constraints) least = Math.min(least, constraint.room());
  return least;
}
