import { DROP_EXPONENT, FLOW_EXPONENT } from '@plugside/hydraulics';

/** A flow axis on which every supply curve is a straight line. */
export interface ExponentPaper {
  /** Place of a flow [gpm] on the axis. */
  x(flowGpm: number): number;
  /** Flow [gpm] at a place on the axis. */
  flowAt(x: number): number;
  /**
   * Flows to mark, round in the reader's unit and no closer than `leastGap` on the axis.
   * @param perGpm shown units per gpm: 1 for gpm
   * @returns marks in gpm and in shown units
   */
  ticks(leastGap: number, perGpm?: number): { flowGpm: number; shown: number }[];
}

/**
 * N^1.85 paper: x grows as flow to the power 1/0.54 (1.85185…), so that pressure against flow is a
 * straight line from static through the test point.
 *   x = from + (to − from)·(Q/most)^(1/0.54)
 * @param mostGpm flow at the right end, above 0 [gpm]
 * @param range places of flow 0 and of `mostGpm`, in any unit of length
 * @throws RangeError for a flow that is not above 0
 * Source: Water-supply analysis, slide 16 (http://tkolb.net/WatSup/sld016.htm).
 */
export function exponentPaper(
  mostGpm: number,
  [from, to]: readonly [from: number, to: number],
): ExponentPaper {
  if (!(Number.isFinite(mostGpm) && mostGpm > 0)) {
    throw new RangeError(
      `mostGpm is ${mostGpm}; allowed: more than 0 gpm. Give the greatest flow to be shown.`,
    );
  }
  const x = (flowGpm: number) =>
    from + (to - from) * (Math.max(0, flowGpm) / mostGpm) ** DROP_EXPONENT;
  const flowAt = (at: number) => mostGpm * Math.max(0, (at - from) / (to - from)) ** FLOW_EXPONENT;
  return {
    x,
    flowAt,
    ticks(leastGap, perGpm = 1) {
      const step = roundStep((mostGpm * perGpm) / 10);
      const marks = [{ flowGpm: 0, shown: 0 }];
      // From the right, where the paper is wide: small flows crowd together on the left.
      const count = Math.floor((mostGpm * perGpm) / step + 1e-9);
      let next = Number.POSITIVE_INFINITY;
      const placed: typeof marks = [];
      for (let at = count; at > 0; at--) {
        const shown = at * step;
        const flowGpm = shown / perGpm;
        const place = Math.abs(x(flowGpm) - from);
        if (next - place < leastGap || place < leastGap) continue;
        placed.unshift({ flowGpm, shown });
        next = place;
      }
      return [...marks, ...placed];
    },
  };
}

/** 1, 2, 2.5 or 5 times a power of ten, the nearest at or above. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return power * ([1, 2, 2.5, 5, 10].find((each) => each * power >= least * (1 - 1e-9)) ?? 10);
}
