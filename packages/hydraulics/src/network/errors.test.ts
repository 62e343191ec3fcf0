import { describe, expect, it } from 'vitest';
import { buildNetwork } from './network.ts';
import { NetworkError, type NetworkErrorCode } from './network-error.ts';
import type { LinkSpec, NetworkSpec, NodeSpec, PumpLink } from './spec.ts';

const CAPABILITY: PumpLink['capability'] = [
  [0, 300],
  [1000, 100],
];
const hose: LinkSpec = {
  kind: 'hose',
  id: 'hose',
  from: 'source',
  to: 'end',
  coefficient: 2,
  lengthFt: 100,
};
const pump: PumpLink = {
  kind: 'pump',
  id: 'pump',
  from: 'source',
  to: 'end',
  capability: CAPABILITY,
};
const nodes: NodeSpec[] = [{ id: 'source', fixedPsi: 60 }, { id: 'end' }];

function refusal(work: () => unknown): NetworkError {
  try {
    work();
  } catch (error) {
    if (error instanceof NetworkError) return error;
    throw error;
  }
  throw new Error('Not refused.');
}
const building = (spec: NetworkSpec) => refusal(() => buildNetwork(spec));
const solving = (spec: NetworkSpec) => refusal(() => buildNetwork(spec).solve());

describe('a description that cannot be built', () => {
  it.each<[string, NetworkErrorCode, string[], NetworkSpec]>([
    [
      'two nodes of one name',
      'duplicate name',
      ['end'],
      { nodes: [...nodes, { id: 'end' }], links: [hose] },
    ],
    ['two links of one name', 'duplicate name', ['hose'], { nodes, links: [hose, hose] }],
    [
      'an end that is no node',
      'unknown node',
      ['hose', 'nowhere'],
      { nodes, links: [{ ...hose, to: 'nowhere' }] },
    ],
    ['no source', 'no source', [], { nodes: [{ id: 'source' }, { id: 'end' }], links: [hose] }],
    [
      'a part by itself',
      'disconnected part',
      ['far'],
      { nodes: [...nodes, { id: 'far' }], links: [hose] },
    ],
    [
      'a part behind a check the wrong way',
      'disconnected part',
      ['end'],
      { nodes, links: [{ ...hose, from: 'end', to: 'source', check: true }] },
    ],
    [
      'a pump fed by nothing',
      'pump fed by nothing',
      ['pump'],
      { nodes: [...nodes, { id: 'dry' }], links: [hose, { ...pump, from: 'dry', to: 'end' }] },
    ],
    [
      'two sources joined without loss',
      'conflicting fixed pressures',
      ['source', 'end'],
      { nodes: [nodes[0]!, { id: 'end', fixedPsi: 50 }], links: [{ ...hose, lengthFt: 0 }] },
    ],
  ])('%s', (_, code, pieces, spec) => {
    const error = building(spec);
    expect(error.code).toBe(code);
    expect(error.pieces).toEqual(pieces);
    // Says what to do, not only what is wrong.
    expect(error.message).toMatch(/\. (Give|Name|Add|Join|Take|Open)/);
  });

  it.each<[field: string, given: string, spec: NetworkSpec]>([
    [
      'elevationFt',
      'Infinity',
      { nodes: [nodes[0]!, { id: 'end', elevationFt: Infinity }], links: [hose] },
    ],
    ['fixedPsi', '-20', { nodes: [{ id: 'source', fixedPsi: -20 }, nodes[1]!], links: [hose] }],
    ['demandGpm', '1000000', { nodes: [nodes[0]!, { id: 'end', demandGpm: 1e6 }], links: [hose] }],
    ['coefficient', '-1', { nodes, links: [{ ...hose, coefficient: -1 } as LinkSpec] }],
    ['lengthFt', 'NaN', { nodes, links: [{ ...hose, lengthFt: Number.NaN } as LinkSpec] }],
    ['lines', '0', { nodes, links: [{ ...hose, lines: 0 } as LinkSpec] }],
    [
      'lossPsi',
      '-3',
      {
        nodes,
        links: [{ kind: 'loss', id: 'k', from: 'source', to: 'end', lossPsi: -3, atGpm: 9 }],
      },
    ],
    [
      'atGpm',
      '0',
      {
        nodes,
        links: [{ kind: 'loss', id: 'k', from: 'source', to: 'end', lossPsi: 3, atGpm: 0 }],
      },
    ],
    [
      'staticPsi',
      '-1',
      {
        nodes,
        links: [
          {
            kind: 'supplyCurve',
            id: 'main',
            from: 'source',
            to: 'end',
            staticPsi: -1,
            residualPsi: -2,
            testGpm: 500,
          },
        ],
      },
    ],
    [
      'residualPsi',
      '70',
      {
        nodes,
        links: [
          {
            kind: 'supplyCurve',
            id: 'main',
            from: 'source',
            to: 'end',
            staticPsi: 60,
            residualPsi: 70,
            testGpm: 500,
          },
        ],
      },
    ],
    [
      'testGpm',
      '0',
      {
        nodes,
        links: [
          {
            kind: 'supplyCurve',
            id: 'main',
            from: 'source',
            to: 'end',
            staticPsi: 60,
            residualPsi: 40,
            testGpm: 0,
          },
        ],
      },
    ],
    ['k', '0', { nodes, links: [hose, { kind: 'nozzle', id: 'n', from: 'end', k: 0 }] }],
    [
      'elevationFt',
      '99999',
      { nodes, links: [hose, { kind: 'nozzle', id: 'n', from: 'end', k: 9, elevationFt: 99999 }] },
    ],
    [
      'ratedPsi',
      '0',
      {
        nodes,
        links: [
          hose,
          {
            kind: 'automaticNozzle',
            id: 'n',
            from: 'end',
            ratedPsi: 0,
            leastGpm: 9,
            greatestGpm: 99,
          },
        ],
      },
    ],
    [
      'greatestGpm',
      '9',
      {
        nodes,
        links: [
          hose,
          {
            kind: 'automaticNozzle',
            id: 'n',
            from: 'end',
            ratedPsi: 50,
            leastGpm: 9,
            greatestGpm: 9,
          },
        ],
      },
    ],
    [
      'settingPsi',
      '-5',
      {
        nodes,
        links: [
          hose,
          { kind: 'relief', id: 'r', from: 'end', settingPsi: -5, risePsi: 5, atGpm: 500 },
        ],
      },
    ],
    ['pdpPsi', '2000', { nodes, links: [{ ...pump, pdpPsi: 2000 }] }],
    ['speedFraction', '0', { nodes, links: [{ ...pump, speedFraction: 0 }] }],
    ['protectIntakePsi', '-99', { nodes, links: [{ ...pump, protectIntakePsi: -99 }] }],
    [
      'passLoss.lossPsi',
      '-1',
      { nodes, links: [{ ...pump, passLoss: { lossPsi: -1, atGpm: 9 } }] },
    ],
    [
      'capability',
      '150',
      {
        nodes,
        links: [
          {
            ...pump,
            capability: [
              [0, 100],
              [500, 150],
            ],
          },
        ],
      },
    ],
    ['capability', 'two points', { nodes, links: [{ ...pump, capability: [[0, 100]] }] }],
  ])('%s of %s', (field, given, spec) => {
    const error = building(spec);
    expect(error.code).toBe('bad value');
    expect(error.message).toContain(field);
    expect(error.message).toContain(given);
  });

  it('a link from a node to itself', () => {
    expect(
      building({ nodes, links: [hose, { ...hose, id: 'ring', to: 'source' } as LinkSpec] }).code,
    ).toBe('bad value');
  });

  it('a node both fixed and drawn from', () => {
    const spec = {
      nodes: [{ id: 'source', fixedPsi: 60, demandGpm: 5 }, nodes[1]!],
      links: [hose],
    };
    expect(building(spec).message).toContain('leave one of the two out');
  });
});

