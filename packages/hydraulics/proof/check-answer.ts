/**
 * Checks an answer against the description of the network alone: water balances at every node and
 * every link keeps its law. Reads only the flows and pressures that anybody can read.
 */
import type { LinkSpec, NetworkSpec, PumpLink } from '@plugside/hydraulics';
import { reachedByWater } from './reached-by-water.ts';

const PSI_PER_FT = 0.434;
const MAIN_EXPONENT = 1 / 0.54;

/** A law holds when it is met within this [psi] … */
const WITHIN_PSI = 2e-4;
/** … or a flow this much nearer would meet it [gpm]. */
const WITHIN_GPM = 0.01;
const WITHIN_SHARE = 2e-6;
/** Balance of a node [gpm]. */
const BALANCE_GPM = 1e-3;
/** Flow [gpm] that counts as none. */
const NO_FLOW_GPM = 1e-4;

/** An answer by whatever solver. */
export interface Answer {
  flowOf(link: string): number;
  pressureOf(node: string): number;
  /** By node, where the solver tells: 1 where shut valves leave it with no water. */
  cutOff?: Uint8Array;
  nodeIndex?(node: string): number;
}

/**
 * @param slack how many times the usual tolerances are allowed
 * @returns what is wrong with an answer, in words; nothing when all holds
 */
export function checkAnswer(spec: NetworkSpec, answer: Answer, slack = 1): string[] {
  const wrong: string[] = [];
  const wet = reachedByWater(spec);
  const height = new Map(spec.nodes.map((node) => [node.id, node.elevationFt ?? 0]));
  const balance = new Map(spec.nodes.map((node) => [node.id, node.demandGpm ?? 0]));
  const passing = new Map(spec.nodes.map((node) => [node.id, Math.abs(node.demandGpm ?? 0)]));
  const add = (node: string, gpm: number) => {
    balance.set(node, balance.get(node)! + gpm);
    passing.set(node, passing.get(node)! + Math.abs(gpm));
  };
  for (const link of spec.links) {
    const gpm = answer.flowOf(link.id);
    const psi = answer.pressureOf(link.from);
    if (!Number.isFinite(gpm) || !Number.isFinite(psi)) {
      wrong.push(`${link.id} (${link.kind}): flow ${gpm} gpm from ${psi} psi`);
      continue;
    }
    add(link.from, gpm);
    if ('to' in link) add(link.to, -gpm);
    const dry = !wet.has(link.from) || ('to' in link && !wet.has(link.to));
    if (link.shut || dry) {
      if (gpm !== 0) wrong.push(`${link.id} (${link.kind}): ${gpm} gpm where none can flow`);
      continue;
    }
    const reason = broken(link, gpm, psi, answer, height, slack);
    if (reason) wrong.push(`${link.id} (${link.kind}): ${reason}`);
  }
  for (const node of spec.nodes) {
    if (answer.cutOff && (answer.cutOff[answer.nodeIndex!(node.id)] === 0) !== wet.has(node.id)) {
      wrong.push(`${node.id}: cut off is told wrongly`);
    }
    if (node.fixedPsi !== undefined) {
      const psi = answer.pressureOf(node.id);
      if (Math.abs(psi - node.fixedPsi) > 1e-9 * slack)
        wrong.push(`${node.id}: ${psi}, fixed ${node.fixedPsi}`);
      continue;
    }
    const out = balance.get(node.id)!;
    if (!(Math.abs(out) <= slack * BALANCE_GPM + 1e-8 * passing.get(node.id)!)) {
      wrong.push(`${node.id}: out of balance by ${out} gpm`);
    }
  }
  return wrong;
}

function broken(
  link: LinkSpec,
  gpm: number,
  psi: number,
  answer: Answer,
  height: ReadonlyMap<string, number>,
  slack: number,
): string | undefined {
  if (link.kind === 'pump') return brokenPump(link, gpm, psi, answer.pressureOf(link.to), slack);
  const heightFt = height.get(link.from)!;
  if ('to' in link) {
    const fall = psi - answer.pressureOf(link.to) + PSI_PER_FT * (heightFt - height.get(link.to)!);
    return brokenLaw(gpm, fall, Boolean(link.check), (q) => lossPsi(link, q), psi, slack);
  }
  const above = psi + PSI_PER_FT * (heightFt - (link.elevationFt ?? heightFt));
  if (link.kind === 'relief') {
    return brokenLaw(
      gpm,
      above - link.settingPsi,
      true,
      (q) => link.risePsi * (q / link.atGpm) ** 2,
      psi,
      slack,
    );
  }
  if (link.kind === 'nozzle')
    return brokenLaw(gpm, above, true, (q) => (q / link.k) ** 2, psi, slack);
  return brokenLaw(
    gpm,
    above,
    true,
    (q) => {
      if (q < link.leastGpm) return link.ratedPsi * (q / link.leastGpm) ** 2;
      return link.ratedPsi * Math.max(1, q / link.greatestGpm) ** 2;
    },
    psi,
    slack,
  );
}

