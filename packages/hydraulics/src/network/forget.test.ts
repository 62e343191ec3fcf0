import { describe, expect, it } from 'vitest';
import { buildNetwork } from './network.ts';
import type { NetworkSpec } from './spec.ts';

/** A boosted lay with a ring, a check and two nozzles. */
const spec: NetworkSpec = {
  nodes: [
    { id: 'source', fixedPsi: 62 },
    { id: 'main' },
    { id: 'supply' },
    { id: 'intake' },
    { id: 'discharge' },
    { id: 'scene', elevationFt: 35 },
    { id: 'far', elevationFt: 50 },
  ],
  links: [
    {
      kind: 'supplyCurve',
      id: 'curve',
      from: 'source',
      to: 'main',
      staticPsi: 62,
      residualPsi: 44,
      testGpm: 1060,
    },
    {
      kind: 'loss',
      id: 'clapper',
      from: 'main',
      to: 'supply',
      lossPsi: 10,
      atGpm: 1000,
      check: true,
    },
    { kind: 'loss', id: 'suction', from: 'main', to: 'intake', lossPsi: 8, atGpm: 1000 },
    {
      kind: 'pump',
      id: 'pump',
      from: 'intake',
      to: 'discharge',
      capability: [
        [0, 375],
        [750, 250],
        [1500, 150],
        [2250, 100],
      ],
      pdpPsi: 120,
    },
    { kind: 'loss', id: 'outlet', from: 'discharge', to: 'supply', lossPsi: 3, atGpm: 1000 },
    { kind: 'hose', id: 'lay', from: 'supply', to: 'scene', coefficient: 0.08, lengthFt: 900 },
    { kind: 'hose', id: 'one', from: 'scene', to: 'far', coefficient: 2, lengthFt: 150 },
    { kind: 'hose', id: 'two', from: 'scene', to: 'far', coefficient: 0.8, lengthFt: 300 },
    { kind: 'nozzle', id: 'tip', from: 'far', k: 25 },
    { kind: 'nozzle', id: 'other', from: 'scene', k: 15 },
  ],
};

describe('Network.forget', () => {
  it('makes an answer hang on the settings alone, to the last bit, whatever was solved before', () => {
    const fresh = buildNetwork(spec);
    fresh.setPdpPsi('pump', 137);
    fresh.setLossFactor('tip', 1 / 400);
    fresh.forget();
    fresh.solve();

    const used = buildNetwork(spec);
    used.solve();
    for (const psi of [50, 300, 90]) {
      used.setPdpPsi('pump', psi);
      used.solve({ warm: true });
    }
    used.setShut('clapper', true);
    used.solve();
    used.setIdle('pump');
    used.setShut('tip', true);
    used.solve();
    used.setShut('clapper', false);
    used.setShut('tip', false);
    used.setPdpPsi('pump', 137);
    used.setLossFactor('tip', 1 / 400);
    used.forget();
    used.solve();

    expect([...used.flowGpm]).toEqual([...fresh.flowGpm]);
    expect([...used.pressurePsi]).toEqual([...fresh.pressurePsi]);
    expect(used.flowOf('tip')).toBeGreaterThan(100);
  });
});
