/** Water mains as pipes in the EPANET toolkit, a general-purpose solver: what gauges on their hydrants read. */
import { Project, Workspace } from 'epanet-js';

const PSI_PER_FT = 0.434;
const GPM_PER_CFS = 448.831;
/** Head lost by a minor loss of K at 1 cfs through 1 ft [ft], as they have it. */
const MINOR_LOSS = 0.02517;
/** The toolkit's number for a node's head, and for a link's flow. */
const HEAD = 10;
const FLOW = 8;

export interface Pipe {
  from: string;
  to: string;
  lengthFt: number;
  diameterIn: number;
  /** Hazen-Williams C. */
  roughness: number;
}

/** Mains from tanks to hydrants. Heights are 0 where left out. */
export interface Mains {
  /** Head of each tank or held outlet [ft]. */
  tanks: Readonly<Record<string, number>>;
  pipes: readonly Pipe[];
  heightFt?: Readonly<Record<string, number>>;
}

/** A passage that loses so much by the square of flow. */
export interface Passage {
  id: string;
  from: string;
  to: string;
  lossPsi: number;
  atGpm: number;
}

export interface SolvedMains {
  pressurePsi(node: string): number;
  flowGpm(passage: string): number;
}

export async function loadEpanet(): Promise<Workspace> {
  const workspace = new Workspace();
  await workspace.loadModule();
  return workspace;
}

/** Solves mains with so much drawn at their nodes [gpm] and passages hung on them. */
export function solveMains(
  workspace: Workspace,
  mains: Mains,
  drawnGpm: Readonly<Record<string, number>> = {},
  passages: readonly Passage[] = [],
): SolvedMains {
  const { tanks, pipes, heightFt = {} } = mains;
  const ends = [...pipes, ...passages].flatMap(({ from, to }) => [from, to]);
  const nodes = [...new Set(ends)].filter((node) => tanks[node] === undefined);
  const lines = [
    '[JUNCTIONS]',
    ...nodes.map((node) => `${node} ${heightFt[node] ?? 0} ${drawnGpm[node] ?? 0}`),
    '[RESERVOIRS]',
    ...Object.entries(tanks).map(([tank, headFt]) => `${tank} ${headFt}`),
    '[PIPES]',
    ...pipes.map(
      ({ from, to, lengthFt, diameterIn, roughness }, at) =>
        `P${at} ${from} ${to} ${lengthFt} ${diameterIn} ${roughness} 0 Open`,
    ),
    // One foot wide, and next to no friction of its own.
    ...passages.map(({ id, from, to, lossPsi, atGpm }) => {
      const k = lossPsi / PSI_PER_FT / (atGpm / GPM_PER_CFS) ** 2 / MINOR_LOSS;
      return `${id} ${from} ${to} 0.001 12 10000 ${k} Open`;
    }),
    '[OPTIONS]',
    'Units GPM',
    'Headloss H-W',
    'Accuracy 0.00000001',
    'Trials 400',
    '[END]',
  ];
  const project = new Project(workspace);
  workspace.writeFile('mains.inp', `${lines.join('\n')}\n`);
  project.open('mains.inp', 'mains.rpt', 'mains.out');
  project.solveH();
  const psi = new Map(
    nodes.map((node) => {
      const head = project.getNodeValue(project.getNodeIndex(node), HEAD);
      return [node, (head - (heightFt[node] ?? 0)) * PSI_PER_FT];
    }),
  );
  const gpm = new Map(
    passages.map(({ id }) => [id, project.getLinkValue(project.getLinkIndex(id), FLOW)]),
  );
  project.close();
  return { pressurePsi: (node) => psi.get(node)!, flowGpm: (id) => gpm.get(id)! };
}
