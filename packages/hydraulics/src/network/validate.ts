/** Checks a network's description before anything is built from it. */
import { NetworkError } from './network-error.ts';
import type { LinkSpec, NetworkSpec } from './spec.ts';

/** @throws NetworkError `bad value`, `duplicate name`, `unknown node` */
export function validateSpec(spec: NetworkSpec): void {
  const nodes = new Set<string>();
  for (const node of spec.nodes) {
    if (nodes.has(node.id)) {
      throw new NetworkError(
        'duplicate name',
        `Two nodes are called "${node.id}". Give each its own name.`,
        [node.id],
      );
    }
    nodes.add(node.id);
    number(`node ${node.id}`, 'elevationFt', node.elevationFt ?? 0, -2000, 30000);
    if (node.fixedPsi !== undefined)
      number(`node ${node.id}`, 'fixedPsi', node.fixedPsi, -15, 2000);
    number(`node ${node.id}`, 'demandGpm', node.demandGpm ?? 0, -1e5, 1e5);
    if (node.fixedPsi !== undefined && node.demandGpm) {
      throw new NetworkError(
        'bad value',
        `Node "${node.id}" has both a fixed pressure and a demand of ${node.demandGpm} gpm. A fixed node gives or takes whatever flow it needs: leave one of the two out.`,
        [node.id],
      );
    }
  }
  const links = new Set<string>();
  for (const link of spec.links) {
    if (links.has(link.id)) {
      throw new NetworkError(
        'duplicate name',
        `Two links are called "${link.id}". Give each its own name.`,
        [link.id],
      );
    }
    links.add(link.id);
    for (const end of 'to' in link ? [link.from, link.to] : [link.from]) {
      if (!nodes.has(end)) {
        throw new NetworkError(
          'unknown node',
          `Link "${link.id}" ends at "${end}", which is not a node. Name one of the nodes or add it.`,
          [link.id, end],
        );
      }
    }
    if ('to' in link && link.from === link.to) {
      throw new NetworkError(
        'bad value',
        `Link "${link.id}" leaves and enters "${link.from}". Join two different nodes.`,
        [link.id],
      );
    }
    validateLink(link);
  }
}

function validateLink(link: LinkSpec): void {
  const on = `link ${link.id}`;
  if ('elevationFt' in link && link.elevationFt !== undefined) {
    number(on, 'elevationFt', link.elevationFt, -2000, 30000);
  }
  switch (link.kind) {
    case 'supplyCurve':
      number(on, 'staticPsi', link.staticPsi, 0, 1000);
      number(on, 'residualPsi', link.residualPsi, -15, 1000);
      number(on, 'testGpm', link.testGpm, 1e-3, 1e6);
      if (link.residualPsi >= link.staticPsi) {
        throw new NetworkError(
          'bad value',
          `${on}: residualPsi is ${link.residualPsi}, not below staticPsi ${link.staticPsi}. A flow test must lower the pressure: check the two readings.`,
          [link.id],
        );
      }
      return;
    case 'hose':
      number(on, 'coefficient', link.coefficient, 0, 1e5);
      number(on, 'lengthFt', link.lengthFt, 0, 1e6);
      number(on, 'lines', link.lines ?? 1, 1, 100);
      return;
    case 'loss':
      number(on, 'lossPsi', link.lossPsi, 0, 1e5);
      number(on, 'atGpm', link.atGpm, 1e-3, 1e6);
      return;
    case 'nozzle':
      number(on, 'k', link.k, 1e-6, 1e5);
      return;
    case 'automaticNozzle':
      number(on, 'ratedPsi', link.ratedPsi, 1e-3, 1000);
      number(on, 'leastGpm', link.leastGpm, 1e-3, 1e5);
      number(on, 'greatestGpm', link.greatestGpm, link.leastGpm * (1 + 1e-9), 1e5);
      return;
    case 'relief':
      number(on, 'settingPsi', link.settingPsi, 0, 2000);
      number(on, 'risePsi', link.risePsi, 0, 1000);
      number(on, 'atGpm', link.atGpm, 1e-3, 1e6);
      return;
    case 'pump':
      if (link.pdpPsi !== undefined) number(on, 'pdpPsi', link.pdpPsi, 0, 1000);
      number(on, 'speedFraction', link.speedFraction ?? 1, 0.05, 1.5);
      if (link.protectIntakePsi !== undefined)
        number(on, 'protectIntakePsi', link.protectIntakePsi, -15, 500);
      if (link.passLoss) {
        number(on, 'passLoss.lossPsi', link.passLoss.lossPsi, 0, 1000);
        number(on, 'passLoss.atGpm', link.passLoss.atGpm, 1e-3, 1e6);
      }
      validateCapability(on, link.id, link.capability);
  }
}

function validateCapability(
  on: string,
  id: string,
  points: readonly (readonly [number, number])[],
): void {
  if (points.length < 2 || points[0]![0] !== 0) {
    throw new NetworkError(
      'bad value',
      `${on}: capability needs two points or more, the first at flow 0.`,
      [id],
    );
  }
  points.forEach(([flow, net], at) => {
    number(on, `capability[${at}] flow`, flow, 0, 1e6);
    number(on, `capability[${at}] net pressure`, net, 0, 2000);
    const before = points[at - 1];
    if (before && (flow <= before[0] || net > before[1])) {
      throw new NetworkError(
        'bad value',
        `${on}: capability[${at}] is ${net} psi at ${flow} gpm after ${before[1]} psi at ${before[0]} gpm. Flow must rise and net pressure must not.`,
        [id],
      );
    }
  });
}

function number(on: string, field: string, value: number, least: number, greatest: number): void {
  if (Number.isFinite(value) && value >= least && value <= greatest) return;
  throw new NetworkError(
    'bad value',
    `${on}: ${field} is ${value}. Give a number from ${least} to ${greatest}.`,
    [on.slice(on.indexOf(' ') + 1)],
  );
}
