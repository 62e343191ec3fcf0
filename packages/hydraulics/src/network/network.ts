/** A network built once and solved many times, settings changed in between. */
import { assemble } from './assemble.ts';
import { capabilityPsi } from './capability.ts';
import { MASS_TOLERANCE_GPM, MOST_FLOW_GPM, NEWTON_LIMIT, PSI_PER_FT } from './constants.ts';
import { continueToAnswer } from './continuation.ts';
import {
  A,
  AT_CAPABILITY,
  B,
  buildCore,
  CLOSED,
  type Core,
  FLOW,
  FROM,
  HOLDING,
  INTEGERS,
  NO_FLOW,
  OFFSET,
  OPEN,
  PASSING,
  PROTECTING,
  REALS,
  SHUT,
  STATE,
  TO,
} from './core.ts';
import { type Derivatives, derive, type Parameter } from './derivatives.ts';
import { checkFixed, checkReach, stepsOf } from './feeds.ts';
import { NetworkError } from './network-error.ts';
import { coldStart, newton } from './newton.ts';
import { Pockets } from './pockets.ts';
import { reachable } from './reach.ts';
import { type Coefficients, combine, expand, type Reduction, reduce } from './reduction.ts';
import {
  greatestFlowGpm,
  type Residual,
  worstDeparturePsi,
  worstImbalanceGpm,
} from './residual.ts';
import type { NetworkSpec, PumpLink } from './spec.ts';
import { validateSpec } from './validate.ts';

/** What a link is doing in a solved network. */
export type LinkState =
  | 'open'
  | 'shut'
  | 'check shut'
  | 'holding'
  | 'at capability'
  | 'passing'
  | 'not pumping'
  | 'protecting intake'
  | 'no flow'
  | 'cut off';

export interface SolveOptions {
  /** Start from the last answer: quicker after a small change. */
  warm?: boolean;
}

const PUMP_STATES: Record<number, LinkState> = {
  [HOLDING]: 'holding',
  [AT_CAPABILITY]: 'at capability',
  [PASSING]: 'passing',
  [NO_FLOW]: 'no flow',
  [PROTECTING]: 'protecting intake',
};

/**
 * Builds a network for solving.
 * @param spec nodes and links; units gpm, psi gauge, ft
 * @throws NetworkError when a value is out of range, a name is missing or double, nothing feeds it,
 *   a part or a pump cannot be reached by water, or two fixed pressures conflict
 */
export function buildNetwork(spec: NetworkSpec): Network {
  return new Network(spec);
}

export class Network {
  readonly nodeIds: readonly string[];
  readonly linkIds: readonly string[];
  /** Flow of each link [gpm], after `solve`. */
  readonly flowGpm: Float64Array;
  /** Gauge pressure of each node [psi], after `solve`; 0 where shut valves leave it dry. */
  readonly pressurePsi: Float64Array;
  /** By node: 1 where shut valves leave it with no water. */
  readonly cutOff: Uint8Array;

  readonly #spec: NetworkSpec;
  readonly #nodeAt: Map<string, number>;
  readonly #linkAt: Map<string, number>;
  readonly #reduction: Reduction;
  readonly #coefficients: Coefficients;
  readonly #core: Core;
  readonly #pockets: Pockets;
  readonly #elementOf: Int32Array;
  readonly #pumpOf: Int32Array;
  readonly #shut: Uint8Array;
  readonly #openA: Float64Array;
  readonly #head: Float64Array;
  readonly #elementFlow: Float64Array;
  readonly #elementClosed: Uint8Array;
  readonly #elevationPsi: Float64Array;
  readonly #coreOf: Int32Array;
  #stale = true;
  #anyShut = false;
  #solved = false;

