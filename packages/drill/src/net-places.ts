/** Where each piece of a drill stands in its network: looked up by name once, when the network is built. */
import { nodeOfPort } from './port-node.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';

/** Indices as `DrillNetwork.link` and `node` give them: -1 where it is not in the network. */
export interface NetPlaces {
  hoses: { flow: number; from: HoseEndPlace; to: HoseEndPlace }[];
  hydrants: { flow: number; main: number; barrel: number }[];
  pumps: {
    pump: number;
    intake: number;
    discharge: number;
    tankToPump: number;
    relief: number;
  }[];
  nozzles: { tip: number; node: number }[];
}

interface HoseEndPlace {
  /** Where it is not full: its opening to the air. */
  front: number;
  /** Of the port that it is on. */
  node: number;
}

export function placesIn(
  { plan }: DrillScene,
  state: DrillState,
  link: (id: string) => number,
  node: (id: string) => number,
  sharers: readonly (readonly string[])[],
): NetPlaces {
  const nodeAt = (port: string | null) => (port === null ? -1 : node(nodeOfPort(port)));
  return {
    hoses: state.hoses.map(({ id, from, to }) => ({
      flow: link(`${id}:hose`),
      from: { front: link(`${id}:from`), node: nodeAt(from.port) },
      to: { front: link(`${id}:to`), node: nodeAt(to.port) },
    })),
    hydrants: state.hydrants.map(({ id }) => {
      // The curve of a shared main carries others' water too.
      const shares = sharers.some((ids) => ids.includes(id));
      return {
        flow: link(`${id}:${shares ? 'stem' : 'curve'}`),
        main: node(`${id}:main`),
        barrel: node(`${id}:barrel`),
      };
    }),
    pumps: state.pumps.map(({ rigId }) => ({
      pump: link(`${rigId}:pump`),
      intake: node(`${rigId}:intake`),
      discharge: node(`${rigId}:discharge`),
      tankToPump: link(`${rigId}:tankToPump`),
      relief: link(`${rigId}:relief`),
    })),
    nozzles: plan.nozzles.map(({ id, on }) => ({
      tip: link(`${id}:tip`),
      node: nodeAt(on ?? `${id}.inlet`),
    })),
  };
}
