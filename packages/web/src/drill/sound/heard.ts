/** What a role would hear where it stands. */
import type { DrillView, NoticedEvent } from '@plugside/drill';

export interface Heard {
  /** Of the loudest pump: its note [Hz] and how loud [0 to 1]; null where none turns. */
  pump: { hertz: number; loudness: number } | null;
  /** A pump rattles: it starves or draws air. */
  rattle: boolean;
}

/** An idling pump's note, and what each psi of discharge adds [Hz]. Ours: to be told apart, not true to a pump. */
const IDLE_HERTZ = 62;
const HERTZ_PER_PSI = 0.42;
const GREATEST_PSI = 400;

/** A drill that stands is silent. */
export function heardIn({ pumps, gauges, paused }: DrillView): Heard {
  if (paused) return { pump: null, rattle: false };
  const turning = pumps.filter(({ sounds }) => sounds !== 'quiet');
  const pressures = turning.map(
    ({ rigId }) => gauges.find(({ id }) => id === `${rigId}.discharge`)?.value ?? 0,
  );
  const loudest = Math.min(GREATEST_PSI, Math.max(0, ...pressures));
  return {
    pump:
      turning.length === 0
        ? null
        : {
            hertz: IDLE_HERTZ + HERTZ_PER_PSI * loudest,
            loudness: 0.35 + (0.65 * loudest) / GREATEST_PSI,
          },
    rattle: turning.some(({ sounds }) => sounds === 'rattling' || sounds === 'no water'),
  };
}

export type Signal = 'radio' | 'caution';

/** What sounded after a tick: somebody else spoke on the radio, or something to be careful with happened. */
export function signalsAfter(
  tick: number,
  { role, radio }: Pick<DrillView, 'role' | 'radio'>,
  events: readonly NoticedEvent[],
): Signal[] {
  const signals: Signal[] = [];
  if (radio.some((one) => one.tick > tick && one.from !== role)) signals.push('radio');
  if (events.some((one) => one.tick > tick && one.level === 'caution')) signals.push('caution');
  return signals;
}
