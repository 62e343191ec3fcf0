/**
 * The same network in the EPANET toolkit, a general-purpose solver for pipe networks.
 *
 * Its constants are not ours (0.4333 psi per foot against 0.434, exponent 1.852 against 1/0.54), so
 * heights are scaled to weigh the same and losses are given as minor losses; a main keeps its own
 * exponent there, which differs by less than 0.02 % of its loss over a tenfold range of flow.
 */
import type { LinkSpec, NetworkSpec, PumpLink } from '@plugside/hydraulics';
import { Project, Workspace } from 'epanet-js';
import {
  FlowUnits,
  HeadLossType,
  InitHydOption,
  LinkProperty,
  LinkType,
  NodeProperty,
  NodeType,
  Option,
} from './epanet-codes.ts';

const PSI_PER_FT = 0.434;
const THEIR_PSI_PER_FT = 0.4333;
const GPM_PER_CFS = 448.831;
/** Minor loss [ft] of K at 1 cfs through 1 ft: 0.02517·K. */
const MINOR_LOSS = 0.02517;
/** Hazen-Williams as they have it: 4.727·L·Q^1.852 / (C^1.852·d^4.871) [ft, cfs]. */
const PIPE_LOSS = 4.727;
const PIPE_EXPONENT = 1.852;

/** Loads their engine. */
export async function loadEpanet(): Promise<Workspace> {
  const workspace = new Workspace();
  await workspace.loadModule();
  return workspace;
}

export class EpanetNetwork {
  readonly #project: Project;
  readonly #spec: NetworkSpec;
  readonly #lean: boolean;
  readonly #linkIndex = new Map<string, number[]>();
  readonly #emitters = new Map<string, string>();
  #curves = 0;

  /**
   * @param lean only what is needed where every pump gives more than it passes and every node has at most one
   *   nozzle, at its own height: no check round the pumps, no pipe of its own for a nozzle or a governor
   * @throws RangeError for what it has no element for: reliefs, automatic nozzles, protected or idle pumps, shut links
   */
  constructor(workspace: Workspace, spec: NetworkSpec, lean = false) {
    this.#spec = spec;
    this.#lean = lean;
    this.#project = new Project(workspace);
    const project = this.#project;
    project.init('report', 'out', FlowUnits.GPM, HeadLossType.HW);
    for (const node of spec.nodes) {
      const height = theirHeightFt(node.elevationFt ?? 0);
      if (node.fixedPsi === undefined) this.#junction(node.id, height, node.demandGpm ?? 0);
      else {
        const at = project.addNode(node.id, NodeType.Reservoir);
        project.setNodeValue(at, NodeProperty.Elevation, height + node.fixedPsi / THEIR_PSI_PER_FT);
      }
    }
    for (const link of spec.links) this.#add(link);
    project.setOption(Option.Accuracy, 1e-8);
    project.setOption(Option.Trials, 300);
    project.setOption(Option.Emitexpon, 0.5);
    project.openH();
  }

  /** @returns their warning code; 0 when all is well */
  solve(): number {
    this.#project.initH(InitHydOption.InitFlow);
    return this.#project.runH();
  }

  /** Starts from the flows of the last answer. @returns their warning code */
  solveAgain(): number {
    this.#project.initH(InitHydOption.NoSave);
    return this.#project.runH();
  }

  /** Every flow and head as their arrays, as a caller must read them to use an answer. */
  readAll(): { flows: number[]; heads: number[] } {
    return {
      flows: this.#project.getLinkValues(LinkProperty.Flow),
      heads: this.#project.getNodeValues(NodeProperty.Head),
    };
  }

  flowOf(link: string): number {
    const emitter = this.#emitters.get(link);
    if (emitter !== undefined) {
      const at = this.#project.getNodeIndex(emitter);
      return this.#project.getNodeValue(at, NodeProperty.Demand);
    }
    const parts = this.#linkIndex.get(link)!;
    return parts.reduce((sum, at) => sum + this.#project.getLinkValue(at, LinkProperty.Flow), 0);
  }

  pressureOf(node: string): number {
    const project = this.#project;
    const spec = this.#spec.nodes.find(({ id }) => id === node)!;
    const headFt = project.getNodeValue(project.getNodeIndex(node), NodeProperty.Head);
    return THEIR_PSI_PER_FT * (headFt - theirHeightFt(spec.elevationFt ?? 0));
  }

  /** Governs a pump at another pressure. */
  setPdpPsi(pump: string, psi: number): void {
    const valve = this.#project.getLinkIndex(`${pump}-governor`);
    this.#project.setLinkValue(valve, LinkProperty.InitSetting, psi);
  }

  close(): void {
    this.#project.closeH();
    this.#project.close();
  }

  #junction(id: string, heightFt: number, demandGpm = 0): void {
    const at = this.#project.addNode(id, NodeType.Junction);
    this.#project.setJunctionData(at, heightFt, demandGpm, '');
  }

