/** Sizes of the two drawings by the width that they get [px]. */

export interface DrawingSizes {
  widthPx: number;
  compact: boolean;
  startPx: number;
  hookupPx: number;
  bareSource: boolean;
  leastAttackPx: number;
  endPx: number;
  rigPx: number;
  rigHeightPx: number;
  /** Height of the first track of the evolution, and of each further one. */
  trackPx: number;
  furtherTrackPx: number;
  profilePx: number;
  textPx: number;
}

/**
 * Picks sizes: a phone's drawing keeps every figure but gives up lettering first.
 * @param bareSource nothing but the source stands there: no valve, no booster
 */
export function drawingSizes(widthPx: number, bareSource: boolean): DrawingSizes {
  if (widthPx < 560) {
    return {
      widthPx,
      compact: true,
      bareSource,
      startPx: 27,
      hookupPx: Math.round(widthPx * 0.31),
      leastAttackPx: 36,
      endPx: 36,
      rigPx: 42,
      rigHeightPx: 24,
      trackPx: 232,
      furtherTrackPx: 190,
      profilePx: 300,
      textPx: 13,
    };
  }
  const wide = widthPx >= 900;
  return {
    widthPx,
    compact: false,
    bareSource,
    startPx: 34,
    hookupPx: wide ? 320 : 240,
    leastAttackPx: wide ? 110 : 80,
    endPx: wide ? 104 : 84,
    rigPx: wide ? 84 : 68,
    rigHeightPx: wide ? 40 : 34,
    trackPx: wide ? 284 : 270,
    furtherTrackPx: wide ? 220 : 210,
    profilePx: wide ? 306 : 310,
    textPx: 14,
  };
}
