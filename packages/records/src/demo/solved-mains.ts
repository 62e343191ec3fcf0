/** The town's mains as a network that is solved: what gauges on its hydrants would read. */
import {
  buildNetwork,
  hazenWilliamsPsi,
  type LinkSpec,
  type NodeSpec,
  PSI_PER_FT,
} from '@plugside/hydraulics';
import { groundFt } from './ground.ts';
import type { DemoHydrant } from './hydrant-places.ts';
import { type Hanging, hangingOf, layoutOf } from './main-layout.ts';
import type { Main, Stretch, TownMap } from './town-map.ts';

/** State of the system on one year's test days. */
export interface MainsYear {
  /** Water that the town uses, against the usual. */
  demandShare: number;
  /** C of every main, against when it was laid. */
  roughnessShare: number;
  /** A main left shut. */
  shut?: Stretch;
}

/** Where water comes in: at a node, from water that stands so high above the district's zero [ft]. */
export interface WaterSource {
  node: number;
  headFt: number;
  /** From tank or works to the first main. */
  feed: Main;
  feedFt: number;
}

export interface Draw {
  hydrant: DemoHydrant;
  flowGpm: number;
}

export interface SolvedMains {
  /** Draws water from these hydrants alone. */
  draw(flows: readonly Draw[]): void;
  /** Pressure in the main at a hydrant's outlet [psi], while `draw` draws. */
  pressurePsi(hydrant: DemoHydrant): number;
}

/** Water that the whole town uses on a test day [gpm]. */
const TOWN_DEMAND_GPM = 780;
/** Any flow will do: it is the power of flow that counts. */
const REFERENCE_GPM = 500;

/**
 * Solves the mains with Hazen–Williams losses. Loops are solved as a network; a dead end adds its
 * own loss to what is drawn through it.
 */
export function solvedMains(
  town: TownMap,
  sources: readonly WaterSource[],
  year: MainsYear,
): SolvedMains {
  const mains = town.stretches.filter((stretch) => stretch.main && stretch !== year.shut);
  const layout = layoutOf(mains);
  const usual = demands(mains, layout.junctions, year.demandShare);
  const lossPsi = ({ diameterIn, roughness }: Main, flowGpm: number, lengthFt: number) =>
    hazenWilliamsPsi(roughness * year.roughnessShare, flowGpm, diameterIn, lengthFt);
  const pipe = (id: string, from: string, to: string, main: Main, lengthFt: number): LinkSpec => ({
    kind: 'supplyCurve',
    id,
    from,
    to,
    staticPsi: lossPsi(main, REFERENCE_GPM, lengthFt),
    residualPsi: 0,
    testGpm: REFERENCE_GPM,
  });
  const heightFt = (junction: number) => groundFt(town.nodes[junction]!);
  const nodes: NodeSpec[] = [...layout.junctions].map((junction) => ({
    id: `${junction}`,
    elevationFt: heightFt(junction),
    demandGpm: usual.get(junction) ?? 0,
  }));
  const links = layout.looped.map(({ from, to, main, lengthFt }, i) =>
    pipe(`main ${i}`, `${from}`, `${to}`, main!, lengthFt),
  );
  sources.forEach(({ node, headFt, feed, feedFt }, i) => {
    nodes.push({ id: `source ${i}`, fixedPsi: headFt * PSI_PER_FT });
    links.push(pipe(`feed ${i}`, `source ${i}`, `${node}`, feed, feedFt));
  });
  const network = buildNetwork({ nodes, links }).solve();

  const hung = new Map<DemoHydrant, Hanging>();
  const hangingAt = (hydrant: DemoHydrant): Hanging => {
    const known = hung.get(hydrant) ?? hangingOf(layout, hydrant);
    hung.set(hydrant, known);
    return known;
  };
  let drawn: readonly Draw[] = [];
  return {
    draw(flows) {
      for (const { hydrant } of drawn) {
        const { junction } = hangingAt(hydrant);
        network.setDemandGpm(`${junction}`, usual.get(junction) ?? 0);
      }
      const added = new Map<number, number>();
      for (const { hydrant, flowGpm } of flows) {
        const { junction } = hangingAt(hydrant);
        added.set(junction, (added.get(junction) ?? 0) + flowGpm);
      }
      for (const [junction, flowGpm] of added) {
        network.setDemandGpm(`${junction}`, (usual.get(junction) ?? 0) + flowGpm);
      }
      drawn = flows;
      network.solve({ warm: true });
    },
    pressurePsi(hydrant) {
      const { junction, tail } = hangingAt(hydrant);
      const risePsi = (hydrant.elevationFt - heightFt(junction)) * PSI_PER_FT;
      let psi = network.pressureOf(`${junction}`) - risePsi;
      for (const part of tail) {
        const through = drawn.flatMap(({ hydrant: other, flowGpm }) =>
          hangingAt(other)
            .tail.filter((own) => own.stretch === part.stretch && own.forward === part.forward)
            .map(({ lengthFt }) => ({ flowGpm, sharedFt: Math.min(lengthFt, part.lengthFt) })),
        );
        // Two hydrants that flow through one dead end slow each other; near enough their sum.
        const flowGpm = through.reduce((sum, one) => sum + one.flowGpm, 0);
        const sharedFt = Math.max(0, ...through.map((one) => one.sharedFt));
        psi -= lossPsi(part.stretch.main!, flowGpm, sharedFt);
      }
      return psi;
    },
  };
}

/** The town's use by length of main, dead ends' at the loop's nodes taken together. */
function demands(
  mains: readonly Stretch[],
  junctions: ReadonlySet<number>,
  share: number,
): Map<number, number> {
  const weight = new Map<number, number>();
  let total = 0;
  for (const { from, to, lengthFt } of mains) {
    for (const node of [from, to]) {
      if (!junctions.has(node)) continue;
      weight.set(node, (weight.get(node) ?? 0) + lengthFt);
      total += lengthFt;
    }
  }
  const gpmPerFt = (TOWN_DEMAND_GPM * share) / total;
  return new Map([...weight].map(([node, feet]) => [node, feet * gpmPerFt]));
}
