import type { NozzleMake } from '../catalogue/nozzles.ts';
import type { HoseSize, Plan } from '../plan/plan.ts';
import { type ForwardLayOptions, forwardLay } from './forward-lay.ts';
import { newLine, newNozzle, newSprinklerConnection, newStandpipe } from './pieces.ts';

interface ConnectionOptions extends Omit<ForwardLayOptions, 'attackLines'> {
  /** Lines from the engine to the connection. */
  connection?: { lines?: number; hose?: HoseSize; lengthFt?: number };
}

export interface StandpipeOptions extends ConnectionOptions {
  /** Floor that the hand line works from; the ground floor is 1. */
  floor?: number;
  /** Height of a storey [ft]; 10 where left out. */
  storeyFt?: number;
  handLine?: { hose?: HoseSize; lengthFt?: number; nozzle?: NozzleMake };
}

export interface SprinklerOptions extends ConnectionOptions {
  /** What the system takes at its base pressure, from its placard. */
  demandGpm?: number;
  basePsi?: number;
}

function connectionLines(id: string, connection: ConnectionOptions['connection'] = {}) {
  const { lines = 2, hose = '3', lengthFt = 100 } = connection;
  return Array.from({ length: lines }, (_, index) =>
    newLine(
      `connection${index + 1}`,
      `A1.discharge${index + 1}`,
      `${id}.inlet${index + 1}`,
      hose,
      lengthFt,
    ),
  );
}

/**
 * An engine on a hydrant that feeds a standpipe, with one hand line from an upper floor: 150 ft of 2½ in
 * with a 1⅛ in tip on floor 5 where nothing is said. Ids: `H1`, `A1`, `SP1`, `N1`; lines
 * `lay`, `connection1` …, `attack1`.
 */
export function standpipeSupply(options: StandpipeOptions = {}): Plan {
  const { floor = 5, storeyFt = 10, connection, handLine = {}, ...lay } = options;
  const plan = forwardLay({ title: 'Standpipe', ...lay });
  const ground = lay.lay?.riseFt ?? 0;
  const outletElevationFt = ground + (floor - 1) * storeyFt;
  const make = handLine.nozzle ?? { kind: 'smooth-bore', tipIn: 1.125, ratedPsi: 50 };
  const attack = newLine(
    'attack1',
    'SP1.outlet1',
    'N1.inlet',
    handLine.hose ?? '2-1/2',
    handLine.lengthFt ?? 150,
  );
  const inlets = Math.max(2, connection?.lines ?? 2);
  return {
    ...plan,
    appliances: [newStandpipe('SP1', { elevationFt: ground, outletElevationFt, inlets })],
    nozzles: [newNozzle('N1', make, { elevationFt: outletElevationFt })],
    lines: [...plan.lines, ...connectionLines('SP1', connection), attack],
  };
}

/**
 * An engine on a hydrant that feeds a sprinkler connection; 600 gpm at 100 psi at the
 * connection where nothing is said. Ids: `H1`, `A1`, `FDC1`; lines `lay`, `connection1` ….
 */
export function sprinklerSupply(options: SprinklerOptions = {}): Plan {
  const { demandGpm = 600, basePsi = 100, connection, ...lay } = options;
  const plan = forwardLay({ title: 'Sprinkler connection', ...lay });
  const elevationFt = lay.lay?.riseFt ?? 0;
  const inlets = Math.max(2, connection?.lines ?? 2);
  return {
    ...plan,
    appliances: [newSprinklerConnection('FDC1', { demandGpm, basePsi, elevationFt, inlets })],
    lines: [...plan.lines, ...connectionLines('FDC1', connection)],
  };
}
