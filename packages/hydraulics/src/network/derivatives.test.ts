/** Rates of change against central differences of whole answers. */
import { describe, expect, it } from 'vitest';
import type { Parameter } from './derivatives.ts';
import { buildNetwork, type Network } from './network.ts';
import type { NetworkSpec, PumpLink } from './spec.ts';

const CAPABILITY: PumpLink['capability'] = [
  [0, 300],
  [500, 250],
  [2000, 100],
];

/** A hydrant, a clapper beside a booster, a lay of two unlike lines, an engine and two lines. */
function scene(booster: Partial<PumpLink>, attack: Partial<PumpLink>): NetworkSpec {
  return {
    nodes: [
      { id: 'main', fixedPsi: 62 },
      { id: 'outlet' },
      { id: 'bin' },
      { id: 'bout' },
      { id: 'supply' },
      { id: 'joint', elevationFt: 10 },
      { id: 'ain', elevationFt: 35, demandGpm: 0 },
      { id: 'aout', elevationFt: 35 },
      { id: 't1', elevationFt: 45 },
      { id: 't2', elevationFt: 30 },
    ],
    links: [
      {
        kind: 'supplyCurve',
        id: 'hydrant',
        from: 'main',
        to: 'outlet',
        staticPsi: 62,
        residualPsi: 44,
        testGpm: 1060,
      },
      {
        kind: 'loss',
        id: 'clapper',
        from: 'outlet',
        to: 'supply',
        lossPsi: 10,
        atGpm: 1000,
        check: true,
      },
      { kind: 'loss', id: 'suction', from: 'outlet', to: 'bin', lossPsi: 8, atGpm: 1000 },
      { kind: 'pump', id: 'booster', from: 'bin', to: 'bout', capability: CAPABILITY, ...booster },
      { kind: 'loss', id: 'back', from: 'bout', to: 'supply', lossPsi: 3, atGpm: 1000 },
      { kind: 'hose', id: 'lay1', from: 'supply', to: 'joint', coefficient: 0.08, lengthFt: 300 },
      { kind: 'hose', id: 'lay2', from: 'joint', to: 'ain', coefficient: 0.08, lengthFt: 400 },
      { kind: 'hose', id: 'lay3', from: 'supply', to: 'ain', coefficient: 0.8, lengthFt: 700 },
      { kind: 'pump', id: 'attack', from: 'ain', to: 'aout', capability: CAPABILITY, ...attack },
      { kind: 'hose', id: 'line1', from: 'aout', to: 't1', coefficient: 15.5, lengthFt: 200 },
      { kind: 'nozzle', id: 'n1', from: 't1', k: 21 },
      { kind: 'hose', id: 'line2', from: 'aout', to: 't2', coefficient: 2, lengthFt: 200 },
      { kind: 'nozzle', id: 'n2', from: 't2', k: 37 },
    ],
  };
}

/** Every flow and pressure must move as the rates say. */
function compare(
  spec: NetworkSpec,
  parameter: Parameter,
  set: (network: Network, value: number) => void,
  at: number,
  step: number,
): void {
  const network = buildNetwork(spec);
  const answer = (value: number) => {
    set(network, value);
    network.solve();
    return [...network.flowGpm, ...network.pressurePsi];
  };
  const above = answer(at + step);
  const below = answer(at - step);
  answer(at);
  const { flowGpm, pressurePsi } = network.derivatives(parameter);
  [...flowGpm, ...pressurePsi].forEach((rate, k) => {
    const found = (above[k]! - below[k]!) / (2 * step);
    expect(Math.abs(rate - found), `${k}: ${rate}, differences say ${found}`).toBeLessThan(
      1e-4 * (1 + Math.abs(found)),
    );
  });
}

const held = { pdpPsi: 120 };
const fixed = (network: Network, psi: number) => network.setFixedPsi('main', psi);
const demand = (network: Network, gpm: number) => network.setDemandGpm('ain', gpm);

