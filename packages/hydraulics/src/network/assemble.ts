/** From a description to the elements, pumps and bands that the solver works with. */
import { MAIN_EXPONENT, PSI_PER_FT } from './constants.ts';
import type { AutomaticBand, CorePump } from './core.ts';
import type { Element } from './reduction.ts';
import type { LinkSpec, NetworkSpec, PumpLink } from './spec.ts';

export interface Assembly {
  /** Nodes of the description, then the open air. */
  nodeCount: number;
  elevationFt: Float64Array;
  fixed: Uint8Array;
  /** Nodes that must not be collapsed: fixed, with a demand, or at a pump. */
  keep: Uint8Array;
  elements: Element[];
  a: number[];
  b: number[];
  offset: number[];
  bands: AutomaticBand[];
  pumps: CorePump[];
  /** By link: its element or its pump, the other -1. */
  elementOf: Int32Array;
  pumpOf: Int32Array;
}

/** @param nodeAt index of each node by name; the description has been validated */
export function assemble(spec: NetworkSpec, nodeAt: ReadonlyMap<string, number>): Assembly {
  const air = spec.nodes.length;
  const nodeCount = air + 1;
  const elevationFt = new Float64Array(nodeCount);
  const fixed = new Uint8Array(nodeCount);
  const keep = new Uint8Array(nodeCount);
  spec.nodes.forEach((node, at) => {
    elevationFt[at] = node.elevationFt ?? 0;
    if (node.fixedPsi !== undefined) fixed[at] = 1;
    if (node.fixedPsi !== undefined || node.demandGpm !== undefined) keep[at] = 1;
  });
  fixed[air] = 1;
  keep[air] = 1;
  const made: Assembly = {
    nodeCount,
    elevationFt,
    fixed,
    keep,
    elements: [],
    a: [],
    b: [],
    offset: [],
    bands: [],
    pumps: [],
    elementOf: new Int32Array(spec.links.length).fill(-1),
    pumpOf: new Int32Array(spec.links.length).fill(-1),
  };
  spec.links.forEach((link, at) => {
    const from = nodeAt.get(link.from)!;
    if (link.kind === 'pump') {
      const to = nodeAt.get(link.to)!;
      keep[from] = 1;
      keep[to] = 1;
      made.pumpOf[at] = made.pumps.length;
      made.pumps.push({ from, to, points: link.capability });
      return;
    }
    made.elementOf[at] = made.elements.length;
    const parts = passiveParts(link, elevationFt[from]!);
    if (link.kind === 'automaticNozzle') made.bands.push(link);
    made.elements.push({
      from,
      to: 'to' in link ? nodeAt.get(link.to)! : air,
      check: 'to' in link ? (link.check ? 1 : 0) : 1,
      automatic: link.kind === 'automaticNozzle' ? made.bands.length - 1 : -1,
      plain: link.kind === 'hose' || link.kind === 'loss',
    });
    made.a.push(parts.a);
    made.b.push(parts.b);
    made.offset.push(parts.offset);
  });
  return made;
}

/** Coefficients of a passive link. @param elevationFt of its `from` node, for an opening with none of its own */
function passiveParts(
  link: Exclude<LinkSpec, PumpLink>,
  elevationFt: number,
): { a: number; b: number; offset: number } {
  switch (link.kind) {
    case 'supplyCurve': {
      const fall = link.staticPsi - link.residualPsi;
      return { a: 0, b: fall / link.testGpm ** MAIN_EXPONENT, offset: 0 };
    }
    case 'hose': {
      const a = (link.coefficient * link.lengthFt) / 1e6 / (link.lines ?? 1) ** 2;
      return { a, b: 0, offset: 0 };
    }
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
