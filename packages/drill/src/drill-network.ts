/**
 * The network behind one arrangement of a drill: which hose is on which port, which hose is full. It is
 * built when that changes; valves, settings and filling change in place. Pieces compile as they do in
 * a plan, so that a drill at rest has the plan's answer.
 */
import { addAppliance, addDraftSource, type PortRef } from '@plugside/fireground';
import { buildNetwork, type Network, NetworkError } from '@plugside/hydraulics';
import { clapperStuck } from './fault.ts';
import { addHose } from './hose-links.ts';
import { addDrillHydrants } from './hydrant-links.ts';
import { hydrantsNow, mainsNow } from './mains-now.ts';
import { type Making, type ValvedLink, valveOn } from './making.ts';
import { type NetPlaces, placesIn } from './net-places.ts';
import { nozzleLinks } from './nozzle-links.ts';
import { addOpenPort, gateOutlets, valveOnNozzle } from './outlet-links.ts';
import { addRig } from './rig-links.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import { withWater } from './with-water.ts';

export interface DrillNetwork {
  /** Left out: no water gets anywhere. */
  network: Network | undefined;
  /** The solver takes no such network. */
  refused: boolean;
  valved: ValvedLink[];
  /** Ids of the hydrants of each main that several draw on. */
  sharers: readonly (readonly string[])[];
  places: NetPlaces;
  /** Index of a link in `flowGpm`, of a node in `pressurePsi`; -1 where it is not in the network. */
  link(id: string): number;
  node(id: string): number;
}

/** Builds the network of a state's arrangement. */
export function buildDrillNetwork(scene: DrillScene, state: DrillState): DrillNetwork {
  const { plan } = scene;
  const ports = new Set<PortRef>(state.uncapped);
  for (const hose of state.hoses)
    for (const end of [hose.from, hose.to]) if (end.port !== null) ports.add(end.port);
  for (const one of plan.appliances) if (one.kind === 'assist-valve') ports.add(one.on);
  const used = (port: PortRef) => ports.has(port);
  const making: Making = { scene, state, draft: { nodes: new Map(), links: [] }, valved: [], used };

  const hydrants = hydrantsNow(scene, state);
  const mains = mainsNow(scene, state, hydrants);
  addDrillHydrants(making, hydrants, mains);
  for (const source of plan.drafts) addDraftSource(making.draft, source, used);
  for (const rig of plan.rigs) addRig(making, rig);
  for (const appliance of plan.appliances) {
    addAppliance(making.draft, appliance, used);
    gateOutlets(making, appliance.id, appliance.elevationFt);
    if (appliance.kind === 'assist-valve') {
      if (used(`${appliance.id}.pump-suction`))
        valveOn(making, `${appliance.id}:suction`, `${appliance.id}.handle`);
      const inlet = making.draft.links.find((link) => link.id === `${appliance.id}:discharge`);
      // A clapper of its own: an empty hose may be coupled here while the supply flows.
      if (inlet?.kind === 'loss') inlet.check = true;
      const clapper = making.draft.links.find((link) => link.id === `${appliance.id}:clapper`);
      if (clapper?.kind === 'loss' && clapperStuck(plan, state, appliance.id) === 'open')
        clapper.check = false;
    }
  }
  state.hoses.forEach((hose, at) => {
    addHose(making, hose, at);
  });
  for (const nozzle of plan.nozzles) nozzleLinks(making.draft, plan, nozzle);
  for (const nozzle of plan.nozzles) valveOnNozzle(making, nozzle.id);
  for (const port of state.uncapped) addOpenPort(making, port);
  return built(
    making,
    mains.map((main) => main.hydrants.map(({ id }) => id)),
  );
}

function built(
  { scene, state, draft, valved }: Making,
  sharers: DrillNetwork['sharers'],
): DrillNetwork {
  const spec = withWater({ nodes: [...draft.nodes.values()], links: draft.links });
  let network: Network | undefined;
  let refused = false;
  try {
    network = spec && buildNetwork(spec);
  } catch (error) {
    if (!(error instanceof NetworkError)) throw error;
    refused = true;
  }
  const links = new Map(network && spec?.links.map((link, at) => [link.id, at]));
  const nodes = new Map(network && spec?.nodes.map((node, at) => [node.id, at]));
  const link = (id: string) => links.get(id) ?? -1;
  const node = (id: string) => nodes.get(id) ?? -1;
  return {
    network,
    refused,
    valved: valved.filter((one) => links.has(one.link)),
    sharers,
    places: placesIn(scene, state, link, node, sharers),
    link,
    node,
  };
}
