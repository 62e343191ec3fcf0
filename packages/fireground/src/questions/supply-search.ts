/**
 * The supply side as a search: for a flow at the scene, the lowest discharge pressure of each pump
 * that keeps every next intake at its least, and the room that leaves under every hard limit.
 */
import type { Network } from '@plugside/hydraulics';
import { scenePumpGpm } from '../limits/check-limits.ts';
import { type PlanNetwork, planNetwork } from '../network/plan-network.ts';
import type { Plan } from '../plan/plan.ts';
import type { LimitKind } from './answers.ts';
import { groupsOf, type PumpGroup } from './pump-groups.ts';
import { PumpSettler } from './pump-settler.ts';
import { fallingRoot } from './root.ts';
import { type Constraint, constraintsOf } from './supply-constraints.ts';

/** Greatest flow a search will try [gpm]. */
const MOST_GPM = 20000;

/** Pumps that no water comes to settle for less than this [share of a limit's scale]. */
const NOT_MET = -1e-5;

/** Past a greatest flow by this, a limit that jumps is passed [gpm]. */
const LITTLE_MORE_GPM = 0.01;

/** Highest intake pressure that a search will try [psi]. */
const MOST_INTAKE_PSI = 400;

export class SupplySearch {
  readonly plan: Plan;
  readonly solved: PlanNetwork;
  readonly #network: Network;
  readonly #groups: PumpGroup[];
  readonly #constraints: Constraint[];
  readonly #settler: PumpSettler;
  readonly #room: number[];
  readonly #scene: string;
  /** Tried last [gpm]. */
  #flowGpm = 0;
  /** Room under what the engines at the scene take together, as a share of it. */
  #sceneRoom = Number.POSITIVE_INFINITY;
  /** Shut valves keep all water from the scene: no flow can be asked of it. */
  readonly dry: boolean;

  constructor(plan: Plan) {
    this.plan = plan;
    this.solved = planNetwork(plan, { part: 'supply', ideal: true });
    this.#network = this.solved.network;
    this.#scene = `${plan.scene}:intake`;
    this.#groups = groupsOf(this.solved);
    this.#constraints = constraintsOf(this.solved, this.#groups);
    this.#settler = new PumpSettler(plan, this.#network, this.#groups, this.#constraints);
    this.#room = this.#constraints.map(() => 0);
    this.#network.setDemandGpm(this.#scene, 0);
    this.#network.solve();
    this.dry = this.#network.cutOff[this.#network.nodeIndex(this.#scene)] === 1;
  }

