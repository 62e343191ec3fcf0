/** Which pumps of a group a limit belongs to: those whose own source, or way to the next intake, it is on. */
import { limitsFor } from '../catalogue/limits.ts';
import { upstreamOf, wayToNext } from '../network/downstream.ts';
import { drawsThrough, type SharedMain, sharedMains } from '../network/shared-mains.ts';
import type { Plan } from '../plan/plan.ts';
import type { GroupPump, PumpGroup } from './pump-groups.ts';
import type { Constraint } from './supply-constraints.ts';

export class LimitOwners {
  readonly #plan: Plan;
  readonly #shared: readonly SharedMain[];
  readonly #constraints: readonly Constraint[];
  readonly #pieces = new Map<GroupPump, Set<string>>();

  constructor(plan: Plan, constraints: readonly Constraint[]) {
    this.#plan = plan;
    this.#shared = sharedMains(plan);
    this.#constraints = constraints;
  }

  /** The pumps of some that raise this limit's strain when they are raised; none where it is on no pump's way. */
  of({ kind, piece }: Constraint, pumps: readonly GroupPump[]): GroupPump[] {
    const own = pumps.filter((pump) => this.#piecesOf(pump).has(piece));
    if (own.length > 0 || kind !== 'main residual') return own;
    // Where none of them pumps from this hydrant, those on the same main draw it down.
    return pumps.filter((pump) => this.#drawsOnMainOf(pump, piece));
  }

  /** The limits that belong to some of these free pumps of a group and to no others that are free. */
  ownedBy(pumps: readonly GroupPump[], group: PumpGroup): Constraint[] {
    return this.#constraints.filter((constraint) => {
      const owners = this.of(constraint, group.free);
      return owners.length > 0 && owners.every((one) => pumps.includes(one));
    });
  }

  /**
   * Mains that feed a group's intakes past its pumps: the higher these pumps hold the intakes, the
   * less such a main gives. One that is short at rest is past help, and one that these pumps draw
   * on themselves is not sure to gain.
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

  /**
   * Whether a source's limit is sure to gain where other pumps of a group rise: they take its share of
   * the water. From a main that only some of them share they may draw more themselves.
   */
  gainsBy(group: PumpGroup, { kind, piece }: Constraint): boolean {
    if (kind !== 'main residual') return true;
    const sharing = group.pumps.filter((pump) => this.#drawsOnMainOf(pump, piece));
    return sharing.length === 0 || sharing.length === group.pumps.length;
  }

  /** Whether a pump draws on the shared main that a hydrant is on. */
  #drawsOnMainOf(pump: GroupPump, hydrantId: string): boolean {
    return this.#shared.some(
      ({ hydrants }) =>
        hydrants.some(({ id }) => id === hydrantId) &&
        hydrants.some(({ id }) => this.#piecesOf(pump).has(id)),
    );
  }

  #piecesOf(pump: GroupPump): Set<string> {
    const known = this.#pieces.get(pump);
    if (known) return known;
    const { id } = pump.rig;
    const upstream = upstreamOf(this.#plan, id);
    const pieces = new Set([
      id,
      ...upstream,
      ...this.#drawnThrough(upstream),
      ...wayToNext(this.#plan, id).pieces,
    ]);
    this.#pieces.set(pump, pieces);
    return pieces;
  }

  /** Hydrants of a shared main whose whole way the water of some others goes through. */
  #drawnThrough(pieces: ReadonlySet<string>): string[] {
    return this.#shared.flatMap((shared) => {
      const takers = shared.hydrants.filter(({ id }) => pieces.has(id));
      return shared.hydrants
        .filter((other) => takers.some(({ id }) => drawsThrough(shared, id, other.id)))
        .map(({ id }) => id);
    });
  }
}
