import { type HoseSize, hoseCatalogue } from '@plugside/fireground';

/** A hose's width on the screen [px], in step with its diameter. */
export function hosePx(size: HoseSize, compact: boolean): number {
  const perInch = compact ? 0.95 : 1.35;
  return Math.max(compact ? 1.8 : 2.2, hoseCatalogue[size].diameterIn * perInch);
}
