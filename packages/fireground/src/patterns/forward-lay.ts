import type { Plan } from '../plan/plan.ts';
import { type BoostedAtHydrantOptions, boostedAtHydrant } from './boosted-at-hydrant.ts';

export interface ForwardLayOptions extends Omit<BoostedAtHydrantOptions, 'booster'> {}

/**
 * Hose laid from the hydrant to the fire, fed by hydrant pressure alone; with an assist
 * valve if asked for, ready for an engine that comes later. Ids as in `boostedAtHydrant`.
 */
export function forwardLay(options: ForwardLayOptions = {}): Plan {
  return boostedAtHydrant({
    title: 'Forward lay',
    assistValve: false,
    ...options,
    booster: null,
  });
}
