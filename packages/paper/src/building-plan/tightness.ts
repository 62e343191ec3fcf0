/** What gives way where a page is full, the loosest first. */
export interface Tightness {
  mapPt: number;
  textPt: number;
  limits: number;
  cautionPt: number;
  titlePt: number;
  /** Above a heading. */
  gapPt: number;
}

export const TIGHTEST = 16;

/** From what reads best at 0 to what a page can hold at `TIGHTEST`. */
export function tightnessAt(step: number): Tightness {
  return {
    mapPt: 232 - 8 * step,
    textPt: 11 - 0.29 * step,
    limits: Math.max(2, 6 - Math.floor(step / 3)),
    cautionPt: 9.5 - 0.22 * step,
    titlePt: 16 - 0.4 * step,
    gapPt: Math.max(11, 15 - 0.4 * step),
  };
}
