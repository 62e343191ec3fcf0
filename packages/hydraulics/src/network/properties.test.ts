/** What holds for every network, on networks drawn at random. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildNetwork } from './network.ts';
import type { LinkSpec, NetworkSpec, NodeSpec, PumpLink } from './spec.ts';

const CAPABILITY: PumpLink['capability'] = [
  [0, 375],
  [750, 250],
  [1050, 200],
  [1500, 150],
  [2250, 100],
];

/** A hydrant, one to four engines in line, lays of one to three lines, and openings on each engine. */
const scenes = fc
  .record({
    staticPsi: fc.double({ min: 30, max: 120, noNaN: true }),
    testGpm: fc.double({ min: 400, max: 3000, noNaN: true }),
    stages: fc.array(
      fc.record({
        pdpPsi: fc.double({ min: 20, max: 250, noNaN: true }),
        lengthsFt: fc.array(fc.double({ min: 50, max: 1500, noNaN: true }), {
          minLength: 1,
          maxLength: 3,
        }),
        coefficient: fc.constantFrom(0.08, 0.2, 0.8),
        riseFt: fc.double({ min: -40, max: 60, noNaN: true }),
        openings: fc.array(fc.double({ min: 5, max: 80, noNaN: true }), { maxLength: 3 }),
        check: fc.boolean(),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  })
  .map(({ staticPsi, testGpm, stages }): NetworkSpec => {
    const nodes: NodeSpec[] = [{ id: 'main', fixedPsi: staticPsi }, { id: 'e0' }];
    const links: LinkSpec[] = [
      {
        kind: 'supplyCurve',
        id: 'hydrant',
        from: 'main',
        to: 'e0',
        staticPsi,
        residualPsi: 0.7 * staticPsi,
        testGpm,
      },
    ];
    let height = 0;
    stages.forEach((stage, k) => {
      nodes.push({ id: `d${k}`, elevationFt: height });
      links.push({
        kind: 'pump',
        id: `pump${k}`,
        from: `e${k}`,
        to: `d${k}`,
        capability: CAPABILITY,
        pdpPsi: stage.pdpPsi,
        passLoss: { lossPsi: 3, atGpm: 1000 },
      });
      height += stage.riseFt;
      nodes.push({ id: `e${k + 1}`, elevationFt: height });
      stage.lengthsFt.forEach((lengthFt, line) => {
        links.push({
          kind: 'hose',
          id: `lay${k}.${line}`,
          from: `d${k}`,
          to: `e${k + 1}`,
          coefficient: stage.coefficient,
          lengthFt,
          check: stage.check,
        });
      });
      [...stage.openings, 25].forEach((k2, line) => {
        const tip = `t${k}.${line}`;
        nodes.push({ id: tip, elevationFt: height + 5 * line });
        links.push(
          {
            kind: 'hose',
            id: `line${k}.${line}`,
            from: `e${k + 1}`,
            to: tip,
            coefficient: 15.5,
            lengthFt: 150,
          },
          { kind: 'nozzle', id: `nozzle${k}.${line}`, from: tip, k: k2 },
        );
      });
    });
    return { nodes, links };
  });

const nearly = (one: number, two: number) => Math.abs(one - two) <= 1e-4 + 1e-6 * Math.abs(one);

function sameAnswer(
  one: ReturnType<typeof buildNetwork>,
  two: ReturnType<typeof buildNetwork>,
): boolean {
  return (
    one.linkIds.every((id) => nearly(one.flowOf(id), two.flowOf(id))) &&
    one.nodeIds.every((id) => nearly(one.pressureOf(id), two.pressureOf(id)))
  );
}

describe('every answer', () => {
  it('balances at every node and sends nothing back through a check, a pump or a nozzle', () => {
    fc.assert(
      fc.property(scenes, (spec) => {
        const net = buildNetwork(spec).solve();
        const balance = new Map(spec.nodes.map(({ id }) => [id, 0]));
        for (const link of spec.links) {
          const gpm = net.flowOf(link.id);
          const oneWay = link.kind === 'pump' || !('to' in link) || link.check;
          if (oneWay && gpm < 0) return false;
          balance.set(link.from, balance.get(link.from)! - gpm);
          if ('to' in link) balance.set(link.to, balance.get(link.to)! + gpm);
        }
        balance.delete('main');
        return [...balance.values()].every((gpm) => Math.abs(gpm) < 1e-4);
      }),
    );
  });

  it('does not depend on the order of nodes and links', () => {
    fc.assert(
      fc.property(scenes, fc.infiniteStream(fc.nat()), (spec, draws) => {
        const shuffled = <T>(values: readonly T[]) =>
          values
            .map((value) => ({ value, by: draws.next().value }))
            .sort((a, b) => a.by - b.by)
            .map(({ value }) => value);
        const other = { nodes: shuffled(spec.nodes), links: shuffled(spec.links) };
        return sameAnswer(buildNetwork(spec).solve(), buildNetwork(other).solve());
      }),
    );
  });

  it('is the same whether runs and like lines are collapsed or not', () => {
    fc.assert(
      fc.property(scenes, (spec) => {
        const whole = {
          nodes: spec.nodes.map((node) =>
            node.fixedPsi === undefined ? { ...node, demandGpm: 0 } : node,
          ),
          links: spec.links,
        };
        return sameAnswer(buildNetwork(spec).solve(), buildNetwork(whole).solve());
      }),
    );
  });

  it('is the same from a warm start as from a cold one', () => {
    fc.assert(
      fc.property(scenes, fc.double({ min: 0, max: 300, noNaN: true }), (spec, pdpPsi) => {
        const warm = buildNetwork(spec).solve();
        warm.setPdpPsi('pump0', pdpPsi);
        warm.solve({ warm: true });
        const cold = buildNetwork(spec);
        cold.setPdpPsi('pump0', pdpPsi);
        return sameAnswer(cold.solve(), warm);
      }),
    );
  });

  it('gives a scene no less for a higher discharge pressure', () => {
    fc.assert(
      fc.property(scenes, fc.double({ min: 0, max: 100, noNaN: true }), (spec, morePsi) => {
        const net = buildNetwork(spec).solve();
        const out = () =>
          spec.links
            .filter(({ kind }) => kind === 'nozzle')
            .reduce((sum, { id }) => sum + net.flowOf(id), 0);
        const last = spec.links.filter(({ kind }) => kind === 'pump').length - 1;
        const pump = spec.links.find(({ id }) => id === `pump${last}`) as PumpLink;
        const before = out();
        net.setPdpPsi(`pump${last}`, pump.pdpPsi! + morePsi);
        net.solve();
        return out() >= before - 1e-4;
      }),
    );
  });
});

describe('a network of squares alone, on the level', () => {
  /** A ring with chords, fed at one corner, open at others. */
  const rings = fc.record({
    losses: fc.array(fc.double({ min: 0.1, max: 50, noNaN: true }), { minLength: 8, maxLength: 8 }),
    openings: fc.array(fc.double({ min: 5, max: 100, noNaN: true }), {
      minLength: 2,
      maxLength: 2,
    }),
  });
  const ring = (losses: number[], openings: number[], psi: number): NetworkSpec => ({
    nodes: [{ id: 's', fixedPsi: psi }, ...['a', 'b', 'c', 'd'].map((id) => ({ id }))],
    links: [
      ...(
        [
          ['s', 'a'],
          ['s', 'b'],
          ['a', 'b'],
          ['a', 'c'],
          ['b', 'd'],
          ['c', 'd'],
          ['a', 'd'],
          ['b', 'c'],
        ] as const
      ).map(
        ([from, to], k): LinkSpec => ({
          kind: 'loss',
          id: `${from}${to}`,
          from,
          to,
          lossPsi: losses[k]!,
          atGpm: 500,
        }),
      ),
      { kind: 'nozzle', id: 'c', from: 'c', k: openings[0]! },
      { kind: 'nozzle', id: 'd', from: 'd', k: openings[1]! },
    ],
  });

  it('flows twice as much at four times the pressure', () => {
    fc.assert(
      fc.property(rings, ({ losses, openings }) => {
        const once = buildNetwork(ring(losses, openings, 50)).solve();
        const again = buildNetwork(ring(losses, openings, 200)).solve();
        return once.linkIds.every(
          // Next to no flow is held to a five-hundredth of a gpm.
          (id) =>
            Math.abs(2 * once.flowOf(id) - again.flowOf(id)) < 0.005 + 1e-6 * again.flowOf(id),
        );
      }),
    );
  });

  it('keeps its flows when every loss and the pressure grow together', () => {
    fc.assert(
      fc.property(rings, ({ losses, openings }) => {
        const once = buildNetwork(ring(losses, openings, 50)).solve();
        const more = losses.map((psi) => 3 * psi);
        const smaller = openings.map((k) => k / Math.sqrt(3));
        const again = buildNetwork(ring(more, smaller, 150)).solve();
        return once.linkIds.every((id) => Math.abs(once.flowOf(id) - again.flowOf(id)) < 0.005);
      }),
    );
  });

  it('draws something to compare', () => {
    const net = buildNetwork(ring([1, 2, 3, 4, 5, 6, 7, 8], [20, 40], 100)).solve();
    expect(net.flowOf('c')).toBeGreaterThan(50);
    expect(Math.abs(net.flowOf('ab'))).toBeGreaterThan(1);
  });
});
