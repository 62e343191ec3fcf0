import type { Plan } from '../plan/plan.ts';
import {
  type BoostedAtHydrantOptions,
  type BoosterOptions,
  boostedAtHydrant,
} from './boosted-at-hydrant.ts';

export interface ReverseLayOptions
  extends Omit<BoostedAtHydrantOptions, 'assistValve' | 'booster'> {
  /** The engine that laid to the hydrant and pumps from there. */
  source?: Omit<BoosterOptions, 'dischargeFt'>;
}

/**
 * Hose laid from the fire to the hydrant: the engine that laid it stays at the hydrant and
 * pumps the line. Ids as in `boostedAtHydrant`.
 */
export function reverseLay({ source, ...options }: ReverseLayOptions = {}): Plan {
  return boostedAtHydrant({
    title: 'Reverse lay',
    ...options,
    assistValve: false,
    booster: source ?? {},
  });
}
