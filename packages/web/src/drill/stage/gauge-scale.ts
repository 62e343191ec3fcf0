/** Scales of gauges: how far they go, where their limits stand. */
import type { DrillScene, DrillView, GaugeView } from '@plugside/drill';
import { fromInside, type Quantity, quantities, splitPortRef } from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';
import type { Units } from '../../editing/use-units.ts';

export const gaugeQuantity: Readonly<Record<GaugeView['unit'], Quantity>> = {
  psi: 'pressure',
  gpm: 'flow',
  gal: 'volume',
};

export interface GaugeLimit {
  value: number;
  /** Which side of it is out of bounds. */
  sense: 'least' | 'greatest';
  text: string;
}

/** What a gauge should not stand under or over: its own limits, and those of the hose on the pump. */
export function gaugeLimits(scene: DrillScene, view: DrillView, gauge: GaugeView): GaugeLimit[] {
  const limits: GaugeLimit[] = [];
  if (gauge.least !== undefined)
    limits.push({ value: gauge.least, sense: 'least', text: 'keep over' });
  if (gauge.greatest !== undefined)
    limits.push({ value: gauge.greatest, sense: 'greatest', text: 'keep under' });
  const { pieceId, port } = splitPortRef(gauge.id);
  if (port !== 'discharge' || gauge.greatest !== undefined) return limits;
  const hoses = view.hoseEnds.flatMap(({ hose, port: on }) => {
    const at = on === null ? undefined : splitPortRef(on);
    if (at?.pieceId !== pieceId || !at.port.startsWith('discharge')) return [];
    return scene.hoses.filter(({ id }) => id === hose);
  });
  const limitPsi = Math.min(...hoses.map((hose) => hose.limitPsi));
  if (Number.isFinite(limitPsi))
    limits.push({ value: limitPsi, sense: 'greatest', text: 'hose limit' });
  return limits;
}

/** Most that a gauge shows, in inside units. */
export function gaugeTop(scene: DrillScene, gauge: GaugeView): number {
  const { pieceId, port } = splitPortRef(gauge.id);
  if (gauge.unit === 'gal')
    return scene.tanks.find(({ rigId }) => rigId === pieceId)?.capacityGal ?? 1000;
  if (gauge.unit === 'gpm')
    return scene.plan.rigs.find(({ id }) => id === pieceId)?.ratedGpm ?? 1500;
  return port === 'intake' ? 150 : port === 'pressure' ? 200 : 300;
}

export interface Tick {
  /** Share of the scale [0 … 1]. */
  at: number;
  text: string;
}

/** Round numbers of the shown unit along a scale from 0 to `top` (inside units). */
export function gaugeTicks(top: number, unit: GaugeView['unit'], units: Units): Tick[] {
  const quantity = gaugeQuantity[unit];
  const shownTop = fromInside(top, quantity, quantities[quantity].shown[units.system]);
  const scale = scaleLinear([0, shownTop], [0, 1]);
  return scale.ticks(4).map((value) => ({ at: scale(value), text: value.toLocaleString('en-US') }));
}

/** Whether a value stands on the wrong side of a limit. */
export function isOut(value: number, limit: GaugeLimit): boolean {
  return limit.sense === 'least' ? value < limit.value - 0.5 : value > limit.value + 0.5;
}
