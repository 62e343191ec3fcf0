/** Which pumps of a group a limit belongs to: those whose own source, or way to the next intake, it is on. */
import { limitsFor } from '../catalogue/limits.ts';
import { upstreamOf, wayToNext } from '../network/downstream.ts';
import type { Plan } from '../plan/plan.ts';
import type { GroupPump, PumpGroup } from './pump-groups.ts';
import type { Constraint } from './supply-constraints.ts';

export class LimitOwners {
  readonly #plan: Plan;
  readonly #constraints: readonly Constraint[];
  readonly #pieces = new Map<GroupPump, Set<string>>();

  constructor(plan: Plan, constraints: readonly Constraint[]) {
    this.#plan = plan;
    this.#constraints = constraints;
  }

  /** The pumps of some that raise this limit's strain when they are raised; none where it is on no pump's way. */
  of({ piece }: Constraint, pumps: readonly GroupPump[]): GroupPump[] {
    return pumps.filter((pump) => this.#piecesOf(pump).has(piece));
  }

  /** The limits that belong to these pumps of a group and to no others of it. */
  ownedBy(pumps: readonly GroupPump[], group: PumpGroup): Constraint[] {
    return this.#constraints.filter((constraint) => {
      const owners = this.of(constraint, group.pumps);
      return owners.length > 0 && owners.every((one) => pumps.includes(one));
    });
  }

  /**
   * Mains that feed a group's intakes past its pumps: the higher these pumps hold the intakes, the
   * less such a main gives. One that is short at rest is past help.
   */
  relievedBy(group: PumpGroup): Constraint[] {
    const least = limitsFor(this.#plan).mainResidualPsi;
    const mains = new Set(
      this.#plan.hydrants.filter(({ staticPsi }) => staticPsi >= least).map(({ id }) => id),
    );
    const fed = group.targets.map(({ rig }) => upstreamOf(this.#plan, rig));
    return this.#constraints.filter(
      (constraint) =>
        constraint.kind === 'main residual' &&
        mains.has(constraint.piece) &&
        fed.some((pieces) => pieces.has(constraint.piece)) &&
        this.of(constraint, group.pumps).length === 0,
    );
  }

  #piecesOf(pump: GroupPump): Set<string> {
    const known = this.#pieces.get(pump);
    if (known) return known;
    const { id } = pump.rig;
    const pieces = new Set([
      id,
      ...upstreamOf(this.#plan, id),
      ...wayToNext(this.#plan, id).pieces,
    ]);
    this.#pieces.set(pump, pieces);
    return pieces;
  }
}
