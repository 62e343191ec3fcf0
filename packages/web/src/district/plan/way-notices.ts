/** What the way of a lay does that hose in hand may not. */
import type { Route, RouteLeg } from '@plugside/records/streets';
import type { Units } from '../../editing/use-units.ts';

export interface WayNotice {
  level: 'fact' | 'caution';
  text: string;
}

const WHY_STRAIGHT: Readonly<Record<Exclude<RouteLeg['kind'], 'along streets'>, string>> = {
  straight: 'as asked',
  'off the network': 'an end is far from any street',
  'not joined': 'no street joins its ends',
};

/** The notices of a lay's way, in the order in which the hose meets them. */
export function wayNotices(route: Route, units: Units): WayNotice[] {
  const length = (ft: number) => units.text(ft, 'length');
  const notices: WayNotice[] = [];
  for (const { kind, lengthFt } of route.legs) {
    if (kind === 'along streets') continue;
    const text = `${length(lengthFt)} of the lay are a straight line (${WHY_STRAIGHT[kind]}); check that hose can be laid there.`;
    notices.push({ level: 'caution', text });
  }
  for (const { point, backFt, offStreetFt } of route.turnBacks) {
    const both = `${length(2 * backFt)} of hose, counted both ways`;
    const text =
      offStreetFt > 0 && backFt - offStreetFt < 1
        ? `At point ${point} the lay leaves the street for ${length(offStreetFt)}, and comes back: ${both}. Move the point onto a street if the hose need not pass there.`
        : offStreetFt > 0
          ? `To point ${point} the lay goes ${length(backFt)}, ${length(offStreetFt)} of it off the street, and comes back the same way: ${both}. Move the point if the hose need not pass there.`
          : `At point ${point} the lay turns round, and comes back the same way for ${length(backFt)}: ${both}. Move the point if the hose need not pass there.`;
    notices.push({ level: 'caution', text });
  }
  if (route.footOnlyFt > 0.5) {
    notices.push({ level: 'fact', text: `${length(route.footOnlyFt)} of it no rig can drive.` });
  }
  return notices;
}
