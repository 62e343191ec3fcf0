/** How a wall screen is brought to fit: nobody scrolls a wall. */

export interface WallFit {
  /** Times as large as usual that the drawing may be. */
  most: number;
  /** Times as small as usual that all of it is. */
  shrink: number;
}

/** From the largest down: first the drawing is no larger than usual, then all of it is smaller. */
export const wallFits: readonly WallFit[] = [
  ...[1.5, 1.35, 1.2, 1.1, 1].map((most) => ({ most, shrink: 1 })),
  ...[0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5].map((shrink) => ({ most: 1, shrink })),
];

/** Narrower than this a wall is a tablet in the hand, and may be scrolled [px]. */
export const LEAST_WALL_PX = 1200;

/**
 * The fit to try next: a smaller one where what was tried is too high, the same where it fits or none is left.
 * @param highPx of the sheet at its own size
 * @param roomPx that there is down to the screen's foot
 */
export function nextFit(at: number, highPx: number, roomPx: number): number {
  const tooHigh = highPx * wallFits[at]!.shrink > roomPx;
  return tooHigh && at < wallFits.length - 1 ? at + 1 : at;
}
