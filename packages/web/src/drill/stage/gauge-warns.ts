/** Whether a gauge stands where it should not. */
import type { DrillScene, DrillView, GaugeView } from '@plugside/drill';
import { splitPortRef } from '@plugside/fireground';
import { type GaugeLimit, gaugeLimits, isOut } from './gauge-scale.ts';

/** The limit that a gauge stands beyond; undefined where it is within all, or its intake is not fed. */
export function warnsOf(
  scene: DrillScene,
  view: DrillView,
  gauge: GaugeView,
): GaugeLimit | undefined {
  const out = gaugeLimits(scene, view, gauge).find((limit) => isOut(gauge.value, limit));
  return out?.sense === 'greatest' || isFed(view, gauge) ? out : undefined;
}

/** An intake that nothing feeds warns of nothing: its valves are shut, or its pump lives on the tank. */
function isFed({ valves, hoseEnds }: DrillView, { id, value }: GaugeView): boolean {
  const { pieceId } = splitPortRef(id);
  return (
    value > 1 ||
    valves.some(
      (valve) =>
        valve.pieceId === pieceId &&
        valve.kind === 'intake' &&
        valve.opening > 0.02 &&
        hoseEnds.some(({ port, looks }) => port === valve.id && looks !== 'flat'),
    )
  );
}