describe('rates of change', () => {
  it('with a discharge pressure that is held', () => {
    const set = (network: Network, psi: number) => network.setPdpPsi('attack', psi);
    compare(scene(held, { pdpPsi: 150 }), { kind: 'pdpPsi', pump: 'attack' }, set, 150, 0.01);
  });

  it('with the booster’s, the clapper shut', () => {
    const set = (network: Network, psi: number) => network.setPdpPsi('booster', psi);
    compare(scene(held, { pdpPsi: 150 }), { kind: 'pdpPsi', pump: 'booster' }, set, 120, 0.01);
  });

  it('with the booster’s, the clapper open beside it', () => {
    const set = (network: Network, psi: number) => network.setPdpPsi('booster', psi);
    const spec = scene({ pdpPsi: 50 }, { pdpPsi: 150 });
    expect(buildNetwork(spec).solve().flowOf('clapper')).toBeGreaterThan(10);
    compare(spec, { kind: 'pdpPsi', pump: 'booster' }, set, 50, 0.01);
  });

  it('with a setting that is out of reach: none', () => {
    const network = buildNetwork(scene({ pdpPsi: 400 }, { pdpPsi: 150 })).solve();
    const { flowGpm } = network.derivatives({ kind: 'pdpPsi', pump: 'booster' });
    expect(network.stateOf('booster')).toBe('at capability');
    expect(Math.max(...flowGpm.map(Math.abs))).toBe(0);
  });

  it('with the pressure of the main, the booster holding', () => {
    const spec = scene(held, { pdpPsi: 150 });
    compare(spec, { kind: 'fixedPsi', node: 'main' }, fixed, 62, 0.01);
  });

  it('with the pressure of the main, the booster throttled', () => {
    const spec = scene({ speedFraction: 0.6 }, { pdpPsi: 150 });
    compare(spec, { kind: 'fixedPsi', node: 'main' }, fixed, 62, 0.01);
  });

  it('with the pressure of the main, water only passing', () => {
    const spec = scene({ idle: true, passLoss: { lossPsi: 4, atGpm: 1000 } }, { idle: true });
    compare(spec, { kind: 'fixedPsi', node: 'main' }, fixed, 62, 0.01);
  });

  it('with a speed', () => {
    const set = (network: Network, speed: number) => network.setSpeed('booster', speed);
    const spec = scene({ speedFraction: 0.6 }, { pdpPsi: 150 });
    compare(spec, { kind: 'speedFraction', pump: 'booster' }, set, 0.6, 1e-5);
  });

  it('with a demand', () => {
    compare(scene(held, { pdpPsi: 150 }), { kind: 'demandGpm', node: 'ain' }, demand, 50, 0.01);
  });

  it('with a demand, an intake protected', () => {
    const spec = scene({ pdpPsi: 250, protectIntakePsi: 51 }, { pdpPsi: 250 });
    const network = buildNetwork(spec).solve();
    expect(network.stateOf('booster')).toBe('protecting intake');
    compare(spec, { kind: 'demandGpm', node: 'ain' }, demand, 50, 0.01);
  });

  it('in a line that a check shuts off, which stands with its source', () => {
    const spec: NetworkSpec = {
      nodes: [
        { id: 'strong', fixedPsi: 80 },
        { id: 'weak', fixedPsi: 40 },
        { id: 'joint' },
        { id: 'end', demandGpm: 300 },
      ],
      links: [
        { kind: 'hose', id: 'a', from: 'strong', to: 'end', coefficient: 0.8, lengthFt: 100 },
        { kind: 'hose', id: 'b', from: 'weak', to: 'joint', coefficient: 0.8, lengthFt: 100 },
        {
          kind: 'hose',
          id: 'c',
          from: 'joint',
          to: 'end',
          coefficient: 0.8,
          lengthFt: 100,
          check: true,
        },
      ],
    };
    const set = (network: Network, psi: number) => network.setFixedPsi('weak', psi);
    compare(spec, { kind: 'fixedPsi', node: 'weak' }, set, 40, 0.01);
  });
});
