import { requireWithin } from '@plugside/hydraulics';
import { type Running, ShuttleClock } from './shuttle-clock.ts';
import { checkedTrips } from './shuttle-flow.ts';
import type { ShuttleRun, ShuttleRunOptions } from './shuttle-run.ts';

/**
 * Plays a shuttle out: tenders come loaded to the dump site, wait for a point, dump while the fire
 * flow is drawn, drive, wait for a fill point, fill and come back. The first to come is the first to
 * be served; of two at once, the first in the list. The same input always gives the same run.
 * @param options shuttle; tank 100 to 50,000 gal; draw 0 to 10,000 gpm; 1 to 720 min
 * @returns level over time [gal], when it runs dry [min], waiting, totals; what was there and what was
 *   dumped is what was drawn and what is left
 * Valid: handling comes before the valve opens; a full tank makes tenders wait, nothing is spilled.
 * Outside: throws QuantityError.
 * Source: tenderTrip for each part of a round.
 */
export function simulateShuttle(options: ShuttleRunOptions): ShuttleRun {
  const trips = checkedTrips(options);
  const { tankGal, startGal = 0, drawGpm, untilMin, firstAtMin = {} } = options;
  requireWithin('tankGal', tankGal, [100, 50_000], 'gal');
  requireWithin('startGal', startGal, [0, tankGal], 'gal');
  requireWithin('drawGpm', drawGpm, [0, 10_000], 'gpm');
  requireWithin('untilMin', untilMin, [1, 720], 'min');
  if (options.drawFromMin !== undefined) {
    requireWithin('drawFromMin', options.drawFromMin, [0, untilMin], 'min');
  }
  const tenders = trips.map((trip): Running => {
    const first = firstAtMin[trip.tenderId] ?? 0;
    requireWithin(`firstAtMin.${trip.tenderId}`, first, [0, 1440], 'min');
    return {
      trip,
      phase: 'coming',
      untilMin: first,
      leftGal: trip.loadGal,
      dumpGpm: trip.dumpGpm,
      waitingSinceMin: 0,
      told: false,
      waitedMin: 0,
      loads: 0,
    };
  });
  return new ShuttleClock(tenders, options, startGal).run();
}
