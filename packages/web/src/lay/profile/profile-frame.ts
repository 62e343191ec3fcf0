/** The profile's own scale, pressure upwards, and the ticks of the distance axis. */
import { fromInside, quantities, toInside, type UnitSystem } from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';
import type { DistanceScale } from '../scene/distance-scale.ts';

export interface ProfileFrame {
  heightPx: number;
  topPx: number;
  bottomPx: number;
  y(psi: number): number;
  psiAt(y: number): number;
  /** Inside pressures to rule lines at, with the number to write. */
  ticks: { psi: number; text: string }[];
}

/** How much taller than the flowing pressures the scale may grow to show those at rest. */
const MOST_GROWTH = 1.3;

/** The greatest pressure to scale for [psi]: pressures at rest count only while they leave the flowing ones legible. */
export function greatestShown(flowingPsi: readonly number[], restPsi: readonly number[]): number {
  const flowing = Math.max(60, ...flowingPsi.filter(Number.isFinite));
  const held = restPsi.filter((psi) => psi <= flowing * MOST_GROWTH);
  return Math.max(flowing, ...held);
}

/** A pressure scale that holds every given pressure, from zero up. */
export function profileFrame(
  pressuresPsi: readonly number[],
  heightPx: number,
  system: UnitSystem,
): ProfileFrame {
  const unit = quantities.pressure.shown[system];
  const finite = pressuresPsi.filter(Number.isFinite);
  const most = Math.max(60, ...finite) * 1.12;
  const least = Math.min(0, ...finite);
  const topPx = 14;
  const bottomPx = heightPx - 34;
  const scale = scaleLinear(
    [fromInside(least, 'pressure', unit), fromInside(most, 'pressure', unit)],
    [bottomPx, topPx],
  );
  const count = heightPx > 310 ? 6 : 5;
  return {
    heightPx,
    topPx,
    bottomPx,
    y: (psi) => scale(fromInside(psi, 'pressure', unit)),
    psiAt: (y) => toInside(scale.invert(y), 'pressure', unit),
    ticks: scale.ticks(count).map((value) => ({
      psi: toInside(value, 'pressure', unit),
      text: String(value),
    })),
  };
}

/** Ticks along the lay at round distances in the shown unit, at least `apartPx` apart. */
export function distanceTicks(
  scale: DistanceScale,
  layFt: number,
  system: UnitSystem,
  apartPx: number,
): { x: number; text: string }[] {
  const unit = quantities.length.shown[system];
  const whole = fromInside(layFt, 'length', unit);
  const roomPx = scale.sceneX - scale.hookupEndX;
  const most = Math.max(2, Math.floor(roomPx / apartPx) + 1);
  const values = scaleLinear([0, whole], [0, 1]).ticks(most);
  const ticks = values.map((value) => ({
    x: scale.layX(toInside(value, 'length', unit)),
    text: value.toLocaleString('en-US'),
  }));
  const end = { x: scale.sceneX, text: Math.round(whole).toLocaleString('en-US') };
  const kept: typeof ticks = [];
  for (const tick of ticks) {
    const roomBefore = kept.length === 0 || tick.x - kept.at(-1)!.x >= apartPx;
    if (roomBefore && end.x - tick.x >= apartPx) kept.push(tick);
  }
  return [...kept, end];
}