  constructor(spec: NetworkSpec) {
    validateSpec(spec);
    this.#spec = spec;
    this.nodeIds = spec.nodes.map((node) => node.id);
    this.linkIds = spec.links.map((link) => link.id);
    this.#nodeAt = new Map(this.nodeIds.map((id, at) => [id, at]));
    this.#linkAt = new Map(this.linkIds.map((id, at) => [id, at]));
    checkReach(spec, this.#nodeAt);
    checkFixed(spec, this.#nodeAt);

    const made = assemble(spec, this.#nodeAt);
    this.#elementOf = made.elementOf;
    this.#pumpOf = made.pumpOf;
    this.#reduction = reduce(made.nodeCount, made.elements, made.keep);
    const size = this.#reduction.elements.length;
    const spread = (values: number[]) => {
      const out = new Float64Array(size);
      out.set(values);
      return out;
    };
    this.#coefficients = {
      a: spread(made.a),
      b: spread(made.b),
      offset: spread(made.offset),
      share: spread([]),
    };
    this.#openA = Float64Array.from(made.a);
    this.#core = buildCore(this.#reduction, made.fixed, made.elevationFt, made.pumps, made.bands);
    this.#pockets = new Pockets(this.#core);
    this.#elevationPsi = made.elevationFt.map((z) => z * PSI_PER_FT);
    this.#head = new Float64Array(made.nodeCount);
    this.#coreOf = new Int32Array(made.nodeCount).fill(-1);
    this.#core.nodes.forEach((node, at) => {
      this.#coreOf[node] = at;
    });
    this.#elementFlow = new Float64Array(size);
    this.#elementClosed = new Uint8Array(size);
    this.#shut = Uint8Array.from(spec.links, (link) => (link.shut ? 1 : 0));
    this.flowGpm = new Float64Array(spec.links.length);
    this.pressurePsi = new Float64Array(spec.nodes.length);
    this.cutOff = new Uint8Array(spec.nodes.length);

    spec.nodes.forEach((node, at) => {
      const core = this.#coreOf[at]!;
      if (node.fixedPsi !== undefined)
        this.#core.head[core] = node.fixedPsi + this.#elevationPsi[at]!;
      if (node.demandGpm !== undefined) this.#core.demand[core] = node.demandGpm;
    });
    spec.links.forEach((link, at) => {
      if (link.kind === 'pump') this.#setUpPump(link, this.#pumpOf[at]!);
      if (link.shut) this.setShut(link.id, true);
    });
  }

