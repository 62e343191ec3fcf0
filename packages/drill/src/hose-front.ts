/**
 * Water running into a hose that is not full: a column of water behind a front, air before it. The column
 * loses friction over the length that it fills and, at the front, the pressure that its own speed is worth;
 * the air in its way leaves by whatever is open at the far end, or is squeezed.
 */
import { hoseCatalogue, nozzleK, splitPortRef } from '@plugside/fireground';
import { PSI_PER_FT } from '@plugside/hydraulics';
import { bleederBoreIn } from './defaults.ts';
import type { HoseEnd } from './names.ts';
import { portElevationFt } from './port-node.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene, SceneHose } from './scene.ts';
import { type DrillState, type HoseState, TICKS_PER_S } from './state.ts';
import { boreK, leastOpening } from './valve-loss.ts';

/** Pressure of the air at sea level [psi]. */
export const AIR_PSI = 14.696;
/**
 * Air leaves an opening so many times as fast as water would at the same pressure [-]. By density it would be
 * √800 = 28; squeezed air chokes, and a ½ in hole passes some 230 ft³ of free air a minute at 50 psi (from
 * memory), 390 gpm as it stands in the hose: 12 is right there at 25 psi, and ours.
 */
export const AIR_TO_WATER = 12;
/** Least length of a column [ft]: an outlet's own throat. */
const THROAT_FT = 5;
/** A column presses at an end from this pressure on [psi]. */
const PRESSES_PSI = 0.2;
/** Of a valve's bore, what lets air into a pump: it must pass the impeller. Ours. */
export const THROUGH_PUMP = 0.1;
/** Flow under which a squeezed column is taken to have come to rest [gpm]. */
const SLOW_GPM = 5;

export const otherEnd = { from: 'to', to: 'from' } as const;

/** How a front stands: its loss [psi/gpm²], the pressure of the air before it [psi], and where that air goes. */
export interface Front {
  lossFactor: number;
  airPsi: number;
  /** Rig whose pump takes the air in. */
  intoPump?: string;
  /** Air leaves to the open: none is squeezed. */
  vented: boolean;
  /** Air leaves into water at the far end. */
  drivenOut?: boolean;
}

/** Water in a hose [gal]. */
export function waterIn(hose: HoseState): number {
  return hose.from.waterGal + hose.to.waterGal;
}

/** Friction factor of a length of a hose, all its lines [psi/gpm²]. */
function frictionFactor(hose: SceneHose, lengthFt: number, times: number): number {
  return (times * hose.coefficient * lengthFt) / 1e6 / (hose.count * hose.count);
}

/** How water runs in at an end that is coupled. */
export function frontAt(drill: Drill, at: number, end: HoseEnd): Front {
  const { scene, state } = drill;
  const piece = scene.hoses[at]!;
  const hose = state.hoses[at]!;
  const bore = boreK(hoseCatalogue[piece.hose].diameterIn) * piece.count;
  const speedLoss = 1 / (bore * bore);
  if (hose.phase === 'burst' || hose.phase === 'open' || hose.phase === 'full') {
    const share = hose.phase === 'burst' ? 0.5 : 1;
    const friction = frictionFactor(piece, piece.lengthFt * share, 1);
    return { lossFactor: friction + speedLoss, airPsi: 0, vented: true };
  }
  const column = piece.lengthFt * (hose[end].waterGal / piece.capacityGal);
  const lossFactor = frictionFactor(piece, Math.max(THROAT_FT, column), 1) + speedLoss;
  const far = otherEnd[end];
  const against = pressureBehind(drill, at, far);
  if (against > PRESSES_PSI) {
    // Water at both ends: the air is driven out on the weaker side, once it is squeezed as far as that.
    const weaker = Math.min(hose[end].psi > PRESSES_PSI ? hose[end].psi : against, against);
    const squeezed = squeezedPsi(hose, piece);
    if (squeezed >= weaker) return { lossFactor, airPsi: weaker, vented: false, drivenOut: true };
    return squeezedFront(hose, piece, end, lossFactor);
  }
  const vent = ventAt(drill, at, far);
  if (vent.k > 0) {
    const airK = AIR_TO_WATER * vent.k;
    const front: Front = { lossFactor: lossFactor + 1 / (airK * airK), airPsi: 0, vented: true };
    if (vent.intoPump !== undefined) front.intoPump = vent.intoPump;
    return front;
  }
  return squeezedFront(hose, piece, end, lossFactor);
}

