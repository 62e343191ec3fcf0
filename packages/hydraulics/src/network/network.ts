/** A network built once and solved many times, settings changed in between. */
import { capabilityPsi } from './capability.ts';
import {
  MAIN_EXPONENT,
  MASS_TOLERANCE_GPM,
  NEWTON_LIMIT,
  PSI_PER_FT,
} from './constants.ts';
import {
  A,
  AT_CAPABILITY,
  type AutomaticBand,
  B,
  buildCore,
  CHECK,
  CLOSED,
  type Core,
  type CorePump,
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
import { NetworkError } from './network-error.ts';
import { coldStart, newton } from './newton.ts';
import { reachable, type Step } from './reach.ts';
import { type Coefficients, combine, type Element, expand, type Reduction, reduce } from './reduction.ts';
import { relax } from './relaxation.ts';
import { type Residual, worstDeparturePsi, worstImbalanceGpm } from './residual.ts';
import type { LinkSpec, NetworkSpec, PumpLink } from './spec.ts';
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
  readonly #elementOf: Int32Array;
  readonly #pumpOf: Int32Array;
  readonly #shut: Uint8Array;
  readonly #openA: Float64Array;
  readonly #head: Float64Array;
  readonly #elementFlow: Float64Array;
  readonly #elementClosed: Uint8Array;
  readonly #dry: Uint8Array;
  readonly #elevationPsi: Float64Array;
  readonly #coreOf: Int32Array;
  readonly #ownNodes: number;
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
    this.#ownNodes = spec.nodes.length;
    checkReach(spec, this.#nodeAt);
    checkFixed(spec, this.#nodeAt);

    // The open air is one more node; pumps that would share a node get one of their own.
    const air = spec.nodes.length;
    const elevations = spec.nodes.map((node) => node.elevationFt ?? 0);
    elevations.push(0);
    const fixed: number[] = spec.nodes.map((node) => (node.fixedPsi === undefined ? 0 : 1));
    fixed.push(1);
    const keep: number[] = spec.nodes.map((node) =>
      node.fixedPsi !== undefined || node.demandGpm !== undefined ? 1 : 0,
    );
    keep.push(1);
    const taken = new Set<number>();
    const elements: Element[] = [];
    const a: number[] = [];
    const b: number[] = [];
    const offset: number[] = [];
    const bands: AutomaticBand[] = [];
    const pumps: CorePump[] = [];
    this.#elementOf = new Int32Array(spec.links.length).fill(-1);
    this.#pumpOf = new Int32Array(spec.links.length).fill(-1);
    const joins: [number, number][] = [];
    const pumpEnd = (node: number): number => {
      if (!fixed[node] && !taken.has(node)) {
        taken.add(node);
        keep[node] = 1;
        return node;
      }
      const own = elevations.length;
      elevations.push(elevations[node]!);
      fixed.push(0);
      keep.push(1);
      joins.push([node, own]);
      return own;
    };
    spec.links.forEach((link, at) => {
      const from = this.#nodeAt.get(link.from)!;
      if (link.kind === 'pump') {
        this.#pumpOf[at] = pumps.length;
        pumps.push({
          from: pumpEnd(from),
          to: pumpEnd(this.#nodeAt.get(link.to)!),
          points: link.capability,
          mayProtect: link.protectIntakePsi !== undefined,
        });
        return;
      }
      this.#elementOf[at] = elements.length;
      const parts = passiveParts(link, elevations[from]!);
      let automatic = -1;
      if (link.kind === 'automaticNozzle') {
        automatic = bands.length;
        bands.push(link);
      }
      elements.push({
        from,
        to: 'to' in link ? this.#nodeAt.get(link.to)! : air,
        check: 'to' in link ? (link.check ? 1 : 0) : 1,
        automatic,
        plain: link.kind === 'hose' || link.kind === 'loss',
      });
      a.push(parts.a);
      b.push(parts.b);
      offset.push(parts.offset);
    });
    for (const [from, to] of joins) {
      elements.push({ from, to, check: 0, automatic: -1, plain: false });
      a.push(0);
      b.push(0);
      offset.push(0);
    }

    const nodeCount = elevations.length;
    this.#reduction = reduce(nodeCount, elements, Uint8Array.from(keep));
    const size = this.#reduction.elements.length;
    const spread = (values: number[]) => {
      const out = new Float64Array(size);
      out.set(values);
      return out;
    };
    this.#coefficients = { a: spread(a), b: spread(b), offset: spread(offset) };
    this.#openA = Float64Array.from(a);
    const elevationFt = Float64Array.from(elevations);
    this.#core = buildCore(this.#reduction, Uint8Array.from(fixed), elevationFt, pumps, bands);
    this.#elevationPsi = elevationFt.map((z) => z * PSI_PER_FT);
    this.#head = new Float64Array(nodeCount);
    this.#dry = new Uint8Array(nodeCount);
    this.#coreOf = new Int32Array(nodeCount).fill(-1);
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
      if (node.fixedPsi !== undefined) this.#core.head[core] = node.fixedPsi + this.#elevationPsi[at]!;
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
    if (at === undefined) throw new NetworkError('unknown node', `There is no ${what} called "${id}".`, [id]);
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
      throw new NetworkError('bad value', `pump ${pump}: pdpPsi is ${pdpPsi}. Give a number from 0 to 1000.`, [pump]);
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
      throw new NetworkError('bad value', `pump ${pump}: speedFraction is ${speedFraction}. Give a number from 0.05 to 1.5.`, [pump]);
    }
    const k = this.#pump(pump);
    if (this.#core.idle[k] || this.#core.setPsi[k] !== Number.POSITIVE_INFINITY) this.#solved = false;
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
      throw new NetworkError('bad value', `node ${node}: fixed pressure ${psi} refused. Only a node built with a fixed pressure takes a new one, and it must be a number.`, [node]);
    }
    this.#core.head[this.#coreOf[at]!] = psi + this.#elevationPsi[at]!;
  }

  /** Changes the flow taken at a node [gpm]; the node must have been built with a demand (0 will do). */
  setDemandGpm(node: string, gpm: number): void {
    const at = this.nodeIndex(node);
    if (this.#spec.nodes[at]!.demandGpm === undefined || !Number.isFinite(gpm)) {
      throw new NetworkError('bad value', `node ${node}: demand ${gpm} refused. Only a node built with a demand takes a new one, and it must be a number.`, [node]);
    }
    this.#core.demand[this.#coreOf[at]!] = gpm;
  }

  /** Changes what a hose, loss or nozzle loses: `psi = k·Q²` [psi/gpm², ≥ 0]. */
  setLossFactor(link: string, k: number): void {
    const e = this.#elementOf[this.linkIndex(link)]!;
    if (e < 0 || !(k >= 0) || !Number.isFinite(k)) {
      throw new NetworkError('bad value', `link ${link}: loss factor ${k} refused. Give a number of 0 or more, for a link that is not a pump.`, [link]);
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
    const core = this.#core;
    for (let e = 0; e < core.passives; e++) {
      const id = core.element[e]!;
      const r = e * REALS;
      const n = e * INTEGERS;
      core.reals[r + A] = a[id]!;
      core.reals[r + B] = b[id]!;
      core.reals[r + OFFSET] = core.sense[e]! * offset[id]!;
      if (a[id] === Number.POSITIVE_INFINITY) {
        core.integers[n + STATE] = SHUT;
        core.reals[r + FLOW] = 0;
      } else if (core.integers[n + STATE] === SHUT) {
        core.integers[n + STATE] = OPEN;
        this.#solved = false;
      }
    }
    this.#markDry();
    this.#stale = false;
  }

  #markDry(): void {
    const core = this.#core;
    this.#dry.fill(0);
    core.dead.fill(0);
    if (!this.#anyShut) return;
    const steps: Step[] = [];
    for (let e = 0; e < core.passives; e++) {
      const n = e * INTEGERS;
      if (core.integers[n + STATE] === SHUT || core.integers[n + CHECK] === 2) continue;
      const from = core.nodes[core.integers[n + FROM]!]!;
      const to = core.nodes[core.integers[n + TO]!]!;
      if (to === this.#ownNodes || from === this.#ownNodes) continue;
      steps.push({ from, to });
      if (core.integers[n + CHECK] === 0) steps.push({ from: to, to: from });
    }
    for (let at = 0; at < this.#pumpOf.length; at++) {
      const k = this.#pumpOf[at]!;
      if (k < 0) continue;
      if (this.#shut[at]) core.dead[k] = 1;
      else steps.push({ from: core.nodes[core.pumpIn[k]!]!, to: core.nodes[core.pumpOut[k]!]! });
    }
    const sources: number[] = [];
    for (let i = core.unknowns; i < core.nodes.length; i++) {
      if (core.nodes[i] !== this.#ownNodes) sources.push(core.nodes[i]!);
    }
    for (let i = 0; i < core.unknowns; i++) if (core.demand[i]! < 0) sources.push(core.nodes[i]!);
    const wet = reachable(this.#head.length, sources, steps);
    for (let i = 0; i < core.unknowns; i++) {
      const node = core.nodes[i]!;
      if (wet[node]) continue;
      this.#dry[node] = 1;
      if (core.demand[i]! > 0) {
        const name = this.nodeIds[node] ?? 'a pump';
        throw new NetworkError('no source', `Shut valves leave "${name}" with a demand of ${core.demand[i]} gpm and no water. Open a valve or take the demand away.`, [name]);
      }
    }
    for (let k = 0; k < core.pumps; k++) if (this.#dry[core.nodes[core.pumpIn[k]!]!]) core.dead[k] = 1;
  }

  /**
   * Solves for every flow and pressure.
   * @returns this network, its `flowGpm` and `pressurePsi` filled
   * @throws NetworkError `not converged` with the best residual, or `no source`
   */
  solve(options?: SolveOptions): this {
    if (this.#stale) this.#refresh();
    const core = this.#core;
    core.iterations = 0;
    const warm = options?.warm === true && this.#solved;
    this.#solved = false;
    if (!warm) coldStart(core);
    const done = newton(core, NEWTON_LIMIT, !warm, 0) && worstImbalanceGpm(core) <= MASS_TOLERANCE_GPM;
    if (!done && !(relax(core) && worstImbalanceGpm(core) <= MASS_TOLERANCE_GPM)) {
      const { massGpm, energyPsi } = this.residual;
      throw new NetworkError(
        'not converged',
        `The network did not settle: after ${core.iterations} passes the worst node is out by ${massGpm.toPrecision(2)} gpm and the worst link by ${energyPsi.toPrecision(2)} psi. Look for pumps that chase each other or a link with no loss in a ring.`,
        [],
        { massGpm, energyPsi, iterations: core.iterations },
      );
    }
    this.#read();
    this.#solved = true;
    return this;
  }

  #read(): void {
    const core = this.#core;
    const head = this.#head;
    const flow = this.#elementFlow;
    const closed = this.#elementClosed;
    for (let i = 0; i < core.nodes.length; i++) head[core.nodes[i]!] = core.head[i]!;
    for (let e = 0; e < core.passives; e++) {
      const id = core.element[e]!;
      flow[id] = core.sense[e]! * core.reals[e * REALS + FLOW]!;
      closed[id] = core.integers[e * INTEGERS + STATE] === CLOSED ? 1 : 0;
    }
    expand(this.#reduction, this.#coefficients, flow, head, closed, this.#dry);
    const pressures = this.pressurePsi;
    for (let n = 0; n < pressures.length; n++) {
      const dry = this.#dry[n]!;
      this.cutOff[n] = dry;
      pressures[n] = dry ? 0 : head[n]! - this.#elevationPsi[n]!;
    }
    const flows = this.flowGpm;
    for (let at = 0; at < flows.length; at++) {
      const e = this.#elementOf[at]!;
      flows[at] = e >= 0 ? flow[e]! : core.pumpFlow[this.#pumpOf[at]!]!;
    }
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
    return this.#elementClosed[e] && this.#reduction.elements[e]!.check !== 0 ? 'check shut' : 'open';
  }

  /** Net pressure [psi] a pump could add at its present flow; negative past its wall. */
  capabilityOf(pump: string): number {
    const core = this.#core;
    const k = this.#pump(pump);
    return capabilityPsi(core.curveFlow, core.curveNet, core.curveStart[k]!, core.curveCount[k]!, core.speed[k]!, core.pumpFlow[k]!);
  }

  /**
   * Rates of change at the last answer, states staying as they are: how every flow and pressure moves
   * per psi at a pump or a source, per gpm of demand, or per unit of speed.
   * @throws NetworkError `not converged` if nothing has been solved
   */
  derivatives(parameter: Parameter): Derivatives {
    if (!this.#solved) throw new NetworkError('not converged', 'Solve the network before asking for derivatives.', []);
    const target =
      'pump' in parameter
        ? { kind: parameter.kind, index: this.#pump(parameter.pump) }
        : { kind: parameter.kind, index: this.#coreOf[this.nodeIndex(parameter.node)]! };
    if (target.index < 0) {
      throw new NetworkError('bad value', 'Build the node with a demand or a fixed pressure (0 will do) to ask how things move with it.', []);
    }
    return derive(this.#core, this.#reduction, this.#coefficients, target, {
      elementOf: this.#elementOf,
      pumpOf: this.#pumpOf,
      nodes: this.#ownNodes,
      nodeCount: this.#head.length,
      elementFlow: this.#elementFlow,
    });
  }
}

/** Coefficients of a passive link. @param elevationFt of its `from` node, for a nozzle with none of its own */
function passiveParts(link: Exclude<LinkSpec, PumpLink>, elevationFt: number): { a: number; b: number; offset: number } {
  switch (link.kind) {
    case 'supplyCurve':
      return { a: 0, b: (link.staticPsi - link.residualPsi) / link.testGpm ** MAIN_EXPONENT, offset: 0 };
    case 'hose':
      return { a: (link.coefficient * link.lengthFt) / 1e6 / (link.lines ?? 1) ** 2, b: 0, offset: 0 };
    case 'loss':
      return { a: link.lossPsi / link.atGpm ** 2, b: 0, offset: 0 };
    case 'nozzle':
      return { a: 1 / link.k ** 2, b: 0, offset: PSI_PER_FT * (link.elevationFt ?? elevationFt) };
    case 'automaticNozzle':
      return { a: 0, b: 0, offset: PSI_PER_FT * (link.elevationFt ?? elevationFt) };
    case 'relief':
      return {
        a: link.risePsi / link.atGpm ** 2,
        b: 0,
        offset: link.settingPsi + PSI_PER_FT * (link.elevationFt ?? elevationFt),
      };
  }
}

/** @throws NetworkError when nothing feeds the network, or water cannot get to a part of it with every valve open */
function checkReach(spec: NetworkSpec, nodeAt: Map<string, number>): void {
  const sources: number[] = [];
  spec.nodes.forEach((node, at) => {
    if (node.fixedPsi !== undefined || (node.demandGpm ?? 0) < 0) sources.push(at);
  });
  if (sources.length === 0) {
    throw new NetworkError('no source', 'Nothing feeds this network: no node has a fixed pressure. Add a hydrant, a draft source or a tank.', []);
  }
  const steps: Step[] = [];
  for (const link of spec.links) {
    if (!('to' in link)) continue;
    const from = nodeAt.get(link.from)!;
    const to = nodeAt.get(link.to)!;
    steps.push({ from, to });
    if (link.kind !== 'pump' && !link.check) steps.push({ from: to, to: from });
  }
  const wet = reachable(spec.nodes.length, sources, steps);
  for (const link of spec.links) {
    if (link.kind === 'pump' && !wet[nodeAt.get(link.from)!]) {
      throw new NetworkError('pump fed by nothing', `Pump "${link.id}" is fed by nothing: no source reaches its intake "${link.from}". Join its intake to a hydrant, a draft source, a tank or another pump's discharge.`, [link.id]);
    }
  }
  const dry = spec.nodes.filter((_, at) => !wet[at]).map((node) => node.id);
  if (dry.length > 0) {
    throw new NetworkError('disconnected part', `No water can reach ${dry.slice(0, 5).map((id) => `"${id}"`).join(', ')}${dry.length > 5 ? ` and ${dry.length - 5} more` : ''}. Join the part to a source, or turn a check the other way.`, dry);
  }
}

/** @throws NetworkError where links without loss join two different fixed pressures */
function checkFixed(spec: NetworkSpec, nodeAt: Map<string, number>): void {
  const group = spec.nodes.map((_, at) => at);
  const find = (at: number): number => {
    let root = at;
    while (group[root] !== root) root = group[root]!;
    group[at] = root;
    return root;
  };
  for (const link of spec.links) {
    const lossless =
      (link.kind === 'hose' && (link.coefficient === 0 || link.lengthFt === 0)) ||
      (link.kind === 'loss' && link.lossPsi === 0);
    if (lossless && !link.shut) group[find(nodeAt.get(link.from)!)] = find(nodeAt.get(link.to)!);
  }
  const held = new Map<number, { id: string; headPsi: number }>();
  spec.nodes.forEach((node, at) => {
    if (node.fixedPsi === undefined) return;
    const headPsi = node.fixedPsi + PSI_PER_FT * (node.elevationFt ?? 0);
    const other = held.get(find(at));
    if (other && Math.abs(other.headPsi - headPsi) > 1e-9) {
      throw new NetworkError('conflicting fixed pressures', `"${other.id}" and "${node.id}" are fixed at different pressures and joined with no loss between. Give the link a loss or free one of them.`, [other.id, node.id]);
    }
    held.set(find(at), { id: node.id, headPsi });
  });
}