  /** Discharge pressure by rig at the last flow tried [psi]; 0: no need to pump. */
  get pdpPsi(): Map<string, number> {
    return new Map(
      this.#groups.flatMap(({ pumps }) =>
        pumps.map(({ rig, pdpPsi }) => [rig.id, pdpPsi] as const),
      ),
    );
  }

  /**
   * Sets the pumps for a flow and solves.
   * @returns the least room under any limit, as a share of its scale; what the settings keep left out
   */
  roomAt(flowGpm: number): number {
    this.#flowGpm = flowGpm;
    if (!this.dry) {
      this.#network.setDemandGpm(this.#scene, flowGpm);
      this.#settler.settle();
    }
    const takenGpm = scenePumpGpm(this.plan.sceneEngines);
    if (takenGpm !== undefined) this.#sceneRoom = (takenGpm - flowGpm) / takenGpm;
    let least = this.#sceneRoom;
    this.#constraints.forEach((constraint, at) => {
      const pumped = !this.dry && constraint.metBy !== undefined && constraint.metBy.pdpPsi > 0;
      const met = pumped && constraint.room() > NOT_MET;
      const room = met ? Number.POSITIVE_INFINITY : constraint.room();
      this.#room[at] = room;
      if (room < least && !(!this.dry && this.#settler.keeps(constraint))) least = room;
    });
    return least;
  }

  /**
   * At the last flow tried: pumps set lower than they hold steadily are raised to that, and no pump is
   * set under its own intake, where none of it breaks a limit. Nothing else is moved.
   * @param leastPsi what a pump holds steadily [psi]
   */
  steady(leastPsi: number): void {
    if (this.dry) return;
    for (const pump of this.#groups.flatMap(({ pumps }) => pumps)) {
      const asFoundPsi = pump.pdpPsi;
      if (asFoundPsi <= 0) continue;
      const intakePsi = this.#network.pressureOf(`${pump.rig.id}:intake`);
      const psi = Math.max(asFoundPsi, leastPsi, Math.ceil(intakePsi));
      if (psi === asFoundPsi) continue;
      this.#set(pump, psi);
      if (this.#leastHardRoom() < -1e-6) this.#set(pump, asFoundPsi);
    }
  }

  #set(pump: { link: string; pdpPsi: number }, psi: number): void {
    pump.pdpPsi = psi;
    this.#network.setPdpPsi(pump.link, psi);
    this.#network.solve({ warm: true });
  }

  #leastHardRoom(): number {
    return Math.min(...this.#constraints.map((constraint) => constraint.room()));
  }

  /**
   * Limits at the last flow tried whose room is `within` of the least, or under it. Where all have
   * room, those that a little more passes at once: a pump past its most has all the room there is
   * until it must add pressure, and then none.
   */
  tightest(within = 1e-4): { kind: LimitKind; piece: string; room: number }[] {
    const least = Math.min(this.#sceneRoom, ...this.#room);
    if (least > within && !this.dry) {
      const flowGpm = this.#flowGpm;
      const passed = this.roomAt(flowGpm + LITTLE_MORE_GPM) < 0 ? this.#rooms(NOT_MET) : [];
      this.roomAt(flowGpm);
      if (passed.length > 0) return passed;
    }
    return this.#rooms(Math.max(least, 0) + within);
  }

  #rooms(atMost: number): { kind: LimitKind; piece: string; room: number }[] {
    const { scene } = this.plan;
    return [
      ...this.#constraints.map(({ kind, piece }, at) => ({ kind, piece, room: this.#room[at]! })),
      { kind: 'scene pumps' as const, piece: scene, room: this.#sceneRoom },
    ].filter(({ room }) => room <= atMost);
  }

  /** Several pumps feed the same intakes: no one setting is the highest for all. */
  get pumpsBesideEachOther(): boolean {
    return this.#groups.some(({ pumps }) => pumps.length > 1);
  }

  /**
   * Highest pressure at the scene's intake for a flow within every hard limit [psi], each pump set for
   * it as for the most water; undefined where the flow cannot be had.
   */
  highestIntakePsi(flowGpm: number): number | undefined {
    const scene = this.#groups.flatMap(({ targets }) =>
      targets.filter(({ rig }) => rig === this.plan.scene),
    );
    const least = scene.map(({ leastPsi }) => leastPsi);
    const roomFor = (psi: number) => {
      for (const target of scene) target.leastPsi = psi;
      return this.roomAt(flowGpm);
    };
    const low = Math.max(0, ...least);
    const lowValue = roomFor(low);
    let highest: number | undefined;
    // A limit that binds at the greatest flow stands at nothing, give or take rounding.
    if (lowValue >= -1e-6) {
      const bracket = { low, high: MOST_INTAKE_PSI, lowValue: Math.max(0, lowValue) };
      const highValue = roomFor(MOST_INTAKE_PSI);
      roomFor(
        highValue >= 0 ? MOST_INTAKE_PSI : fallingRoot(roomFor, { ...bracket, highValue }, 0.01),
      );
      highest = this.#network.pressureOf(this.#scene);
    }
    scene.forEach((target, at) => {
      target.leastPsi = least[at]!;
    });
    return highest;
  }

  /** Greatest flow within every hard limit [gpm], the pumps left set for it; 0 where a limit fails at rest. */
  greatestGpm(): number {
    const rest = this.roomAt(0);
    if (rest < 0) return 0;
    let low = 0;
    let lowValue = rest;
    let high = 800;
    let highValue = this.roomAt(high);
    while (highValue >= 0) {
      low = high;
      lowValue = highValue;
      high *= 2;
      if (high > MOST_GPM) return low;
      highValue = this.roomAt(high);
    }
    const root = fallingRoot(
      (q) => this.roomAt(q),
      { low, high, lowValue, highValue },
      1e-6,
      1e-10,
    );
    this.roomAt(root);
    return root;
  }
}