/** Loss of a passive link at a flow of 0 or more. */
function lossPsi(link: LinkSpec, gpm: number): number {
  switch (link.kind) {
    case 'hose':
      return (link.coefficient * (gpm / 100 / (link.lines ?? 1)) ** 2 * link.lengthFt) / 100;
    case 'loss':
      return link.lossPsi * (gpm / link.atGpm) ** 2;
    case 'supplyCurve':
      return (link.staticPsi - link.residualPsi) * (gpm / link.testGpm) ** MAIN_EXPONENT;
    default:
      return Number.NaN;
  }
}

/** A loss that rises with flow: the fall must be the loss at this flow, or at one next to it. */
function brokenLaw(
  gpm: number,
  fallPsi: number,
  oneWay: boolean,
  loss: (gpm: number) => number,
  psi: number,
  slack: number,
): string | undefined {
  if (oneWay && gpm < -1e-6 * slack) return `${gpm} gpm backwards`;
  const odd = (q: number) => (q < 0 ? -loss(-q) : loss(q));
  const room = slack * (WITHIN_GPM + WITHIN_SHARE * Math.abs(gpm));
  const within = slack * (WITHIN_PSI + 1e-9 * Math.abs(psi));
  const least = odd(gpm - room) - within;
  const most = odd(gpm + room) + within;
  const noLess = oneWay && gpm <= NO_FLOW_GPM * slack ? true : fallPsi >= least;
  if (noLess && fallPsi <= most) return undefined;
  return `${gpm} gpm with a fall of ${fallPsi} psi, law ${odd(gpm)} psi`;
}

function brokenPump(
  pump: PumpLink,
  gpm: number,
  intakePsi: number,
  psi: number,
  slack: number,
): string | undefined {
  if (gpm < -1e-6 * slack) return `${gpm} gpm backwards`;
  const within = slack * (WITHIN_PSI + 1e-9 * (Math.abs(intakePsi) + Math.abs(psi)));
  const room = slack * (WITHIN_GPM + WITHIN_SHARE * gpm);
  const passed = (q: number) =>
    intakePsi - (pump.passLoss ? pump.passLoss.lossPsi * (q / pump.passLoss.atGpm) ** 2 : 0);
  const given = (q: number) =>
    pump.idle
      ? passed(q)
      : Math.max(
          passed(q),
          Math.min(pump.pdpPsi ?? Number.POSITIVE_INFINITY, intakePsi + netPsi(pump, q)),
        );
  const few = Math.max(0, gpm - room);
  const most = given(few) + within;
  let least = given(gpm + room) - within;
  const floor = pump.protectIntakePsi;
  const spares = floor !== undefined && !pump.idle && intakePsi <= floor + within;
  // At its floor it gives anything from what it passes to what it can; under its floor only what it passes.
  if (spares) least = passed(gpm + room) - within;
  const top = spares && intakePsi < floor - within ? passed(few) + within : most;
  const flows = gpm > NO_FLOW_GPM * slack;
  if (psi >= least && (!flows || psi <= top)) return undefined;
  return `${gpm} gpm from ${intakePsi} to ${psi} psi, law ${least} to ${flows ? top : 'any'} psi`;
}

/** Net pressure a pump can add at a flow and its speed; -Infinity past its wall. */
function netPsi(pump: PumpLink, gpm: number): number {
  const speed = pump.speedFraction ?? 1;
  const at = gpm / speed;
  const points = pump.capability;
  const after = points.findIndex(([flow]) => flow >= at);
  if (after < 0) return Number.NEGATIVE_INFINITY;
  if (after === 0) return speed ** 2 * points[0]![1];
  const [flow1, net1] = points[after - 1]!;
  const [flow2, net2] = points[after]!;
  return speed ** 2 * (net1 + ((net2 - net1) * (at - flow1)) / (flow2 - flow1));
}
