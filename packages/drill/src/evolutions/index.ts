import { boostThroughValve } from './boost-through-valve.ts';
import type { Evolution } from './evolution.ts';
import { forwardLayAttack } from './forward-lay-attack.ts';
import { relayPumping } from './relay-pumping.ts';
import { secondHydrant } from './second-hydrant.ts';
import { sideSuction } from './side-suction.ts';
import { tankToHydrant } from './tank-to-hydrant.ts';

/** The evolutions that ship, in the order they are best learned. */
export const evolutions: readonly Evolution[] = [
  forwardLayAttack,
  tankToHydrant,
  boostThroughValve,
  sideSuction,
  secondHydrant,
  relayPumping,
];

/** The evolution of a key, or undefined. */
export function evolutionOf(key: string): Evolution | undefined {
  return evolutions.find((one) => one.key === key);
}