describe('a network that cannot be solved', () => {
  it('with a demand that shut valves leave dry', () => {
    const error = solving({
      nodes: [nodes[0]!, { id: 'end', demandGpm: 100 }],
      links: [{ ...hose, shut: true } as LinkSpec],
    });
    expect(error.code).toBe('no source');
    expect(error.pieces).toEqual(['end']);
  });

  it('with water forced in behind a check that cannot open says how near it came', () => {
    const error = solving({
      nodes: [nodes[0]!, { id: 'end', demandGpm: -100 }],
      links: [{ ...hose, check: true } as LinkSpec],
    });
    expect(error.code).toBe('not converged');
    expect(error.best?.massGpm).toBeGreaterThan(1);
    expect(error.best?.iterations).toBeGreaterThan(10);
    expect(error.message).toContain('gpm');
  });

  it('with nothing to limit a flow between two held pressures', () => {
    const error = solving({
      nodes,
      links: [
        { ...hose, lengthFt: 0 } as LinkSpec,
        { kind: 'relief', id: 'relief', from: 'end', settingPsi: 20, risePsi: 0, atGpm: 500 },
      ],
    });
    expect(error.code).toBe('conflicting fixed pressures');
    expect(error.message).toContain('Give a link a loss');
  });
});

describe('a change that makes no sense', () => {
  const net = buildNetwork({ nodes, links: [hose, { ...pump, pdpPsi: 100 }] });
  it.each<[string, () => void]>([
    ['a discharge pressure', () => net.setPdpPsi('pump', 5000)],
    ['a speed', () => net.setSpeed('pump', 9)],
    ['the pressure of a node that is not fixed', () => net.setFixedPsi('end', 50)],
    ['the demand of a node built without one', () => net.setDemandGpm('end', 50)],
    ['the loss of a pump', () => net.setLossFactor('pump', 1)],
    ['the discharge pressure of a hose', () => net.setPdpPsi('hose', 100)],
    ['rates before an answer', () => net.derivatives({ kind: 'pdpPsi', pump: 'pump' })],
  ])('%s', (_, change) => {
    expect(refusal(change).message.length).toBeGreaterThan(20);
  });

  it('a name that is not there', () => {
    expect(refusal(() => net.flowOf('nothing')).code).toBe('unknown node');
  });
});