  #setUpPump(link: PumpLink, k: number): void {
    const core = this.#core;
    core.setPsi[k] = link.pdpPsi ?? Number.POSITIVE_INFINITY;
    core.speed[k] = link.speedFraction ?? 1;
    core.idle[k] = link.idle ? 1 : 0;
    core.floorPsi[k] = link.protectIntakePsi ?? Number.NEGATIVE_INFINITY;
    core.passK[k] = link.passLoss ? link.passLoss.lossPsi / link.passLoss.atGpm ** 2 : 0;
  }

  /** Index of a node in `pressurePsi`. @throws NetworkError `unknown node` */
  nodeIndex(id: string): number {
    return this.#find(this.#nodeAt, id, 'node');
  }

  /** Index of a link in `flowGpm`. @throws NetworkError `unknown node` */
  linkIndex(id: string): number {
    return this.#find(this.#linkAt, id, 'link');
  }

  #find(map: Map<string, number>, id: string, what: string): number {
    const at = map.get(id);
    if (at === undefined)
      throw new NetworkError('unknown node', `There is no ${what} called "${id}".`, [id]);
    return at;
  }

  #pump(id: string): number {
    const k = this.#pumpOf[this.linkIndex(id)]!;
    if (k < 0) throw new NetworkError('bad value', `"${id}" is not a pump.`, [id]);
    return k;
  }

  /** Governs a pump at a discharge pressure [psi, 0 … 1000]. */
  setPdpPsi(pump: string, pdpPsi: number): void {
    if (!(pdpPsi >= 0 && pdpPsi <= 1000)) {
      throw new NetworkError(
        'bad value',
        `pump ${pump}: pdpPsi is ${pdpPsi}. Give a number from 0 to 1000.`,
        [pump],
      );
    }
    const k = this.#pump(pump);
    const core = this.#core;
    if (core.idle[k] || core.setPsi[k] === Number.POSITIVE_INFINITY) this.#solved = false;
    core.idle[k] = 0;
    core.setPsi[k] = pdpPsi;
  }

  /** Throttles a pump at a fraction of full speed [0.05 … 1.5]. */
  setSpeed(pump: string, speedFraction: number): void {
    if (!(speedFraction >= 0.05 && speedFraction <= 1.5)) {
      throw new NetworkError(
        'bad value',
        `pump ${pump}: speedFraction is ${speedFraction}. Give a number from 0.05 to 1.5.`,
        [pump],
      );
    }
    const k = this.#pump(pump);
    if (this.#core.idle[k] || this.#core.setPsi[k] !== Number.POSITIVE_INFINITY)
      this.#solved = false;
    this.#core.idle[k] = 0;
    this.#core.setPsi[k] = Number.POSITIVE_INFINITY;
    this.#core.speed[k] = speedFraction;
  }

  /** Stops a pump pumping: water passes through it. */
  setIdle(pump: string): void {
    this.#core.idle[this.#pump(pump)] = 1;
    this.#solved = false;
  }

  /** Changes a fixed node's pressure [psi]. */
  setFixedPsi(node: string, psi: number): void {
    const at = this.nodeIndex(node);
    if (this.#spec.nodes[at]!.fixedPsi === undefined || !Number.isFinite(psi)) {
      throw new NetworkError(
        'bad value',
        `node ${node}: fixed pressure ${psi} refused. Only a node built with a fixed pressure takes a new one, and it must be a number.`,
        [node],
      );
    }
    this.#core.head[this.#coreOf[at]!] = psi + this.#elevationPsi[at]!;
  }

  /** Changes the flow taken at a node [gpm]; the node must have been built with a demand (0 will do). */
  setDemandGpm(node: string, gpm: number): void {
    const at = this.nodeIndex(node);
    if (this.#spec.nodes[at]!.demandGpm === undefined || !Number.isFinite(gpm)) {
      throw new NetworkError(
        'bad value',
        `node ${node}: demand ${gpm} refused. Only a node built with a demand takes a new one, and it must be a number.`,
        [node],
      );
    }
    this.#core.demand[this.#coreOf[at]!] = gpm;
  }

  /** Changes what a hose, loss or nozzle loses: `psi = k·Q²` [psi/gpm², ≥ 0]. */
  setLossFactor(link: string, k: number): void {
    const e = this.#elementOf[this.linkIndex(link)]!;
    if (e < 0 || !(k >= 0) || !Number.isFinite(k)) {
      throw new NetworkError(
        'bad value',
        `link ${link}: loss factor ${k} refused. Give a number of 0 or more, for a link that is not a pump.`,
        [link],
      );
    }
    this.#openA[e] = k;
    this.#stale = true;
  }

  /** Shuts or opens a valve: a shut link carries nothing. A shut pump neither pumps nor passes. */
  setShut(link: string, shut: boolean): void {
    this.#shut[this.linkIndex(link)] = shut ? 1 : 0;
    this.#stale = true;
    this.#solved = false;
  }

  /** Recomputes composites, shut valves and dry parts after a change. */
  #refresh(): void {
    const { a, b, offset } = this.#coefficients;
    this.#anyShut = false;
    for (let at = 0; at < this.#shut.length; at++) {
      const e = this.#elementOf[at]!;
      const shut = this.#shut[at] === 1;
      if (shut) this.#anyShut = true;
      if (e >= 0) a[e] = shut ? Number.POSITIVE_INFINITY : this.#openA[e]!;
    }
    combine(this.#reduction.program, this.#coefficients);
    this.#markCutOff();
    const core = this.#core;
    for (let e = 0; e < core.passives; e++) {
      const id = core.element[e]!;
      const r = e * REALS;
      const n = e * INTEGERS;
      core.reals[r + A] = a[id]!;
      core.reals[r + B] = b[id]!;
      core.reals[r + OFFSET] = core.sense[e]! * offset[id]!;
      const from = core.integers[n + FROM]!;
      const to = core.integers[n + TO]!;
      const dry = core.dry[from] === 1 || core.dry[to] === 1;
      if (dry || a[id] === Number.POSITIVE_INFINITY) {
        core.integers[n + STATE] = SHUT;
        core.reals[r + FLOW] = 0;
      } else if (core.integers[n + STATE] === SHUT) {
        core.integers[n + STATE] = OPEN;
        this.#solved = false;
      }
    }
    this.#stale = false;
  }

  /** Finds what shut valves leave with no water: checks and pumps are taken one way. */
  #markCutOff(): void {
    const core = this.#core;
    core.dry.fill(0);
    core.dead.fill(0);
    this.cutOff.fill(0);
    if (!this.#anyShut) return;
    const steps = this.#spec.links.flatMap((link, at) =>
      this.#shut[at] ? [] : stepsOf(link, this.#nodeAt),
    );
    const sources: number[] = [];
    this.#spec.nodes.forEach((node, at) => {
      const demand = node.demandGpm === undefined ? 0 : core.demand[this.#coreOf[at]!]!;
      if (node.fixedPsi !== undefined || demand < 0) sources.push(at);
    });
    const wet = reachable(this.nodeIds.length, sources, steps);
    for (let at = 0; at < wet.length; at++) {
      if (wet[at]) continue;
      this.cutOff[at] = 1;
      const i = this.#coreOf[at]!;
      if (i < 0) continue;
      core.dry[i] = 1;
      core.head[i] = core.elevation[i]!;
      if (core.demand[i]! > 0) {
        const name = this.nodeIds[at]!;
        throw new NetworkError(
          'no source',
          `Shut valves leave "${name}" with a demand of ${core.demand[i]} gpm and no water. Open a valve or take the demand away.`,
          [name],
        );
      }
    }
    for (let at = 0; at < this.#pumpOf.length; at++) {
      const k = this.#pumpOf[at]!;
      if (k < 0 || !(this.#shut[at] || core.dry[core.pumpIn[k]!])) continue;
      core.dead[k] = 1;
      core.pumpFlow[k] = 0;
      core.pumpState[k] = NO_FLOW;
    }
  }

  /**
   * Solves for every flow and pressure.
   * @returns this network, its `flowGpm` and `pressurePsi` filled
   * @throws NetworkError `not converged` with the best residual, `no source`, or `conflicting fixed
   *   pressures` where nothing limits a flow
   */
  solve(options?: SolveOptions): this {
    if (this.#stale) this.#refresh();
    const core = this.#core;
    core.iterations = 0;
    const warm = options?.warm === true && this.#solved;
    this.#solved = false;
    if (!warm) coldStart(core);
    if (
      !(newton(core, NEWTON_LIMIT, !warm) && this.#balances()) &&
      !continueToAnswer(core, () => this.#balances() && this.#keepsLaws())
    ) {
      const { massGpm, energyPsi } = this.residual;
      throw new NetworkError(
        'not converged',
        `The network did not settle: after ${core.iterations} passes the worst node is out by ${massGpm.toPrecision(2)} gpm and the worst link by ${energyPsi.toPrecision(2)} psi. Look for pumps that chase each other or a link with no loss in a ring.`,
        [],
        { massGpm, energyPsi, iterations: core.iterations },
      );
    }
    this.#pockets.fill(core);
    if (this.#read() > MOST_FLOW_GPM) {
      throw new NetworkError(
        'conflicting fixed pressures',
        `More than ${MOST_FLOW_GPM} gpm would flow: two pressures that are held (a source, a relief valve without rise, a pump's setting) are joined with no loss between. Give a link a loss.`,
        [],
      );
    }
    this.#solved = true;
    return this;
  }

  /**
   * Forgets the last answer, so that the next one follows from the description and the settings alone,
   * to the last bit: for those who must get the same answer from the same settings whatever was solved
   * before.
   */
  forget(): void {
    const { head, step, elevation, unknowns } = this.#core;
    for (let i = 0; i < unknowns; i++) head[i] = elevation[i]!;
    step.fill(0);
    this.#solved = false;
  }

  #balances(): boolean {
    const core = this.#core;
    const worst = worstImbalanceGpm(core);
    if (worst <= MASS_TOLERANCE_GPM) return true;
    return worst <= MASS_TOLERANCE_GPM + 1e-9 * greatestFlowGpm(core);
  }

  /** Whether every link keeps its law to a thousandth of a psi. */
  #keepsLaws(): boolean {
    return worstDeparturePsi(this.#core) <= 1e-3;
  }

  /** @returns the greatest flow [gpm] */
  #read(): number {
    const core = this.#core;
    const head = this.#head;
    const flow = this.#elementFlow;
    const closed = this.#elementClosed;
    let most = 0;
    for (let i = 0; i < core.nodes.length; i++) head[core.nodes[i]!] = core.head[i]!;
    for (let e = 0; e < core.passives; e++) {
      const id = core.element[e]!;
      const gpm = core.reals[e * REALS + FLOW]!;
      const size = gpm < 0 ? -gpm : gpm;
      if (size > most) most = size;
      flow[id] = core.sense[e]! * gpm;
      const state = core.integers[e * INTEGERS + STATE]!;
      closed[id] = state === OPEN ? 0 : state === CLOSED ? 1 : 2;
    }
    expand(this.#reduction, this.#coefficients, flow, head, closed);
    const pressures = this.pressurePsi;
    for (let n = 0; n < pressures.length; n++) {
      pressures[n] = this.cutOff[n] ? 0 : head[n]! - this.#elevationPsi[n]!;
    }
    const flows = this.flowGpm;
    for (let at = 0; at < flows.length; at++) {
      const e = this.#elementOf[at]!;
      // A pump's last digits may fall under nothing; water does not.
      flows[at] = e >= 0 ? flow[e]! : Math.max(0, core.pumpFlow[this.#pumpOf[at]!]!);
    }
    return most;
  }

  /** How well the last answer holds, worked out afresh from the laws: worst node balance [gpm] and worst link [psi]. */
  get residual(): Residual {
    return { massGpm: worstImbalanceGpm(this.#core), energyPsi: worstDeparturePsi(this.#core) };
  }

  /** Newton passes of the last solve. */
  get iterations(): number {
    return this.#core.iterations;
  }

  /** Flow of a link [gpm] in the last answer. */
  flowOf(link: string): number {
    return this.flowGpm[this.linkIndex(link)]!;
  }

  /** Gauge pressure of a node [psi] in the last answer. */
  pressureOf(node: string): number {
    return this.pressurePsi[this.nodeIndex(node)]!;
  }

  /** What a link is doing in the last answer. */
  stateOf(link: string): LinkState {
    const at = this.linkIndex(link);
    if (this.#shut[at]) return 'shut';
    const k = this.#pumpOf[at]!;
    if (k >= 0) {
      if (this.#core.dead[k]) return 'cut off';
      if (this.#core.idle[k] && this.#core.pumpState[k] === PASSING) return 'not pumping';
      return PUMP_STATES[this.#core.pumpState[k]!]!;
    }
    const from = this.#spec.links[at]!.from;
    if (this.cutOff[this.#nodeAt.get(from)!]) return 'cut off';
    const e = this.#elementOf[at]!;
    return this.#elementClosed[e] && this.#reduction.elements[e]!.check !== 0
      ? 'check shut'
      : 'open';
  }

  /** Net pressure [psi] a pump could add at its present flow; negative past its wall. */
  capabilityOf(pump: string): number {
    const core = this.#core;
    const k = this.#pump(pump);
    return capabilityPsi(
      core.curveFlow,
      core.curveNet,
      core.curveStart[k]!,
      core.curveCount[k]!,
      core.speed[k]!,
      core.pumpFlow[k]!,
    );
  }

  /**
   * Rates of change at the last answer, states staying as they are: how every flow and pressure moves
   * per psi at a pump or a source, per gpm of demand, or per unit of speed.
   * @throws NetworkError `not converged` if nothing has been solved
   */
  derivatives(parameter: Parameter): Derivatives {
    if (!this.#solved)
      throw new NetworkError(
        'not converged',
        'Solve the network before asking for derivatives.',
        [],
      );
    const target =
      'pump' in parameter
        ? { kind: parameter.kind, index: this.#pump(parameter.pump) }
        : { kind: parameter.kind, index: this.#coreOf[this.nodeIndex(parameter.node)]! };
    if (target.index === undefined || target.index < 0) {
      throw new NetworkError(
        'bad value',
        'Build the node with a demand or a fixed pressure (0 will do) to ask how things move with it.',
        [],
      );
    }
    return derive(this.#core, this.#reduction, this.#coefficients, target, {
      elementOf: this.#elementOf,
      pumpOf: this.#pumpOf,
      nodes: this.nodeIds.length,
      nodeCount: this.#head.length,
      elementFlow: this.#elementFlow,
      elementClosed: this.#elementClosed,
      head: this.#head,
    });
  }
}
