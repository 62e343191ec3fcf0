/**
 * Time to solve a network, against the EPANET toolkit (a general-purpose solver, compiled to
 * WebAssembly) on the same networks in the same run. Both work to the same accuracy or better, and
 * on both sides every flow and pressure is read.
 */
import { readFileSync } from 'node:fs';
import { buildNetwork, type NetworkSpec } from '@plugside/hydraulics';
import { EpanetNetwork, loadEpanet } from '../packages/hydraulics/proof/epanet-network.ts';
import { type NetworkCase, readNetworkCase } from '../packages/hydraulics/proof/network-cases.ts';
import { measure, printTable } from './measure.ts';

const cases = JSON.parse(
  readFileSync('packages/hydraulics/proof/cases/network-cases.json', 'utf8'),
) as NetworkCase[];
const scene = (id: string) => readNetworkCase(cases.find((one) => one.id === id)!);

/** A lay, an engine and one line. */
const oneLine: NetworkSpec = {
  nodes: [
    { id: 'main', fixedPsi: 65 },
    { id: 'outlet' },
    { id: 'intake' },
    { id: 'out' },
    { id: 'tip' },
  ],
  links: [
    {
      kind: 'supplyCurve',
      id: 'hydrant',
      from: 'main',
      to: 'outlet',
      staticPsi: 65,
      residualPsi: 50,
      testGpm: 1200,
    },
    { kind: 'hose', id: 'lay', from: 'outlet', to: 'intake', coefficient: 0.08, lengthFt: 500 },
    {
      kind: 'pump',
      id: 'booster',
      from: 'intake',
      to: 'out',
      capability: [
        [0, 375],
        [750, 250],
        [1050, 200],
        [1500, 150],
        [1875, 120],
        [2250, 100],
      ],
      pdpPsi: 150,
    },
    { kind: 'hose', id: 'line', from: 'out', to: 'tip', coefficient: 15.5, lengthFt: 200 },
    { kind: 'nozzle', id: 'nozzle', from: 'tip', k: 15 },
  ],
};

/** Pumps in line, a scene like N1's at the end. */
function relay(pumps: number): NetworkSpec {
  const { nodes, links } = scene('N4');
  const pump = links.find((link) => link.kind === 'pump')!;
  const grown = { nodes: [...nodes], links: links.filter((link) => link.id !== 's1') };
  let at = 'H';
  for (let k = 0; k < pumps; k++) {
    grown.nodes.push({ id: `p${k}i` }, { id: `p${k}o` });
    grown.links.push(
      { kind: 'hose', id: `s${k}x`, from: at, to: `p${k}i`, coefficient: 0.08, lengthFt: 400 },
      { ...pump, id: `p${k}x`, from: `p${k}i`, to: `p${k}o` },
    );
    at = `p${k}o`;
  }
  grown.links.push({
    kind: 'hose',
    id: 's1',
    from: at,
    to: 'in1',
    coefficient: 0.08,
    lengthFt: 400,
  });
  return grown;
}

const networks: [string, NetworkSpec, pump: string][] = [
  ['one engine, one line', oneLine, 'booster'],
  ['N1: boosted scene, three lines', scene('N1'), 'booster'],
  ['N3: two hydrants, master stream', scene('N3'), 'attack'],
  ['N5: leader line and wye', scene('N5'), 'attack'],
  ['relay of 13 pumps', relay(10), 'p0x'],
];

const workspace = await loadEpanet();
for (const [name, spec, pump] of networks) {
  const ours = buildNetwork(spec);
  const theirs = new EpanetNetwork(workspace, spec, true);
  if (theirs.solve() !== 0) throw new Error(`${name}: the other solver warns.`);
  ours.solve();
  for (const { id } of spec.links) {
    const apart = Math.abs(ours.flowOf(id) - theirs.flowOf(id));
    if (apart > 0.1 + 1e-3 * Math.abs(ours.flowOf(id))) throw new Error(`${name}: ${id} differs.`);
  }
  const psi = (spec.links.find(({ id }) => id === pump) as { pdpPsi: number }).pdpPsi;
  let turn = 0;
  const nudged = () => psi + 0.1 * (++turn % 7);
  printTable(`${name}: ${spec.nodes.length} nodes, ${spec.links.length} links`, [
    measure('EPANET, cold', () => {
      theirs.solve();
      return readTheirs(theirs);
    }),
    measure('EPANET, cold, one setting changed', () => {
      theirs.setPdpPsi(pump, nudged());
      theirs.solve();
      return readTheirs(theirs);
    }),
    measure('ours, cold', () => readOurs(ours.solve())),
    measure('ours, warm, one setting changed', () => {
      ours.setPdpPsi(pump, nudged());
      return readOurs(ours.solve({ warm: true }));
    }),
    measure('ours, build and solve', () => readOurs(buildNetwork(spec).solve())),
  ]);
  theirs.close();
}

const spec = scene('N1');
const ours = buildNetwork(spec);
const theirs = new EpanetNetwork(workspace, spec, true);
const settings = Array.from({ length: 200 }, (_, k) => 90 + 0.5 * k);
printTable('N1: sweep of 200 booster settings', [
  measure('EPANET', () => {
    let sum = 0;
    for (const psi of settings) {
      theirs.setPdpPsi('booster', psi);
      theirs.solve();
      sum += readTheirs(theirs);
    }
    return sum;
  }),
  measure('ours', () => {
    let sum = 0;
    for (const psi of settings) {
      ours.setPdpPsi('booster', psi);
      sum += readOurs(ours.solve({ warm: true }));
    }
    return sum;
  }),
]);
theirs.close();

function readOurs({ flowGpm, pressurePsi }: ReturnType<typeof buildNetwork>): number {
  let sum = 0;
  for (let k = 0; k < flowGpm.length; k++) sum += flowGpm[k]!;
  for (let k = 0; k < pressurePsi.length; k++) sum += pressurePsi[k]!;
  return sum;
}

function readTheirs(network: EpanetNetwork): number {
  const { flows, heads } = network.readAll();
  let sum = 0;
  for (let k = 0; k < flows.length; k++) sum += flows[k]!;
  for (let k = 0; k < heads.length; k++) sum += heads[k]!;
  return sum;
}
