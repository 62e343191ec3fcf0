/** Scales of gauges: how far they go, where their limits stand. */
import {
  compoundShare,
  type DrillScene,
  type DrillView,
  fullVacuumInHg,
  fullVacuumKpa,
  type GaugeView,
  isVacuum,
  vacuumInHg,
  zeroShare,
} from '@plugside/drill';
import { fromInside, type Quantity, quantities, splitPortRef } from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';
import type { Units } from '../../editing/use-units.ts';
import { tankLamps, tankTicks } from './tank-lamps.ts';

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

/** An intake's gauge goes below zero: a compound gauge. */
export const isCompound = ({ id }: Pick<GaugeView, 'id'>): boolean =>
  splitPortRef(id).port === 'intake';

/** Where a reading stands on its scale [0 … 1]; a compound one's zero is not at its beginning. */
export function gaugeShare(gauge: Pick<GaugeView, 'id'>, value: number, top: number): number {
  if (isCompound(gauge)) return compoundShare(value, top);
  return Math.min(1, Math.max(0, value / top));
}

export interface GaugeReading {
  number: string;
  unit: string;
  /** Below zero, in the unit of the vacuum. */
  vacuum: boolean;
}

/**
 * A gauge's number as it is read: a vacuum in inHg or kPa, without a minus; a tank's by its lamps.
 * @param top most that it shows (see `gaugeTop`): of a tank, its capacity
 */
export function gaugeReading(
  { unit }: Pick<GaugeView, 'unit'>,
  value: number,
  units: Units,
  top?: number,
): GaugeReading {
  if (unit === 'gal' && top !== undefined) return { ...tankLamps(value / top), vacuum: false };
  const vacuum = unit === 'psi' && isVacuum(value);
  if (vacuum) return { ...units.of(vacuumInHg(value), 'vacuum'), vacuum };
  // Under a pressure of nothing there is vacuum alone.
  const shown = unit === 'psi' ? Math.max(0, value) : value;
  return { ...units.of(shown, gaugeQuantity[unit]), vacuum };
}

/** The vacuum's end of a compound scale: `30 inHg`, `100 kPa`. */
export function fullVacuumText({ system }: Pick<Units, 'system'>): string {
  return system === 'us' ? `${fullVacuumInHg} inHg` : `${fullVacuumKpa} kPa`;
}

export interface Tick {
  /** Share of the scale [0 … 1]. */
  at: number;
  text: string;
}

/** Round numbers of the shown unit along a scale from 0 to `top` (inside units). */
export function gaugeTicks(
  top: number,
  gauge: Pick<GaugeView, 'id' | 'unit'>,
  units: Units,
): Tick[] {
  if (gauge.unit === 'gal') return [...tankTicks];
  const quantity = gaugeQuantity[gauge.unit];
  const shownTop = fromInside(top, quantity, quantities[quantity].shown[units.system]);
  const scale = scaleLinear([0, shownTop], [isCompound(gauge) ? zeroShare : 0, 1]);
  return scale.ticks(4).map((value) => ({ at: scale(value), text: value.toLocaleString('en-US') }));
}

/** Whether a value stands on the wrong side of a limit. */
export function isOut(value: number, limit: GaugeLimit): boolean {
  return limit.sense === 'least' ? value < limit.value - 0.5 : value > limit.value + 0.5;
}
