/** Every piece of a pump's law on one loop that can be worked with a pencil. The law is that of `spec.ts`. */
import { describe, expect, it } from 'vitest';
import { buildNetwork } from './network.ts';
import type { LinkSpec, NodeSpec, PumpLink } from './spec.ts';

/** Falls straight from 300 psi at no flow to 100 psi at 1,000 gpm. */
const STRAIGHT: PumpLink['capability'] = [
  [0, 300],
  [1000, 100],
];

/** Source at `sourcePsi`, suction that loses `suction·Q²`, the pump, and a nozzle on its discharge. */
function pumping(
  pump: Partial<PumpLink>,
  { sourcePsi = 50, suction = 1e-5, k = 50, sourceFt = 0 } = {},
) {
  const nodes: NodeSpec[] = [
    { id: 'source', fixedPsi: sourcePsi, elevationFt: sourceFt },
    { id: 'intake' },
    { id: 'discharge' },
  ];
  const links: LinkSpec[] = [
    {
      kind: 'loss',
      id: 'suction',
      from: 'source',
      to: 'intake',
      lossPsi: suction * 1e6,
      atGpm: 1000,
    },
    { kind: 'pump', id: 'pump', from: 'intake', to: 'discharge', capability: STRAIGHT, ...pump },
    { kind: 'nozzle', id: 'nozzle', from: 'discharge', k },
  ];
  return buildNetwork({ nodes, links }).solve();
}

/** Positive root of a·Q² + b·Q = c. */
const root = (a: number, b: number, c: number) => (-b + Math.sqrt(b * b + 4 * a * c)) / (2 * a);

describe('a governed pump', () => {
  it('holds its setting', () => {
    const net = pumping({ pdpPsi: 144 });
    expect(net.stateOf('pump')).toBe('holding');
    expect(net.pressureOf('discharge')).toBeCloseTo(144, 5);
    expect(net.flowOf('pump')).toBeCloseTo(600, 4);
    expect(net.pressureOf('intake')).toBeCloseTo(50 - 3.6, 5);
  });

  it('gives what it can where its setting is out of reach', () => {
    const net = pumping({ pdpPsi: 400 });
    // 50 − 1e-5·Q² + 300 − 0.2·Q = Q²/2500.
    const gpm = root(1e-5 + 1 / 2500, 0.2, 350);
    expect(net.stateOf('pump')).toBe('at capability');
    expect(net.flowOf('pump')).toBeCloseTo(gpm, 4);
    expect(net.pressureOf('discharge')).toBeCloseTo((gpm / 50) ** 2, 4);
  });

  it('stands at the wall where its capability ends', () => {
    const net = pumping({ pdpPsi: 200 }, { sourcePsi: 20, k: 110 });
    // The nozzle asks 82.6 psi for 1,000 gpm; 10 + 100 psi would be there.
    expect(net.stateOf('pump')).toBe('at capability');
    expect(net.flowOf('pump')).toBeCloseTo(1000, 2);
    expect(net.pressureOf('discharge')).toBeCloseTo((1000 / 110) ** 2, 2);
  });

  it('lets a strong supply push more through than it could pump', () => {
    const net = pumping({ pdpPsi: 200 }, { k: 200 });
    expect(net.stateOf('pump')).toBe('passing');
    expect(net.flowOf('pump')).toBeCloseTo(Math.sqrt(50 / (1e-5 + 1 / 40000)), 3);
  });

  it('passes water when its intake is above its setting', () => {
    const net = pumping({ pdpPsi: 30, passLoss: { lossPsi: 8, atGpm: 1000 } }, { sourcePsi: 90 });
    const gpm = Math.sqrt(90 / (1e-5 + 8e-6 + 1 / 2500));
    expect(net.stateOf('pump')).toBe('passing');
    expect(net.flowOf('pump')).toBeCloseTo(gpm, 4);
    expect(net.pressureOf('discharge')).toBeCloseTo((gpm / 50) ** 2, 4);
  });

  it('lets nothing back when its discharge is held above what it gives', () => {
    const net = buildNetwork({
      nodes: [{ id: 'source', fixedPsi: 50 }, { id: 'intake' }, { id: 'line', fixedPsi: 180 }],
      links: [
        { kind: 'loss', id: 'suction', from: 'source', to: 'intake', lossPsi: 5, atGpm: 1000 },
        { kind: 'pump', id: 'pump', from: 'intake', to: 'line', capability: STRAIGHT, pdpPsi: 150 },
      ],
    }).solve();
    expect(net.stateOf('pump')).toBe('no flow');
    expect(net.flowOf('pump')).toBe(0);
    expect(net.pressureOf('intake')).toBeCloseTo(50, 6);
  });

  it('holds its setting against a shut line', () => {
    const net = pumping({ pdpPsi: 144 });
    net.setShut('nozzle', true);
    net.solve();
    expect(net.flowOf('pump')).toBeCloseTo(0, 6);
    expect(net.pressureOf('discharge')).toBeCloseTo(144, 5);
  });
});

