/** Which main each hydrant is on, as the town's map of its mains would say where it can. */
import type { DemoHydrant } from './hydrant-places.ts';
import { hangingOf, layoutOf } from './main-layout.ts';
import type { TownMap, Zone } from './town-map.ts';

/**
 * Parts of the town that one feeder supplies: what a hydrant there loses it loses with all others
 * (solved: nine tenths of it on the works side, about two thirds on the hill).
 */
const feeders: Partial<Readonly<Record<Zone, string>>> = {
  industrial: 'Works feeder',
  hill: 'Hill feeder',
};

/** What a hydrant's main hangs on, as the same map has it: of a dead end behind a feeder that feeder. */
export function fedFrom({ zone }: DemoHydrant, mainName: string | undefined): string | undefined {
  const feeder = feeders[zone];
  return mainName === undefined || mainName === feeder ? undefined : feeder;
}

/**
 * One name for the hydrants of a dead end, and for those behind one feeder. In the grid of the town no
 * map tells which of them draw on each other: those have no name.
 */
export function mainNames(
  town: TownMap,
  hydrants: readonly DemoHydrant[],
): Map<DemoHydrant, string> {
  const layout = layoutOf(town.stretches.filter(({ main }) => main));
  const looped = new Set(layout.looped);
  const names = new Map<DemoHydrant, string>();
  for (const hydrant of hydrants) {
    const last = hangingOf(layout, hydrant).tail.findLast(({ stretch }) => !looped.has(stretch));
    const feeder = feeders[hydrant.zone];
    if (last) names.set(hydrant, `${town.streets[last.stretch.street]!.name} dead end`);
    else if (feeder !== undefined) names.set(hydrant, feeder);
  }
  return names;
}