  /** A pipe one foot wide that loses `a·Q²` [psi/gpm²], and next to nothing of its own. */
  #lossPipe(id: string, from: string, to: string, a: number, check: boolean): number {
    const at = this.#project.addLink(id, check ? LinkType.CVPipe : LinkType.Pipe, from, to);
    const k = ((a / THEIR_PSI_PER_FT) * GPM_PER_CFS ** 2) / MINOR_LOSS;
    this.#project.setPipeData(at, 1e-3, 12, 1e4, k);
    return at;
  }

  #add(link: LinkSpec): void {
    if (link.shut) throw new RangeError(`Link ${link.id} is shut; leave it out.`);
    const project = this.#project;
    switch (link.kind) {
      case 'hose':
      case 'loss': {
        const a =
          link.kind === 'loss'
            ? link.lossPsi / link.atGpm ** 2
            : (link.coefficient * link.lengthFt) / 1e6 / (link.lines ?? 1) ** 2;
        const at = this.#lossPipe(link.id, link.from, link.to, a, Boolean(link.check));
        this.#linkIndex.set(link.id, [at]);
        return;
      }
      case 'supplyCurve': {
        const type = link.check ? LinkType.CVPipe : LinkType.Pipe;
        const at = project.addLink(link.id, type, link.from, link.to);
        const fallFt = (link.staticPsi - link.residualPsi) / THEIR_PSI_PER_FT;
        const roughness = 100;
        const lengthFt =
          (fallFt * roughness ** PIPE_EXPONENT) /
          PIPE_LOSS /
          (link.testGpm / GPM_PER_CFS) ** PIPE_EXPONENT;
        project.setPipeData(at, lengthFt, 12, roughness, 0);
        this.#linkIndex.set(link.id, [at]);
        return;
      }
      case 'nozzle': {
        if (this.#lean) {
          project.setNodeValue(project.getNodeIndex(link.from), NodeProperty.Emitter, link.k);
          this.#emitters.set(link.id, link.from);
          return;
        }
        const tip = `${link.id}-tip`;
        const node = this.#spec.nodes.find(({ id }) => id === link.from)!;
        this.#junction(tip, theirHeightFt(link.elevationFt ?? node.elevationFt ?? 0));
        project.setNodeValue(project.getNodeIndex(tip), NodeProperty.Emitter, link.k);
        this.#linkIndex.set(link.id, [this.#lossPipe(link.id, link.from, tip, 0, true)]);
        return;
      }
      case 'pump':
        this.#addPump(link);
        return;
      default:
        throw new RangeError(
          `There is no element for ${link.id}, a link of the kind ${link.kind}.`,
        );
    }
  }

  /** The pump, its governor as a pressure reducing valve, and a check round both for water it only passes. */
  #addPump(pump: PumpLink): void {
    if (pump.idle || pump.protectIntakePsi !== undefined) {
      throw new RangeError(
        `There is no element for ${pump.id}: it is idle or protects its intake.`,
      );
    }
    const project = this.#project;
    const node = this.#spec.nodes.find(({ id }) => id === pump.from)!;
    const height = theirHeightFt(node.elevationFt ?? 0);
    const governed = pump.pdpPsi !== undefined;
    const outlet = governed ? `${pump.id}-a` : pump.to;
    if (governed) {
      this.#junction(`${pump.id}-a`, height);
      if (!this.#lean) this.#junction(`${pump.id}-b`, height);
    }
    const at = project.addLink(pump.id, LinkType.Pump, pump.from, outlet);
    const curve = `curve${++this.#curves}`;
    project.addCurve(curve);
    const points = finePoints(pump.capability);
    project.setCurve(
      this.#curves,
      points.map(([flow]) => flow),
      points.map(([, net]) => net / THEIR_PSI_PER_FT),
    );
    project.setHeadCurveIndex(at, this.#curves);
    project.setLinkValue(at, LinkProperty.InitSetting, pump.speedFraction ?? 1);
    if (governed) {
      const valve = `${pump.id}-governor`;
      const governor = project.addLink(
        valve,
        LinkType.PRV,
        `${pump.id}-a`,
        this.#lean ? pump.to : `${pump.id}-b`,
      );
      project.setLinkValue(governor, LinkProperty.Diameter, 12);
      project.setLinkValue(governor, LinkProperty.InitSetting, pump.pdpPsi!);
      if (!this.#lean) this.#lossPipe(`${pump.id}-out`, `${pump.id}-b`, pump.to, 0, false);
    }
    if (this.#lean) {
      this.#linkIndex.set(pump.id, [at]);
      return;
    }
    const passA = pump.passLoss ? pump.passLoss.lossPsi / pump.passLoss.atGpm ** 2 : 0;
    const round = this.#lossPipe(`${pump.id}-round`, pump.from, pump.to, passA, true);
    this.#linkIndex.set(pump.id, [at, round]);
  }
}

function theirHeightFt(heightFt: number): number {
  return (heightFt * PSI_PER_FT) / THEIR_PSI_PER_FT;
}

/** Three points would be taken for a power curve: every stretch is cut in two. A steep end stands for the wall. */
function finePoints(points: PumpLink['capability']): [number, number][] {
  const fine: [number, number][] = [];
  points.forEach(([flow, net], at) => {
    const before = points[at - 1];
    if (before) fine.push([(before[0] + flow) / 2, (before[1] + net) / 2]);
    fine.push([flow, net]);
  });
  const [lastFlow, lastNet] = points.at(-1)!;
  fine.push([lastFlow + 0.02, lastNet - 2000]);
  return fine;
}
