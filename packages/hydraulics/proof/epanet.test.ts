import { buildNetwork, type LinkSpec, type NetworkSpec } from '@plugside/hydraulics';
import { describe, expect, it } from 'vitest';
import { checkAnswer } from './check-answer.ts';
import { EpanetNetwork, loadEpanet } from './epanet-network.ts';
import { randomNetwork } from './random-networks.ts';

/** A random network with what the other solver has no element for made into what it has. */
function comparable(seed: number): NetworkSpec {
  const { nodes, links } = randomNetwork(seed);
  return {
    nodes,
    links: links.flatMap((link): LinkSpec[] => {
      if (link.kind === 'relief') return [];
      if (link.kind === 'automaticNozzle') {
        const k = link.greatestGpm / Math.sqrt(link.ratedPsi);
        return [{ kind: 'nozzle', id: link.id, from: link.from, k, elevationFt: link.elevationFt }];
      }
      if (link.kind !== 'pump') return [{ ...link, shut: false }];
      return [
        {
          ...link,
          shut: false,
          idle: false,
          protectIntakePsi: undefined,
          // A curve there must fall all the way.
          capability: link.capability.map(([flow, net], at) => [flow, net - 1e-3 * at] as const),
          pdpPsi: link.idle ? 150 : link.pdpPsi,
        },
      ];
    }),
  };
}

/** Their answer must keep the laws to 0.02 psi or 1 gpm, or it is not one. */
const SLACK = 100;

/** Everything in which two answers differ by more than 0.1 %, or by half a gpm or 0.15 psi near nothing. */
function differences(spec: NetworkSpec, theirs: EpanetNetwork): string[] {
  const ours = buildNetwork(spec).solve();
  const wrong: string[] = [];
  const judge = (what: string, our: number, their: number, near: number) => {
    if (Math.abs(our - their) <= near + 1e-3 * Math.abs(their)) return;
    wrong.push(`${what}: ${our}, theirs ${their}`);
  };
  const flowing = new Set<string>();
  for (const link of spec.links) {
    const gpm = ours.flowOf(link.id);
    judge(`flow of ${link.id}`, gpm, theirs.flowOf(link.id), 0.5);
    if (Math.abs(gpm) < 1) continue;
    flowing.add(link.from);
    if ('to' in link) flowing.add(link.to);
  }
  for (const { id } of spec.nodes) {
    // Where checks shut water in, any of many pressures would do.
    if (!flowing.has(id)) continue;
    judge(`pressure at ${id}`, ours.pressureOf(id), theirs.pressureOf(id), 0.15);
  }
  return wrong;
}

describe('the EPANET toolkit, an independent solver', () => {
  it('gives the same flows and pressures wherever it settles without a warning', async () => {
    const workspace = await loadEpanet();
    let compared = 0;
    const wrong: string[] = [];
    for (let seed = 1; seed <= 1500; seed++) {
      const spec = comparable(seed);
      if (spec.links.some((link) => link.kind === 'pump' && link.capability.at(-1)![1] < 0))
        continue;
      const theirs = new EpanetNetwork(workspace, spec);
      try {
        if (theirs.solve() !== 0) continue;
        // It can settle with a governor or a check in the wrong state, and then breaks the element's law.
        if (checkAnswer(spec, theirs, SLACK).length > 0) continue;
        const found = differences(spec, theirs);
        if (found.length > 0) wrong.push(`${seed}: ${found[0]} (${found.length})`);
        compared += 1;
      } catch {
        // Their solver gave up.
      } finally {
        theirs.close();
      }
    }
    expect(wrong).toEqual([]);
    expect(compared).toBeGreaterThan(700);
  }, 120_000);
});
