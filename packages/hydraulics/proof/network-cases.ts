/**
 * Reads network cases worked by an independent solver and compares this solver's answers with
 * theirs. A case is `{ id, title, network: { nodes, links }, expected: { flowGpm, pressurePsi } }`.
 */
import { buildNetwork, type NetworkSpec, type NodeSpec } from '@plugside/hydraulics';
import { readCaseLink, type WrittenLink } from './case-links.ts';

/** A node as a case writes it. */
export interface WrittenNode {
  id: string;
  elevationFt?: number;
  fixedPsi?: number;
  demandGpm?: number;
}

export interface NetworkCase {
  id: string;
  title: string;
  network: { nodes: readonly WrittenNode[]; links: readonly WrittenLink[] };
  expected: { flowGpm: Record<string, number>; pressurePsi: Record<string, number> };
}

/** How near an answer must come. */
export const FLOW_WITHIN_GPM = 0.5;
export const PRESSURE_WITHIN_PSI = 0.05;

/** One value of one case. */
export interface Compared {
  /** `flow of lay [gpm]`. */
  what: string;
  expected: number;
  found: number;
  within: number;
  agrees: boolean;
}

/** @throws Error naming the case's link when a kind or a field is not known */
export function readNetworkCase({ network }: Pick<NetworkCase, 'network'>): NetworkSpec {
  const nodes: NodeSpec[] = network.nodes.map(({ id, elevationFt, fixedPsi, demandGpm }) => ({
    id,
    elevationFt,
    fixedPsi,
    demandGpm,
  }));
  const heights = new Map(nodes.map((node) => [node.id, node.elevationFt ?? 0]));
  return { nodes, links: network.links.map((link) => readCaseLink(link, heights)) };
}

/** Solves a case and sets every expected value beside the one found. */
export function compareNetworkCase(one: NetworkCase): Compared[] {
  const solved = buildNetwork(readNetworkCase(one)).solve();
  const compared = (what: string, expected: number, found: number, within: number): Compared => ({
    what,
    expected,
    found,
    within,
    agrees: Math.abs(found - expected) <= within,
  });
  return [
    ...Object.entries(one.expected.flowGpm ?? {}).map(([link, gpm]) =>
      compared(`flow of ${link} [gpm]`, gpm, solved.flowOf(link), FLOW_WITHIN_GPM),
    ),
    ...Object.entries(one.expected.pressurePsi ?? {}).map(([node, psi]) =>
      compared(`pressure at ${node} [psi]`, psi, solved.pressureOf(node), PRESSURE_WITHIN_PSI),
    ),
  ];
}