/** Squeezed air rises within the step: its stiffness, taken at the last step's flow, is part of the loss. */
function squeezedFront(hose: HoseState, piece: SceneHose, end: HoseEnd, lossFactor: number): Front {
  const airPsi = squeezedPsi(hose, piece);
  const voidGal = Math.max(1e-3, piece.capacityGal - waterIn(hose));
  const stiffness = (airPsi + AIR_PSI) / voidGal / 60 / TICKS_PER_S;
  const last = Math.max(SLOW_GPM, hose[end].gpm);
  return { lossFactor: lossFactor + stiffness / last, airPsi, vented: false };
}

/** Pressure that water brings to an end from beyond it [psi]; behind an assist valve's inlet, the supply's. */
function pressureBehind({ scene, state }: Drill, at: number, end: HoseEnd): number {
  const { port, psi } = state.hoses[at]![end];
  if (port === null) return 0;
  const { pieceId, port: name } = splitPortRef(port);
  if (name !== 'pump-discharge') return psi;
  const valve = scene.plan.appliances.some((one) => one.id === pieceId);
  const now = valve ? state.assistValves.find((one) => one.id === pieceId) : undefined;
  return Math.max(psi, now?.supplyPsi ?? 0);
}

/** Pressure of the air that is left in a hose [psi], by Boyle's law. */
export function squeezedPsi(hose: HoseState, piece: SceneHose): number {
  const voidGal = Math.max(1e-3, piece.capacityGal - waterIn(hose));
  return Math.max(0, AIR_PSI * (hose.airGal / voidGal - 1));
}

/** Air at the pressure of the open that fills a room at a pressure [gal]. */
export function airInGal(voidGal: number, psi: number): number {
  return (voidGal * (psi + AIR_PSI)) / AIR_PSI;
}

/** The way out for air at an end without water: K for water [gpm/√psi], 0 where shut. */
function ventAt(drill: Drill, at: number, end: HoseEnd): { k: number; intoPump?: string } {
  const { scene, state } = drill;
  const piece = scene.hoses[at]!;
  const { port } = state.hoses[at]![end];
  const bore = boreK(hoseCatalogue[piece.hose].diameterIn) * piece.count;
  if (port === null) return { k: bore };
  const { pieceId, port: name } = splitPortRef(port);
  const opening = (id: string) => openingOf(state, id);
  const nozzle = scene.plan.nozzles.find((one) => one.id === pieceId);
  if (nozzle) {
    const open = opening(`${pieceId}.bale`);
    return { k: open < leastOpening ? 0 : nozzleK(nozzle) * open };
  }
  if (name.startsWith('intake')) {
    const bleeder = bleederK(state, port);
    const valve = opening(port);
    if (valve < leastOpening) return { k: bleeder };
    return { k: bleeder + valve * THROUGH_PUMP * bore, intoPump: pieceId };
  }
  if (name.startsWith('discharge')) {
    const valve = opening(port);
    return {
      k: bleederK(state, port) + (valve < leastOpening ? 0 : valve * THROUGH_PUMP * bore),
    };
  }
  if (scene.valves.some((valve) => valve.id === port))
    return { k: opening(port) < leastOpening ? 0 : bore };
  return { k: bore };
}

function bleederK(state: DrillState, port: string): number {
  return openingOf(state, `${port}.bleeder`) * 0.9 * boreK(bleederBoreIn);
}

/** Of the air that comes to an intake, the share that goes into the pump: the rest leaves by its bleeder. */
export function airToPumpShare(scene: DrillScene, state: DrillState, intake: string): number {
  const boreIn = scene.valves.find(({ id }) => id === intake)?.boreIn ?? 5;
  const pump = openingOf(state, intake) * THROUGH_PUMP * boreK(boreIn);
  const bleeder = bleederK(state, intake);
  return pump > 0 ? pump / (pump + bleeder) : 0;
}

function openingOf(state: DrillState, id: string): number {
  return state.valves.find((valve) => valve.id === id)?.opening ?? 0;
}

/** Height of the front above the end it comes from, as pressure [psi]. */
export function frontRisePsi(drill: Drill, at: number, end: HoseEnd): number {
  const { scene, state } = drill;
  const piece = scene.hoses[at]!;
  const hose = state.hoses[at]!;
  if (hose.phase === 'filling' && hose[end].waterGal === 0) return 0;
  const heightFt = (side: HoseEnd) =>
    portElevationFt(scene.plan, hose[side].port ?? piece[side].plannedPort);
  const share = hose.phase === 'filling' ? hose[end].waterGal / piece.capacityGal : 1;
  const part = hose.phase === 'burst' ? 0.5 : share;
  return PSI_PER_FT * part * (heightFt(otherEnd[end]) - heightFt(end));
}
