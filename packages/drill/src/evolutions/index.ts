import { boostThroughValve } from './boost-through-valve.ts';
import type { Evolution } from './evolution.ts';

/** The evolutions that ship, in the order they are best learned. */
export const evolutions: readonly Evolution[] = [boostThroughValve];

/** The evolution of a key, or undefined. */
export function evolutionOf(key: string): Evolution | undefined {
  return evolutions.find((one) => one.key === key);
}
