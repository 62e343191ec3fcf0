/** Every passive element on one loop that can be worked with a pencil. Laws are those of `spec.ts`. */
import { describe, expect, it } from 'vitest';
import { buildNetwork } from './network.ts';
import type { LinkSpec, NodeSpec } from './spec.ts';

const solve = (nodes: NodeSpec[], links: LinkSpec[]) => buildNetwork({ nodes, links }).solve();

/** A source at 100 psi, a hose that loses `a·Q²`, and what stands at its end. */
const fed = (a: number, ...ends: LinkSpec[]) =>
  solve(
    [{ id: 'source', fixedPsi: 100 }, { id: 'end' }],
    [
      { kind: 'loss', id: 'line', from: 'source', to: 'end', lossPsi: a * 1e6, atGpm: 1000 },
      ...ends,
    ],
  );

describe('a hose', () => {
  it('loses C·(Q/100)²·(L/100) to a smooth opening', () => {
    // 2·Q²/1e4·2 + (Q/30)² = 100, so Q = √(100 / (4e-4 + 1/900)).
    const net = solve(
      [{ id: 'source', fixedPsi: 100 }, { id: 'tip' }],
      [
        { kind: 'hose', id: 'line', from: 'source', to: 'tip', coefficient: 2, lengthFt: 200 },
        { kind: 'nozzle', id: 'nozzle', from: 'tip', k: 30 },
      ],
    );
    const gpm = Math.sqrt(100 / (4e-4 + 1 / 900));
    expect(net.flowOf('line')).toBeCloseTo(gpm, 6);
    expect(net.pressureOf('tip')).toBeCloseTo((gpm / 30) ** 2, 6);
  });

  it('gives up 0.434 psi for every foot it climbs', () => {
    const net = solve(
      [
        { id: 'source', fixedPsi: 100 },
        { id: 'top', elevationFt: 50, demandGpm: 200 },
      ],
      [{ kind: 'hose', id: 'line', from: 'source', to: 'top', coefficient: 2, lengthFt: 300 }],
    );
    expect(net.pressureOf('top')).toBeCloseTo(100 - 2 * 4 * 3 - 0.434 * 50, 6);
  });

  it('shares among like lines', () => {
    const net = solve(
      [
        { id: 'source', fixedPsi: 100 },
        { id: 'end', demandGpm: 600 },
      ],
      [
        {
          kind: 'hose',
          id: 'lay',
          from: 'source',
          to: 'end',
          coefficient: 0.8,
          lengthFt: 400,
          lines: 3,
        },
      ],
    );
    expect(net.pressureOf('end')).toBeCloseTo(100 - 0.8 * 2 ** 2 * 4, 5);
  });

  it('splits among unlike lines as 1/√C', () => {
    const line = (id: string, coefficient: number): LinkSpec => ({
      kind: 'hose',
      id,
      from: 'source',
      to: 'end',
      coefficient,
      lengthFt: 500,
    });
    const net = solve(
      [
        { id: 'source', fixedPsi: 100 },
        { id: 'end', demandGpm: 900 },
      ],
      [line('three', 0.8), line('four', 0.2)],
    );
    expect(net.flowOf('three')).toBeCloseTo(300, 5);
    expect(net.flowOf('four')).toBeCloseTo(600, 5);
    expect(net.pressureOf('end')).toBeCloseTo(100 - 0.8 * 9 * 5, 5);
  });

  it('loses nothing at no length', () => {
    const net = solve(
      [{ id: 'source', fixedPsi: 80 }, { id: 'a' }, { id: 'b', demandGpm: 1000 }],
      [
        { kind: 'hose', id: 'none', from: 'source', to: 'a', coefficient: 0.08, lengthFt: 0 },
        { kind: 'hose', id: 'some', from: 'a', to: 'b', coefficient: 0.08, lengthFt: 100 },
      ],
    );
    expect(net.pressureOf('a')).toBeCloseTo(80, 4);
    expect(net.pressureOf('b')).toBeCloseTo(72, 4);
  });
});

describe('a main', () => {
  it('falls by its own two readings', () => {
    const main = (demandGpm: number) =>
      solve(
        [
          { id: 'source', fixedPsi: 62 },
          { id: 'outlet', demandGpm },
        ],
        [
          {
            kind: 'supplyCurve',
            id: 'main',
            from: 'source',
            to: 'outlet',
            staticPsi: 62,
            residualPsi: 44,
            testGpm: 1060,
          },
        ],
      ).pressureOf('outlet');
    expect(main(0)).toBeCloseTo(62, 6);
    expect(main(1060)).toBeCloseTo(44, 5);
    expect(main(530)).toBeCloseTo(62 - 18 * 0.5 ** (1 / 0.54), 5);
    // Flow at 20 psi by the 0.54 power.
    expect(main(1060 * (42 / 18) ** 0.54)).toBeCloseTo(20, 5);
  });
});

describe('an automatic nozzle, 50 psi from 95 to 200 gpm', () => {
  const nozzle: LinkSpec = {
    kind: 'automaticNozzle',
    id: 'nozzle',
    from: 'end',
    ratedPsi: 50,
    leastGpm: 95,
    greatestGpm: 200,
  };

  it('is a small fixed opening below its least flow', () => {
    const net = fed(0.02, nozzle);
    const gpm = Math.sqrt(100 / (0.02 + 50 / 95 ** 2));
    expect(gpm).toBeLessThan(95);
    expect(net.flowOf('nozzle')).toBeCloseTo(gpm, 5);
    expect(net.pressureOf('end')).toBeCloseTo(50 * (gpm / 95) ** 2, 5);
  });

  it('holds its pressure between', () => {
    const net = fed(0.002, nozzle);
    expect(net.flowOf('nozzle')).toBeCloseTo(Math.sqrt(50 / 0.002), 3);
    expect(net.pressureOf('end')).toBeCloseTo(50, 4);
  });

  it('is a large fixed opening above its greatest flow', () => {
    const net = fed(1e-4, nozzle);
    const gpm = Math.sqrt(100 / (1e-4 + 50 / 200 ** 2));
    expect(gpm).toBeGreaterThan(200);
    expect(net.flowOf('nozzle')).toBeCloseTo(gpm, 3);
    expect(net.pressureOf('end')).toBeCloseTo(50 * (gpm / 200) ** 2, 4);
  });
});

