import { Project, Workspace } from 'epanet-js';
import { beforeAll, describe, expect, it } from 'vitest';
import { groundFt, type Point } from './ground.ts';
import type { DemoHydrant } from './hydrant-places.ts';
import { solvedMains } from './solved-mains.ts';
import type { Stretch } from './town-map.ts';
import { planTown, waterSources } from './town-plan.ts';

const PSI_PER_FT = 0.434;
const town = planTown();
const sources = waterSources(town);
const workspace = new Workspace();
beforeAll(() => workspace.loadModule());

/** A hydrant right at a node of the plan. */
function hydrantAt(place: Point): DemoHydrant {
  const node = town.node(place);
  const stretch = town.stretches.find(
    ({ main, from, to }) => main && (from === node || to === node),
  )!;
  const alongFt = stretch.from === node ? 0 : stretch.lengthFt;
  const elevationFt = groundFt(town.nodes[node]!);
  const { main, zone } = stretch;
  return {
    name: `${place}`,
    at: town.nodes[node]!,
    elevationFt,
    stretch,
    alongFt,
    main: main!,
    zone,
  };
}

/** Pressures [psi] of every node with a main, by the EPANET toolkit: loops, dead ends and all in one network. */
function byEpanet(drawn: ReadonlyMap<number, number>, shut?: Stretch): (node: number) => number {
  const mains = town.stretches.filter((stretch) => stretch.main && stretch !== shut);
  const nodes = [...new Set(mains.flatMap(({ from, to }) => [from, to]))];
  const lines = [
    '[JUNCTIONS]',
    ...nodes.map((node) => `J${node} ${groundFt(town.nodes[node]!)} ${drawn.get(node) ?? 0}`),
    '[RESERVOIRS]',
    ...sources.map(({ headFt }, i) => `R${i} ${headFt}`),
    '[PIPES]',
    ...mains.map(
      ({ from, to, main, lengthFt }, i) =>
        `P${i} J${from} J${to} ${lengthFt} ${main!.diameterIn} ${main!.roughness} 0 Open`,
    ),
    ...sources.map(
      ({ node, feed, feedFt }, i) =>
        `F${i} R${i} J${node} ${feedFt} ${feed.diameterIn} ${feed.roughness} 0 Open`,
    ),
    '[OPTIONS]',
    'Units GPM',
    'Headloss H-W',
    'Accuracy 0.00001',
    'Trials 200',
    '[END]',
  ];
  const project = new Project(workspace);
  workspace.writeFile('town.inp', `${lines.join('\n')}\n`);
  project.open('town.inp', 'town.rpt', 'town.out');
  project.solveH();
  const heads = new Map(
    // 10 is a node's head.
    nodes.map((node) => [node, project.getNodeValue(project.getNodeIndex(`J${node}`), 10)]),
  );
  project.close();
  return (node) => (heads.get(node)! - groundFt(town.nodes[node]!)) * PSI_PER_FT;
}

describe('the mains against the EPANET toolkit', () => {
  const corner = hydrantAt([-840, -640]);
  const end = hydrantAt([-4950, 560]);
  const hilltop = hydrantAt([-420, 4150]);
  const country = hydrantAt([2100, -3500]);
  const works = hydrantAt([4900, 960]);
  const watched = [corner, end, hilltop, country, works, hydrantAt([0, 0]), hydrantAt([0, 2900])];
  const nodeOf = ({ stretch, alongFt }: DemoHydrant) => (alongFt === 0 ? stretch.from : stretch.to);

  it.each<[string, [DemoHydrant, number][]]>([
    ['nothing', []],
    ['a corner of the old town', [[corner, 800]]],
    ['the end of a close', [[end, 450]]],
    ['a hilltop court', [[hilltop, 300]]],
    ['the far end of the country main', [[country, 200]]],
    [
      'two at once',
      [
        [works, 2000],
        [corner, 600],
      ],
    ],
  ])('agree within half a psi while %s is drawn', (_, draws) => {
    const mains = solvedMains(town, sources, { demandShare: 0, roughnessShare: 1 });
    mains.draw(draws.map(([hydrant, flowGpm]) => ({ hydrant, flowGpm })));
    const theirs = byEpanet(new Map(draws.map(([hydrant, flowGpm]) => [nodeOf(hydrant), flowGpm])));
    for (const hydrant of watched) {
      // Their form of the law is a percent off ours; half a psi in the drops drawn here.
      expect(
        Math.abs(mains.pressurePsi(hydrant) - theirs(nodeOf(hydrant))),
        hydrant.name,
      ).toBeLessThan(0.5);
    }
  });

  it('agree with a main shut, and once nothing is drawn any more', () => {
    const ends = [town.node([-2800, 0]), town.node([-2100, 0])];
    const shut = town.stretches.find(({ from, to }) => ends.includes(from) && ends.includes(to))!;
    const mains = solvedMains(town, sources, { demandShare: 0, roughnessShare: 1, shut });
    mains.draw([{ hydrant: end, flowGpm: 450 }]);
    const theirs = byEpanet(new Map([[nodeOf(end), 450]]), shut);
    expect(Math.abs(mains.pressurePsi(end) - theirs(nodeOf(end)))).toBeLessThan(0.5);
    mains.draw([]);
    const atRest = byEpanet(new Map(), shut);
    expect(Math.abs(mains.pressurePsi(end) - atRest(nodeOf(end)))).toBeLessThan(0.5);
  });
});