describe('a pump told to protect its intake', () => {
  const suction = 1e-4;

  it('gives up discharge rather than pull its intake under the floor', () => {
    const net = pumping({ pdpPsi: 200, protectIntakePsi: 20 }, { suction });
    const gpm = Math.sqrt(30 / suction);
    expect(net.stateOf('pump')).toBe('protecting intake');
    expect(net.pressureOf('intake')).toBeCloseTo(20, 5);
    expect(net.flowOf('pump')).toBeCloseTo(gpm, 3);
    expect(net.pressureOf('discharge')).toBeCloseTo((gpm / 50) ** 2, 3);
  });

  it('holds its setting while the intake stands above the floor', () => {
    const net = pumping({ pdpPsi: 100, protectIntakePsi: 20 }, { suction });
    expect(net.stateOf('pump')).toBe('holding');
    expect(net.pressureOf('intake')).toBeCloseTo(50 - suction * 500 ** 2, 5);
  });

  it('passes water, no more, when the supply never reaches the floor', () => {
    const net = pumping({ pdpPsi: 100, protectIntakePsi: 20 }, { sourcePsi: 15 });
    const gpm = Math.sqrt(15 / (1e-5 + 1 / 2500));
    expect(net.flowOf('pump')).toBeCloseTo(gpm, 4);
    expect(net.pressureOf('discharge')).toBeCloseTo(net.pressureOf('intake'), 4);
  });
});

describe('a throttled pump', () => {
  it('follows its capability at full speed', () => {
    const gpm = root(1e-5 + 1 / 2500, 0.2, 350);
    const net = pumping({});
    expect(net.flowOf('pump')).toBeCloseTo(gpm, 4);
  });

  it('at part speed gives flow by the speed and pressure by its square', () => {
    // s²·(300 − 0.2·Q/s) = 0.64·300 − 0.16·Q at s = 0.8.
    const gpm = root(1e-5 + 1 / 2500, 0.16, 50 + 192);
    const net = pumping({ speedFraction: 0.8 });
    expect(net.flowOf('pump')).toBeCloseTo(gpm, 4);
    expect(net.pressureOf('discharge')).toBeCloseTo((gpm / 50) ** 2, 4);
  });

  it('at part speed comes to its wall sooner', () => {
    const net = pumping({ speedFraction: 0.5 }, { sourcePsi: 20, k: 85 });
    expect(net.flowOf('pump')).toBeCloseTo(500, 2);
    expect(net.pressureOf('discharge')).toBeCloseTo((500 / 85) ** 2, 2);
  });
});

describe('a pump that does not pump', () => {
  it('passes water with its loss', () => {
    const net = pumping({ idle: true, pdpPsi: 200, passLoss: { lossPsi: 4, atGpm: 1000 } });
    const gpm = Math.sqrt(50 / (1e-5 + 4e-6 + 1 / 2500));
    expect(net.stateOf('pump')).toBe('not pumping');
    expect(net.flowOf('pump')).toBeCloseTo(gpm, 4);
  });
});

describe('a pump at draft', () => {
  it('pulls its intake below the open air', () => {
    const net = pumping({ pdpPsi: 100 }, { sourcePsi: 0, sourceFt: -10 });
    expect(net.flowOf('pump')).toBeCloseTo(500, 4);
    expect(net.pressureOf('intake')).toBeCloseTo(-4.34 - 2.5, 5);
  });
});

describe('pumps in line', () => {
  it('forty of them each hold their setting', () => {
    const nodes: NodeSpec[] = [{ id: 'source', fixedPsi: 60 }];
    const links: LinkSpec[] = [];
    let at = 'source';
    for (let k = 1; k <= 40; k++) {
      const last = k === 40;
      nodes.push({ id: `out${k}` }, { id: `in${k}`, demandGpm: last ? 500 : undefined });
      links.push(
        {
          kind: 'pump',
          id: `pump${k}`,
          from: at,
          to: `out${k}`,
          capability: STRAIGHT,
          pdpPsi: 160,
        },
        {
          kind: 'hose',
          id: `lay${k}`,
          from: `out${k}`,
          to: `in${k}`,
          coefficient: 0.08,
          lengthFt: 1000,
        },
      );
      at = `in${k}`;
    }
    const net = buildNetwork({ nodes, links }).solve();
    for (let k = 1; k <= 40; k++) {
      expect(net.stateOf(`pump${k}`)).toBe('holding');
      expect(net.pressureOf(`in${k}`)).toBeCloseTo(160 - 0.08 * 25 * 10, 4);
    }
  });

  it('two at one setting share a manifold', () => {
    const pump = (id: string): LinkSpec => ({
      kind: 'pump',
      id,
      from: 'source',
      to: 'manifold',
      capability: STRAIGHT,
      pdpPsi: 144,
    });
    const net = buildNetwork({
      nodes: [{ id: 'source', fixedPsi: 50 }, { id: 'manifold' }],
      links: [pump('one'), pump('two'), { kind: 'nozzle', id: 'gun', from: 'manifold', k: 100 }],
    }).solve();
    expect(net.pressureOf('manifold')).toBeCloseTo(144, 5);
    expect(net.flowOf('one') + net.flowOf('two')).toBeCloseTo(1200, 3);
    expect(net.flowOf('one')).toBeCloseTo(600, 1);
  });
});
