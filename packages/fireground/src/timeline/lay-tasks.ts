import { QuantityError } from '@plugside/hydraulics';
import { practice } from '../catalogue/origins.ts';
import type { HoseSize, Origin } from '../plan/plan.ts';
import { type TaskTimes, usualTaskTimes } from '../supply/task-times.ts';
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { SupplyTask } from './schedule.ts';
import { chargingMin, layingMin } from './task-durations.ts';

/** A lay from a hydrant to the attack engine. */
export interface LayForTimeline {
  /** Who lays it, and when that rig is at the hydrant with a forward lay, or at the fire with a reverse lay [min]. */
  rig: { id: string; name?: string; arrivesMin: number };
  hose: HoseSize;
  lengthFt: number;
  count?: number;
  /** An engine that pumps at the hydrant before the line is charged. */
  booster?: { id: string; name?: string; arrivesMin: number };
}

/** Shown beside every time that no department gave. */
export const usualTimesOrigin: Origin = practice(
  'Common practice, no source: no published measurements were found. Time your own crews',
);

/**
 * What is done for a lay, with how long each takes: stop, lay, hydrant, intake, and filling the hose.
 * @param lay hose, length [ft], lines, rigs with their arrival [min]
 * @param options `times` of the department in place of the usual ones, with their `timesOrigin`;
 *   `units` for the words
 * @returns tasks for `timeline`, in order; the hydrant is seen to while the rig lays
 * Valid: crew enough to do both at once.
 * Outside: throws QuantityError.
 * Source: usualTaskTimes (common practice, no source); filling, chargingMin.
 */
export function layTasks(
  lay: LayForTimeline,
  options: { times?: Partial<TaskTimes>; timesOrigin?: Origin; units?: UnitSystem } = {},
): SupplyTask[] {
  const times = { ...usualTaskTimes, ...options.times };
  const { rig, hose, lengthFt, count = 1, booster } = lay;
  const say = sayIn(options.units ?? 'us');
  if (!(times.layFtPerMin > 0)) {
    throw new QuantityError({
      field: 'layFtPerMin',
      value: times.layFtPerMin,
      allowed: 'more than 0 ft/min',
      remedy: 'Give the speed at which hose comes off the rig.',
    });
  }
  const given = (key: keyof TaskTimes): Origin =>
    options.times?.[key] === undefined
      ? usualTimesOrigin
      : (options.timesOrigin ?? { kind: 'department', text: 'Timed by the department' });
  const name = rig.name ?? rig.id;
  const size = formatHoseSize(hose, options.units);
  const what = `${count > 1 ? `${count} lines, ` : ''}${say.full(lengthFt, 'length')} of ${size}`;
  const tasks: SupplyTask[] = [
    {
      id: 'stop',
      what: `${name} stops to lay.`,
      durationMin: times.stopToLayMin,
      notBeforeMin: rig.arrivesMin,
      rigId: rig.id,
      origin: given('stopToLayMin'),
    },
    {
      id: 'lay',
      what: `${name} lays ${what}.`,
      durationMin: layingMin(lengthFt, { speedFtS: times.layFtPerMin / 60 }),
      rigId: rig.id,
      origin: given('layFtPerMin'),
    },
    {
      id: 'intake',
      what: 'The line goes onto the attack engine.',
      durationMin: times.connectIntakeMin * count,
      rigId: rig.id,
      origin: given('connectIntakeMin'),
    },
    {
      id: 'hydrant',
      what: 'The hydrant is dressed, flushed and connected.',
      durationMin: times.connectHydrantMin,
      after: ['stop'],
      origin: given('connectHydrantMin'),
    },
  ];
  if (booster) {
    tasks.push({
      id: 'pump',
      what: `${booster.name ?? booster.id} hooks up at the hydrant.`,
      durationMin: times.hookUpPumpMin,
      notBeforeMin: booster.arrivesMin,
      after: ['hydrant'],
      rigId: booster.id,
      origin: given('hookUpPumpMin'),
    });
  }
  tasks.push({
    id: 'charge',
    what: `The hose fills at ${say.full(times.chargeGpm, 'flow')}.`,
    durationMin: chargingMin(hose, lengthFt, times.chargeGpm, count),
    after: ['intake', booster ? 'pump' : 'hydrant'],
    origin: given('chargeGpm'),
  });
  return tasks;
}