describe('a relief valve', () => {
  const relief = (settingPsi: number): LinkSpec => ({
    kind: 'relief',
    id: 'relief',
    from: 'end',
    settingPsi,
    risePsi: 10,
    atGpm: 500,
  });

  it('stays shut below its setting', () => {
    const net = fed(1e-4, relief(101));
    expect(net.flowOf('relief')).toBe(0);
    expect(net.pressureOf('end')).toBeCloseTo(100, 6);
    expect(net.stateOf('relief')).toBe('check shut');
  });

  it('wastes what brings the pressure down to its setting and its rise', () => {
    const net = fed(1e-4, relief(60));
    const gpm = Math.sqrt(40 / (1e-4 + 10 / 500 ** 2));
    expect(net.flowOf('relief')).toBeCloseTo(gpm, 5);
    expect(net.pressureOf('end')).toBeCloseTo(60 + 10 * (gpm / 500) ** 2, 5);
  });
});

describe('a check', () => {
  const two = (weakerPsi: number, check: boolean) =>
    solve(
      [
        { id: 'strong', fixedPsi: 70 },
        { id: 'weak', fixedPsi: weakerPsi },
        { id: 'engine', demandGpm: 300 },
      ],
      [
        { kind: 'loss', id: 'a', from: 'strong', to: 'engine', lossPsi: 10, atGpm: 300, check },
        { kind: 'loss', id: 'b', from: 'weak', to: 'engine', lossPsi: 10, atGpm: 300, check },
      ],
    );

  it('keeps a strong supply from running back into a weak one', () => {
    const net = two(50, true);
    expect(net.flowOf('b')).toBe(0);
    expect(net.stateOf('b')).toBe('check shut');
    expect(net.pressureOf('engine')).toBeCloseTo(60, 6);
  });

  it('is missed where there is none', () => {
    expect(two(50, false).flowOf('b')).toBeLessThan(-50);
  });

  it('opens when the line falls below the supply behind it', () => {
    const net = two(65, true);
    // 70 − P = 10·(Qa/300)² and 65 − P = 10·(Qb/300)², together 300 gpm.
    const [a, b] = [net.flowOf('a'), net.flowOf('b')];
    expect(a + b).toBeCloseTo(300, 6);
    expect(70 - 10 * (a / 300) ** 2).toBeCloseTo(65 - 10 * (b / 300) ** 2, 6);
    expect(b).toBeGreaterThan(0);
  });
});

describe('two hydrants', () => {
  it('share as each lay allows', () => {
    // At 40 psi the first gives √(30/3e-4), the second √(24/6e-4).
    const [first, second] = [Math.sqrt(30 / 3e-4), Math.sqrt(24 / 6e-4)];
    const net = solve(
      [
        { id: 'A', fixedPsi: 70 },
        { id: 'B', fixedPsi: 64 },
        { id: 'engine', demandGpm: first + second },
      ],
      [
        { kind: 'loss', id: 'a', from: 'A', to: 'engine', lossPsi: 300, atGpm: 1000 },
        { kind: 'loss', id: 'b', from: 'B', to: 'engine', lossPsi: 600, atGpm: 1000 },
      ],
    );
    expect(net.pressureOf('engine')).toBeCloseTo(40, 6);
    expect(net.flowOf('a')).toBeCloseTo(first, 5);
    expect(net.flowOf('b')).toBeCloseTo(second, 5);
  });
});

describe('a ring', () => {
  it('sends the same water both ways round to the far side', () => {
    const hose = (id: string, from: string, to: string): LinkSpec => ({
      kind: 'hose',
      id,
      from,
      to,
      coefficient: 0.2,
      lengthFt: 500,
    });
    const net = solve(
      [
        { id: 'source', fixedPsi: 90 },
        { id: 'east', demandGpm: 100 },
        { id: 'west', demandGpm: 100 },
        { id: 'far', demandGpm: 400 },
      ],
      [
        hose('1', 'source', 'east'),
        hose('2', 'east', 'far'),
        hose('3', 'source', 'west'),
        hose('4', 'west', 'far'),
      ],
    );
    expect(net.flowOf('2')).toBeCloseTo(200, 6);
    expect(net.pressureOf('far')).toBeCloseTo(90 - 0.2 * 9 * 5 - 0.2 * 4 * 5, 6);
  });

  it('leaves a bridge between equals still', () => {
    const loss = (id: string, from: string, to: string, lossPsi: number): LinkSpec => ({
      kind: 'loss',
      id,
      from,
      to,
      lossPsi,
      atGpm: 500,
    });
    const net = solve(
      [{ id: 'source', fixedPsi: 90 }, { id: 'a' }, { id: 'b' }, { id: 'end', demandGpm: 600 }],
      [
        loss('1', 'source', 'a', 10),
        loss('2', 'source', 'b', 10),
        loss('bridge', 'a', 'b', 5),
        loss('3', 'a', 'end', 20),
        loss('4', 'b', 'end', 20),
      ],
    );
    expect(Math.abs(net.flowOf('bridge'))).toBeLessThan(0.01);
    expect(net.pressureOf('end')).toBeCloseTo(90 - 30 * 0.36, 5);
  });
});
