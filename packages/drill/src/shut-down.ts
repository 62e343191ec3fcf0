/** A shutdown that is ordered, or called: what was done stands as done from then on. */
import type { RadioPresetKey } from './radio.ts';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import { stepsStanding } from './steps-standing.ts';

/** Messages after which work goes on: nobody shuts down who asks for water. */
const goesOn: readonly RadioPresetKey[] = [
  'send water',
  'water coming',
  'pressure wanted',
  'more needed',
];

/** Whether words of the instructor's order everything shut down. */
export function ordersShutDown(text: string): boolean {
  const words = text.toLowerCase().replace(/[^a-z’']+/g, ' ');
  if (/\b(not|never|don.t|no need|until|before|if)\b/.test(words)) return false;
  return /\b(lines?|water|everything|all|it) shut down\b|\bshut (it all|all lines|all|everything) down\b/.test(
    words,
  );
}

/** Keeps which steps stand as a shutdown begins; ends it where a message asks for water again. */
export function followShutDown(
  scene: DrillScene,
  state: DrillState,
  said: { preset: RadioPresetKey } | { order: string },
): void {
  if (!hasRules(scene, 3)) return;
  const { tally, tick } = state;
  if ('preset' in said && goesOn.includes(said.preset)) delete tally.shutDown;
  const begins = 'preset' in said ? said.preset === 'shutting down' : ordersShutDown(said.order);
  if (begins) tally.shutDown ??= { tick, stood: [...stepsStanding(scene, state)] };
}
