import type { Place } from './ellipsoid.ts';
import { type HoseRoute, type HoseRouteOptions, hoseRoutes, routesUntil } from './hose-routes.ts';
import type { StreetNetwork } from './street-network.ts';

/** What is needed of a hydrant: a stored record has it. */
export interface HydrantPlace extends Place {
  status?: 'in service' | 'out of service';
  statusReason?: string;
}

export interface UsableHydrant<Hydrant extends HydrantPlace> extends HoseRoute<Hydrant> {
  /** False: out of service. Kept in the list, so that nobody looks for it in vain. */
  usable: boolean;
}

/**
 * Hydrants by hose length from a place, shortest first; those out of service stay in their
 * place in the order and are marked. `count` counts the usable ones: the list ends at the last
 * of them.
 *
 * @throws RangeError as `hoseRoutes`
 */
export function usableHydrants<Hydrant extends HydrantPlace>(
  network: StreetNetwork,
  hydrants: readonly Hydrant[],
  place: Place,
  { count, ...options }: HoseRouteOptions = {},
): UsableHydrant<Hydrant>[] {
  if (count === undefined) return hoseRoutes(network, place, hydrants, options).map(marked);
  if (!(count >= 1)) {
    throw new RangeError(`count is ${count}; give 1 or more, or leave it out for all.`);
  }
  const enough = (found: readonly HoseRoute<Hydrant>[]) =>
    found.filter(({ target }) => isUsable(target)).length >= count;
  const routes = routesUntil(network, place, hydrants, options, enough).map(marked);
  let usable = 0;
  const last = routes.findIndex((route) => {
    if (route.usable) usable += 1;
    return usable === count;
  });
  return last === -1 ? routes : routes.slice(0, last + 1);
}

function marked<Hydrant extends HydrantPlace>(route: HoseRoute<Hydrant>): UsableHydrant<Hydrant> {
  return { ...route, usable: isUsable(route.target) };
}

function isUsable({ status = 'in service' }: HydrantPlace): boolean {
  return status === 'in service';
}
