import type { ExpressionSpecification } from 'maplibre-gl';

export const FONT = ['IBM Plex Sans Condensed'];

/** A size that doubles with each zoom past `fromZoom`, as the ground does. */
export function growing(
  fromZoom: number,
  size: number,
  toZoom: number,
  to: number,
): ExpressionSpecification {
  return ['interpolate', ['exponential', 1.6], ['zoom'], fromZoom, size, toZoom, to];
}

/** Picked features carry this state. */
export const PICKED: ExpressionSpecification = ['boolean', ['feature-state', 'picked'], false];
