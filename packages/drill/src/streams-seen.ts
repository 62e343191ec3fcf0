/** What a nozzle's crew sees and feels: it has no gauge. */
import { nameOf, nozzleRatedGpm } from '@plugside/fireground';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import { leastOpening } from './valve-loss.ts';
import type { StreamView } from './view-shape.ts';

/** Flow under which there is no stream to speak of, of what is asked of the nozzle; ours. */
const NO_STREAM_SHARE = 0.1;

/**
 * The streams of the nozzles within reach. A stream is full from the share of its rated flow on at which a
 * nozzle counts as supplied (see `Benchmarks`); what is asked of it shrinks with its bale.
 */
export function streamsSeen(
  { plan, benchmarks }: DrillScene,
  state: DrillState,
  reach: ReadonlySet<string>,
): StreamView[] {
  return state.nozzles.flatMap((nozzle, at): StreamView[] => {
    const piece = plan.nozzles[at]!;
    if (!reach.has(nozzle.id)) return [];
    const opening = state.valves.find(({ id }) => id === `${nozzle.id}.bale`)?.opening ?? 0;
    const share = nozzle.flowGpm / (nozzleRatedGpm(piece) * Math.max(opening, leastOpening));
    const stream =
      opening < leastOpening
        ? 'shut'
        : share < NO_STREAM_SHARE
          ? 'none'
          : share < benchmarks.nozzleSuppliedShare
            ? 'weak'
            : nozzle.overTicks !== undefined
              ? 'hard to hold'
              : 'full';
    return [{ nozzle: nozzle.id, label: nameOf(piece), stream }];
  });
}
