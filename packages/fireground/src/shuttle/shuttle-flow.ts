import { QuantityError, requireCount, requirePositive, requireWithin } from '@plugside/hydraulics';
import {
  type FillSite,
  type ShuttleRoad,
  type ShuttleSite,
  type Tender,
  type TenderTrip,
  tenderTrip,
} from './tender-trip.ts';

/** Tenders, the road between the sites, and the sites. */
export interface Shuttle {
  tenders: readonly Tender[];
  road: ShuttleRoad;
  fillSite: FillSite;
  dumpSite: ShuttleSite;
}

/** What a shuttle keeps up. Figures in gpm. */
export interface ShuttleFlow {
  /** Kept up: the least of the three below. */
  gpm: number;
  limitedBy: 'tenders' | 'fill site' | 'dump site';
  /** All tenders together, none waiting. */
  tendersGpm: number;
  /** What each site's points can pass, tenders taking turns. */
  fillSiteGpm: number;
  dumpSiteGpm: number;
  trips: (TenderTrip & { tenderId: string })[];
}

const MOST_TENDERS = 40;

/**
 * Tenders needed for a flow, all alike.
 *   n = flow/gpm of one, rounded up
 * @param flowGpm flow to keep up [gpm]
 * @param trip one tender's round, of `tenderTrip`
 * @returns tenders [count]
 * Valid: no waiting at the sites; `shuttleFlow` says whether they can pass that many.
 * Outside: throws QuantityError.
 * Source: tenderRateGpm.
 */
export function tendersNeeded(flowGpm: number, trip: Pick<TenderTrip, 'gpm'>): number {
  requirePositive('flowGpm', flowGpm, 'gpm');
  requirePositive('trip.gpm', trip.gpm, 'gpm');
  // A whole number of tenders that meets the flow to the last digit needs no one more.
  return Math.ceil(flowGpm / trip.gpm - 1e-9);
}

/**
 * Flow that a mix of tenders keeps up.
 *   least of: the sum of their own rates; points·Σload/Σ(time at the site) for either site
 * @param shuttle 1 to 40 tenders, road, sites of 1 to 10 points
 * @returns flow [gpm], what limits it, each tender's round
 * Valid: exact for tenders that are alike. In a mix near a site's limit tenders wait for one another
 * before it is reached, and overtake; `simulateShuttle` plays it out.
 * Outside: throws QuantityError.
 * Source: tenderRateGpm; a site's limit is its points' time divided among loads.
 */
export function shuttleFlow(shuttle: Shuttle): ShuttleFlow {
  const trips = checkedTrips(shuttle);
  const tendersGpm = sum(trips, ({ gpm }) => gpm);
  const loadGal = sum(trips, (trip) => trip.loadGal);
  const fillSiteGpm = (shuttle.fillSite.points * loadGal) / sum(trips, (trip) => trip.fillSiteMin);
  const dumpSiteGpm = (shuttle.dumpSite.points * loadGal) / sum(trips, (trip) => trip.dumpSiteMin);
  const gpm = Math.min(tendersGpm, fillSiteGpm, dumpSiteGpm);
  const limitedBy =
    gpm === tendersGpm ? 'tenders' : gpm === fillSiteGpm ? 'fill site' : 'dump site';
  return { gpm, limitedBy, tendersGpm, fillSiteGpm, dumpSiteGpm, trips };
}

/** Each tender's round, after the shuttle's own numbers are checked. Throws QuantityError. */
export function checkedTrips(shuttle: Shuttle): (TenderTrip & { tenderId: string })[] {
  const { tenders, road, fillSite, dumpSite } = shuttle;
  if (tenders.length < 1 || tenders.length > MOST_TENDERS) {
    throw new QuantityError({
      field: 'tenders',
      value: tenders.length,
      allowed: `1 to ${MOST_TENDERS}`,
      remedy: 'Add the tenders of the shuttle.',
    });
  }
  const twice = tenders.find(({ id }, at) => tenders.findIndex((one) => one.id === id) !== at);
  if (twice) {
    throw new QuantityError({
      field: 'tenders',
      value: twice.id,
      allowed: 'each id once',
      remedy: 'Give each tender an id of its own.',
    });
  }
  for (const [name, site] of [
    ['fillSite', fillSite],
    ['dumpSite', dumpSite],
  ] as const) {
    requireCount(`${name}.points`, site.points, 1);
    requireWithin(`${name}.points`, site.points, [1, 10], 'tenders at once');
  }
  return tenders.map((tender, at) => ({
    tenderId: tender.id,
    ...tenderTrip(tender, road, fillSite, `tenders[${at}].`),
  }));
}

function sum<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((total, item) => total + of(item), 0);
}
