/** Where water can be seen to stand or move, from what a role sees. */
import type { DrillView } from '@plugside/drill';
import { splitPortRef } from '@plugside/fireground';

/** Whether the hose on a port is full there. */
export function waterAt(view: DrillView, port: string): boolean {
  return view.hoseEnds.some(
    (end) => end.port === port && (end.looks === 'hard' || end.looks === 'soft'),
  );
}

/**
 * Whether water moves in a hose, as far as can be seen from here: it is full, no valve at this end is
 * shut, and the pump or nozzle that it is on flows.
 */
export function moves(view: DrillView, hose: string): boolean {
  return view.hoseEnds.some((end) => {
    if (end.hose !== hose || end.port === null || end.looks !== 'hard') return false;
    const { pieceId } = splitPortRef(end.port);
    const gate = view.valves.find(({ id }) => id === end.port);
    if (gate && gate.opening < 0.02) return false;
    const bale = view.valves.find(({ id }) => id === `${pieceId}.bale`);
    if (bale) return bale.opening > 0.02;
    const stem = view.valves.find(({ id }) => id === `${pieceId}.stem`);
    if (stem) return stem.opening > 0.02;
    const flow = view.gauges.find(({ id }) => id === `${pieceId}.flow`);
    return flow ? flow.value > 5 : true;
  });
}
