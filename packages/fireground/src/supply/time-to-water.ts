/** When water comes: arrivals, laying, connecting, filling the hose, pumping. */
import { hoseVolumeGal } from '../catalogue/hose.ts';
import type { LegWork } from './arrangement.ts';
import type { TimeToWater, WaterTimes } from './choice.ts';
import { rigName } from './crew.ts';
import { type Leg, sourceName } from './leg.ts';
import type { RespondingRig } from './situation.ts';
import type { TaskTimes } from './task-times.ts';

type Step = TimeToWater['steps'][number];

/**
 * Steps of a way and when its water is there. All lay at once as they come; a pump that lays
 * does so before it hooks up; several sources are worked at side by side.
 */
export function timeToWater(
  attack: RespondingRig,
  work: readonly LegWork[],
  times: TaskTimes,
): TimeToWater {
  const steps: Step[] = [];
  const when = waterTimes(attack, work, times, steps);
  steps.sort((one, two) => one.startMin - two.startMin || one.endMin - two.endMin);
  return { steps, ...when };
}

/**
 * When a way's water is there.
 * @param steps takes the steps, where they are wanted
 */
export function waterTimes(
  attack: RespondingRig,
  work: readonly LegWork[],
  times: TaskTimes,
  steps?: Step[],
): WaterTimes {
  let waterAtMin = Number.POSITIVE_INFINITY;
  let fullAtMin = Number.NEGATIVE_INFINITY;
  for (const one of work) {
    const leg = legTime(attack, one, times, steps);
    waterAtMin = Math.min(waterAtMin, leg.waterAtMin);
    fullAtMin = Math.max(fullAtMin, leg.fullAtMin);
  }
  return { waterAtMin, fullAtMin };
}

function legTime(
  attack: RespondingRig,
  { leg, lay, suction }: LegWork,
  times: TaskTimes,
  steps: Step[] | undefined,
): WaterTimes {
  const step = (rig: RespondingRig, text: string, startMin: number, lastsMin: number): number => {
    const endMin = startMin + lastsMin;
    steps?.push({ text: `${rigName(rig)} ${text}`, startMin, endMin, rigId: rig.rig.id });
    return endMin;
  };
  const from = sourceName(leg);

  // A rig that lays two lines lays them at once, from two beds.
  const longest = new Map<RespondingRig, number>();
  for (const { rig, lengthFt } of lay) longest.set(rig, Math.max(longest.get(rig) ?? 0, lengthFt));
  const free = new Map<RespondingRig, number>();
  let laidAt = 0;
  let atHydrant = Number.POSITIVE_INFINITY;
  for (const [rig, lengthFt] of longest) {
    const lastsMin = times.stopToLayMin + lengthFt / times.layFtPerMin;
    const end = step(rig, `lays from ${from}`, rig.arrivesMin, lastsMin);
    free.set(rig, end);
    laidAt = Math.max(laidAt, end);
    atHydrant = Math.min(atHydrant, rig.arrivesMin + times.stopToLayMin);
  }
  const atScene = Math.max(laidAt, attack.arrivesMin);
  const connectedAt = step(
    attack,
    'connects the supply to its intake',
    atScene,
    times.connectIntakeMin,
  );

  let pumpsReadyAt = 0;
  for (const [at, rig] of leg.pumps.entries()) {
    const draft = at === 0 && leg.source.kind === 'water';
    const start = Math.max(rig.arrivesMin, free.get(rig) ?? 0);
    const lines = at === 0 ? suction.length * times.suctionLineMin : 0;
    const lastsMin = (draft ? times.setUpDraftMin : times.hookUpPumpMin) + lines;
    const text = draft ? `sets up at draft at ${from}` : hookUpText(at, from);
    pumpsReadyAt = Math.max(pumpsReadyAt, step(rig, text, start, lastsMin));
  }

  const chargeMin = volumeGal(leg) / times.chargeGpm;
  const alone = leg.pumps.length === 0;
  if (alone || leg.valve) {
    const fitMin = leg.valve ? times.fitValveMin : 0;
    const first = [...longest.keys()][0] ?? attack;
    const what = leg.valve ? `connects to ${from} with its assist valve` : `connects to ${from}`;
    const openAt = step(first, what, atHydrant, times.connectHydrantMin + fitMin);
    const waterAtMin = charge(steps, Math.max(connectedAt, openAt), chargeMin);
    if (alone) return { waterAtMin, fullAtMin: waterAtMin };
    const boostAt = Math.max(waterAtMin, pumpsReadyAt);
    const fullAtMin = step(leg.pumps[0]!, 'raises the pressure', boostAt, times.setPressureMin);
    return { waterAtMin, fullAtMin };
  }
  const waterAtMin = charge(steps, Math.max(connectedAt, pumpsReadyAt), chargeMin);
  const fullAtMin = step(leg.pumps[0]!, 'raises the pressure', waterAtMin, times.setPressureMin);
  return { waterAtMin, fullAtMin };
}

function hookUpText(at: number, from: string): string {
  return at === 0 ? `hooks up at ${from}` : 'hooks up in the line';
}

function charge(steps: Step[] | undefined, startMin: number, lastsMin: number): number {
  steps?.push({ text: 'The hose fills', startMin, endMin: startMin + lastsMin });
  return startMin + lastsMin;
}

function volumeGal(leg: Leg): number {
  let gallons = 0;
  for (const { lines, fromFt, toFt } of leg.stretches)
    for (const size of lines) gallons += hoseVolumeGal(size, toFt - fromFt);
  return gallons;
}
