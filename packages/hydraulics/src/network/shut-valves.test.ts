/** Shut valves, what they cut off, and the pressures of what checks shut in. */
import { describe, expect, it } from 'vitest';
import { buildNetwork } from './network.ts';
import type { LinkSpec, NetworkSpec } from './spec.ts';

const hose = (id: string, from: string, to: string, more: object = {}): LinkSpec => ({
  kind: 'hose',
  id,
  from,
  to,
  coefficient: 2,
  lengthFt: 100,
  ...more,
});

/** A source, two lines in a row to a tip, and a branch. */
const line: NetworkSpec = {
  nodes: [
    { id: 'source', fixedPsi: 100 },
    { id: 'joint' },
    { id: 'tip', elevationFt: 20 },
    { id: 'branch' },
  ],
  links: [
    hose('first', 'source', 'joint'),
    hose('second', 'joint', 'tip'),
    hose('side', 'joint', 'branch'),
    { kind: 'nozzle', id: 'nozzle', from: 'tip', k: 30 },
  ],
};

describe('a shut valve', () => {
  it('at the nozzle leaves the whole line at the pressure of its source', () => {
    const net = buildNetwork(line);
    net.setShut('nozzle', true);
    net.solve();
    expect(net.flowOf('first')).toBe(0);
    expect(net.pressureOf('joint')).toBeCloseTo(100, 9);
    expect(net.pressureOf('tip')).toBeCloseTo(100 - 8.68, 9);
    expect(net.stateOf('nozzle')).toBe('shut');
  });

  it('cuts off all beyond it, and says so', () => {
    const net = buildNetwork(line);
    net.setShut('first', true);
    net.solve();
    for (const node of ['joint', 'tip', 'branch']) {
      expect(net.cutOff[net.nodeIndex(node)]).toBe(1);
      expect(net.pressureOf(node)).toBe(0);
    }
    expect(net.cutOff[net.nodeIndex('source')]).toBe(0);
    expect(net.stateOf('nozzle')).toBe('cut off');
    expect(net.flowOf('nozzle')).toBe(0);
  });

  it('opened again gives back the same answer', () => {
    const net = buildNetwork(line).solve();
    const before = net.flowOf('nozzle');
    net.setShut('first', true);
    net.solve();
    net.setShut('first', false);
    net.solve({ warm: true });
    expect(net.flowOf('nozzle')).toBeCloseTo(before, 6);
    expect(net.cutOff[net.nodeIndex('tip')]).toBe(0);
  });

  it('on one of two lines sends all through the other', () => {
    const net = buildNetwork({
      nodes: [
        { id: 'source', fixedPsi: 100 },
        { id: 'end', demandGpm: 300 },
      ],
      links: [hose('one', 'source', 'end'), hose('two', 'source', 'end')],
    }).solve();
    expect(net.pressureOf('end')).toBeCloseTo(100 - 2 * 1.5 ** 2, 5);
    net.setShut('one', true);
    net.solve();
    expect(net.flowOf('two')).toBeCloseTo(300, 6);
    expect(net.pressureOf('end')).toBeCloseTo(100 - 2 * 9, 5);
  });

  it('before a pump leaves it cut off, and what it fed with it', () => {
    const net = buildNetwork({
      nodes: [{ id: 'source', fixedPsi: 50 }, { id: 'in' }, { id: 'out' }],
      links: [
        hose('suction', 'source', 'in'),
        {
          kind: 'pump',
          id: 'pump',
          from: 'in',
          to: 'out',
          capability: [
            [0, 300],
            [1000, 100],
          ],
          pdpPsi: 150,
        },
        { kind: 'nozzle', id: 'nozzle', from: 'out', k: 20 },
      ],
    });
    net.setShut('suction', true);
    net.solve();
    expect(net.stateOf('pump')).toBe('cut off');
    expect(net.flowOf('pump')).toBe(0);
    expect(net.cutOff[net.nodeIndex('out')]).toBe(1);
  });
});

describe('a part that checks shut in', () => {
  it('stands at what the strongest of its feeders fills it to', () => {
    const net = buildNetwork({
      nodes: [
        { id: 'strong', fixedPsi: 90 },
        { id: 'weak', fixedPsi: 60 },
        { id: 'held', fixedPsi: 120 },
        { id: 'a' },
        { id: 'b', elevationFt: 10 },
        { id: 'c' },
      ],
      links: [
        hose('fromStrong', 'strong', 'a', { check: true }),
        hose('fromWeak', 'weak', 'b', { check: true }),
        hose('ab', 'a', 'b'),
        hose('bc', 'b', 'c'),
        hose('ac', 'a', 'c'),
        hose('out', 'c', 'held', { check: true }),
      ],
    }).solve();
    expect(net.pressureOf('a')).toBeCloseTo(90, 6);
    expect(net.pressureOf('b')).toBeCloseTo(90 - 4.34, 6);
    expect(net.pressureOf('c')).toBeCloseTo(90, 6);
    for (const link of net.linkIds) expect(net.flowOf(link)).toBeCloseTo(0, 9);
  });

  it('stands there however the answer was come by', () => {
    const spec: NetworkSpec = {
      nodes: [
        { id: 'main', fixedPsi: 60 },
        { id: 'bin' },
        { id: 'bout' },
        { id: 'supply' },
        { id: 'far', fixedPsi: 140 },
      ],
      links: [
        { kind: 'loss', id: 'suction', from: 'main', to: 'bin', lossPsi: 5, atGpm: 500 },
        {
          kind: 'pump',
          id: 'pump',
          from: 'bin',
          to: 'bout',
          capability: [
            [0, 300],
            [1000, 100],
          ],
          pdpPsi: 120,
        },
        hose('lay', 'bout', 'supply'),
        hose('last', 'supply', 'far', { check: true }),
      ],
    };
    const cold = buildNetwork(spec).solve();
    expect(cold.pressureOf('supply')).toBeCloseTo(120, 5);
    const warm = buildNetwork(spec);
    warm.setPdpPsi('pump', 200);
    warm.solve();
    expect(warm.flowOf('pump')).toBeGreaterThan(100);
    warm.setPdpPsi('pump', 120);
    warm.solve({ warm: true });
    expect(warm.pressureOf('supply')).toBeCloseTo(120, 5);
  });
});
