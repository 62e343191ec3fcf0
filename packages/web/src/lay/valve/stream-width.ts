/** The bore of the drawn valve is 48 px wide; the greatest stream leaves its walls in sight. */
const MOST_STREAM_PX = 34;
const LEAST_STREAM_PX = 4;

/**
 * A stream's width for its flow, in step with the greatest flow in the valve [px]; 0 for none.
 * @param mostGpm greatest flow in any port [gpm] > 0
 */
export function streamPx(gpm: number, mostGpm: number): number {
  return gpm < 0.5 ? 0 : Math.max(LEAST_STREAM_PX, (MOST_STREAM_PX * gpm) / mostGpm);
}
