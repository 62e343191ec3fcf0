import { describe, expect, it } from 'vitest';
import { buildNetwork } from './network.ts';

describe('a warm start', () => {
  it('raises a pump that was only passing water once its setting is raised', () => {
    const network = buildNetwork({
      nodes: [
        { id: 'source', fixedPsi: 50 },
        { id: 'intake' },
        { id: 'discharge' },
        { id: 'scene', demandGpm: 700 },
      ],
      links: [
        {
          kind: 'hose',
          id: 'suction',
          from: 'source',
          to: 'intake',
          coefficient: 0.08,
          lengthFt: 300,
        },
        {
          kind: 'pump',
          id: 'pump',
          from: 'intake',
          to: 'discharge',
          capability: [
            [0, 2000],
            [100000, 2000],
          ],
          pdpPsi: 100,
        },
        {
          kind: 'hose',
          id: 'lay',
          from: 'discharge',
          to: 'scene',
          coefficient: 0.08,
          lengthFt: 500,
        },
      ],
    });
    network.setPdpPsi('pump', 0);
    network.solve({ warm: true });
    expect(network.stateOf('pump')).toBe('passing');
    network.setPdpPsi('pump', 600);
    network.solve({ warm: true });
    expect(network.pressureOf('discharge')).toBeCloseTo(600, 5);
    // 0.08·7²·5 through the lay, by the coefficient law.
    expect(network.pressureOf('scene')).toBeCloseTo(600 - 0.08 * 49 * 5, 4);
  });
});
