/** Pressures over time, in pixels. */
import { compoundShare, isVacuum } from '@plugside/drill';
import type { GaugeSeries } from './replay-run.ts';

/** Round tops for a scale. */
const TOPS = [50, 100, 150, 200, 250, 300, 400, 500, 750, 1000, 1500, 2000, 3000, 5000, 10_000];

/** So that the scale's own number stands clear of the line. */
const HEADROOM = 1.15;

/** Where a scale ends: the first round number well over all that was read. */
export function topOf({
  values,
  least,
  fullGal,
}: Pick<GaugeSeries, 'values' | 'least' | 'fullGal'>): number {
  if (fullGal !== undefined) return fullGal;
  const most = values.reduce((a, b) => Math.max(a, b), least ?? 0);
  return TOPS.find((top) => top >= most * HEADROOM) ?? most * HEADROOM;
}

/** Whether a chart goes below zero, on a compound scale: the gauge has read a vacuum. */
export const hasVacuum = ({ unit, values }: Pick<GaugeSeries, 'unit' | 'values'>): boolean =>
  unit === 'psi' && values.some(isVacuum);

/** Height of a reading above the chart's foot [0 … 1]. */
export function heightOf(series: Pick<GaugeSeries, 'unit' | 'values'>, value: number, top: number) {
  if (hasVacuum(series)) return compoundShare(value, top);
  return Math.min(Math.max(value, 0), top) / top;
}

export interface ChartSize {
  width: number;
  height: number;
  /** The drill's length [s]. */
  lastS: number;
}

/** Place of a moment [px]. */
export function xAt(timeS: number, { width, lastS }: ChartSize): number {
  return lastS > 0 ? (timeS / lastS) * width : 0;
}

/** A gauge's line through all its readings. @param ticksPerS of `ticks` */
export function lineOf(
  series: Pick<GaugeSeries, 'unit' | 'values'>,
  ticks: readonly number[],
  ticksPerS: number,
  top: number,
  size: ChartSize,
): string {
  const compound = hasVacuum(series);
  return series.values
    .map((value, at) => {
      const x = xAt(ticks[at]! / ticksPerS, size);
      const share = compound ? compoundShare(value, top) : Math.min(Math.max(value, 0), top) / top;
      const y = size.height - share * size.height;
      return `${at === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`;
    })
    .join('');
}

/** What a gauge read at a moment: the last reading at or before it. */
export function readingAt(
  { values }: Pick<GaugeSeries, 'values'>,
  ticks: readonly number[],
  tick: number,
): number {
  let at = 0;
  while (at + 1 < ticks.length && ticks[at + 1]! <= tick) at++;
  return values[at] ?? 0;
}
