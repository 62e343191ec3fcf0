import { onFineGrid } from './grid.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState, HoseEndState } from './state.ts';
import { emptyTally } from './tally.ts';

/** The state of a scene before its first tick; pressures not yet known. */
export function initialState(scene: DrillScene, seed: number): DrillState {
  return {
    format: 1,
    tick: 0,
    seq: 0,
    seed,
    paused: false,
    speed: 1,
    hoses: scene.hoses.map((hose) => {
      const end = (given: { port?: string; at: string }, waterGal: number): HoseEndState => ({
        port: given.port ?? null,
        at: given.at,
        psi: 0,
        gpm: 0,
        waterGal,
      });
      return {
        id: hose.id,
        phase: hose.full ? 'full' : 'filling',
        from: end(hose.from, hose.full ? hose.capacityGal : 0),
        to: end(hose.to, 0),
        flowGpm: 0,
        airPsi: 0,
        airGal: hose.full ? 0 : onFineGrid(hose.capacityGal),
      };
    }),
    valves: scene.valves.map(({ id, opening, travelS }) => ({
      id,
      opening: onFineGrid(opening),
      target: onFineGrid(opening),
      perS: onFineGrid(1 / travelS),
    })),
    pumps: scene.pumps.map(({ rigId, inGear, setting, primed }) => {
      const governed = setting.mode === 'governed';
      const pdpPsi = governed ? setting.pdpPsi : 0;
      const speed = governed ? 1 : setting.speedFraction;
      return {
        rigId,
        inGear,
        mode: setting.mode,
        targetPdpPsi: pdpPsi,
        targetSpeed: speed,
        pdpPsi: inGear ? pdpPsi : 0,
        speed: inGear ? speed : 0.3,
        condition: 'out of gear',
        primed,
        dryS: 0,
        cavitatedTick: -1,
        airGal: 0,
        intakePsi: 0,
        dischargePsi: 0,
        flowGpm: 0,
        tankGpm: 0,
        reliefGpm: 0,
        intakeGaugePsi: 0,
        dischargeGaugePsi: 0,
      };
    }),
    tanks: scene.tanks.map(({ rigId, gal }) => ({ rigId, gal: onFineGrid(gal) })),
    hydrants: scene.plan.hydrants.map(({ id, staticPsi }) => ({
      id,
      flowGpm: 0,
      mainPsi: staticPsi,
      barrelPsi: 0,
    })),
    assistValves: scene.plan.appliances
      .filter((one) => one.kind === 'assist-valve')
      .map(({ id }) => ({
        id,
        hydrantPsi: 0,
        supplyPsi: 0,
        suctionPsi: 0,
        dischargePsi: 0,
        clapperGpm: 0,
        suctionGpm: 0,
        dischargeGpm: 0,
        clapper: 'shut',
      })),
    nozzles: scene.plan.nozzles.map(({ id }) => ({ id, flowGpm: 0, pressurePsi: 0 })),
    uncapped: [],
    faults: structuredClone(scene.faults),
    radio: [],
    said: [],
    water: { sourceGal: 0, nozzleGal: 0, wasteGal: 0, tankGal: 0, hoseGal: 0 },
    tally: emptyTally(scene),
  };
}
