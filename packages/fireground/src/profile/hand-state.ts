import type { LineState, RigState, SupplyState } from '../questions/answers.ts';

/** Parts of a solved plan written by hand, for checks against sums done by hand. */

export function handLine(
  id: string,
  flowGpm: number,
  inletPsi: number,
  outletPsi: number,
  more: Partial<LineState> = {},
): LineState {
  const { elevationPsi = 0, valveLossPsi = 0 } = more;
  return {
    id,
    flowGpm,
    perLineGpm: flowGpm,
    inletPsi,
    outletPsi,
    frictionPsi: inletPsi - outletPsi - elevationPsi - valveLossPsi,
    elevationPsi,
    valveLossPsi,
    coefficient: 0.08,
    coefficientOrigin: { kind: 'common practice', text: 'by hand' },
    velocityFtS: 0,
    volumeGal: 0,
    greatestPsi: Math.max(inletPsi, outletPsi),
    limitPsi: 185,
    ...more,
  };
}

export function handRig(
  id: string,
  flowGpm: number,
  intakePsi: number,
  pdpPsi: number,
  more: Partial<RigState> = {},
): RigState {
  return {
    id,
    role: 'attack',
    setting: { mode: 'governed', pdpPsi },
    intakePsi,
    pdpPsi,
    netPsi: pdpPsi - intakePsi,
    flowGpm,
    intakeGpm: {},
    state: 'holding',
    capabilityPsi: 0,
    capabilityFraction: 0,
    beyondRating: false,
    drafting: false,
    tankGpm: 0,
    reliefGpm: 0,
    ...more,
  };
}

export function handState(given: Partial<SupplyState>): SupplyState {
  return {
    lines: [],
    hydrants: [],
    assistValves: [],
    rigs: [],
    nozzles: [],
    appliances: [],
    sceneGpm: 0,
    sceneIntakePsi: 0,
    residual: { massGpm: 0, energyPsi: 0 },
    iterations: 0,
    ...given,
  };
}
