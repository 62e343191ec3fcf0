import type { Choice, UnitSystem } from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';
import { type Axis, EDGE, evenAxis } from '../field-tests/graph-frame.ts';
import { numberPlaces, type Place, wordsPlace } from './trade-off-places.ts';

export interface TradeOffPicture {
  x: Pick<Axis, 'at' | 'ticks'>;
  y: Axis;
  demandY: number;
  /** The middle of the demand's words. */
  words: Place;
  /** By the ways' order: where each stands, and the middle of its number. */
  marks: Place[];
  numbers: Place[];
}

const DIGIT_PX = 8;
const LETTER_PX = 8;
const WORDS_HEIGHT_PX = 16;

/**
 * Ways by the flow that they bring and the minute when all of it is there, each exactly where its
 * figures are, and room for the numbers and the demand's words that covers no mark.
 * @param words of the demand, at the line of what is needed
 */
export function tradeOffPicture(
  {
    ways,
    demandGpm,
  }: Pick<Choice, 'demandGpm'> & {
    ways: readonly {
      mostGpm: number;
      meetsDemand: boolean;
      time: { fullAtMin: number };
    }[];
  },
  { widthPx, heightPx }: { widthPx: number; heightPx: number },
  system: UnitSystem,
  words: string,
): TradeOffPicture {
  const base = heightPx - EDGE.bottom;
  const mostGpm = Math.max(demandGpm * 1.12, ...ways.map((way) => way.mostGpm * 1.08));
  const lastMin = Math.max(5, ...ways.map((way) => way.time.fullAtMin)) * 1.06;
  const y = evenAxis(mostGpm, 'flow', system, [base, EDGE.top], 5);
  const scale = scaleLinear([0, lastMin], [EDGE.left, widthPx - EDGE.right]);
  const x = {
    at: (minutes: number) => scale(minutes),
    ticks: scale.ticks(6).map((value) => ({ value, text: String(value) })),
  };
  const demandY = y.at(demandGpm);
  const marks = ways.map((way, index) => {
    const atY = y.at(way.mostGpm);
    return {
      x: x.at(way.time.fullAtMin),
      // What is left of rounding in a solved figure must not put it on the wrong side.
      y: way.meetsDemand ? Math.min(atY, demandY) : Math.max(atY, demandY),
      enough: way.meetsDemand,
      numberPx: DIGIT_PX * String(index + 1).length + 3,
    };
  });
  const frame = {
    left: EDGE.left + 2,
    right: widthPx - EDGE.right,
    top: EDGE.top,
    bottom: base - 2,
  };
  const size = { widthPx: words.length * LETTER_PX, heightPx: WORDS_HEIGHT_PX };
  const wordsAt = wordsPlace(marks, frame, demandY, size);
  const numbers = numberPlaces(marks, frame, { y: demandY, words: { ...wordsAt, ...size } });
  return { x, y, demandY, words: wordsAt, marks: marks.map(({ x, y }) => ({ x, y })), numbers };
}
