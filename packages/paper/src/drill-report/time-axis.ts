/** The one axis of time under a drill's charts. Times in s, places in points. */

/** Round distances of marks on it [s]. */
const STEPS_S = [5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200];
const LEAST_STEP_PT = 38;

export interface TimeAxis {
  x0: number;
  x1: number;
  /** The drill's length; never 0. */
  lastS: number;
}

/** Place of a moment. */
export function xAt({ x0, x1, lastS }: TimeAxis, timeS: number): number {
  return x0 + ((x1 - x0) * Math.min(timeS, lastS)) / lastS;
}

/** Round times along it, from 0. */
export function timeTicks({ x0, x1, lastS }: TimeAxis): number[] {
  const perS = (x1 - x0) / lastS;
  const step = STEPS_S.find((one) => one * perS >= LEAST_STEP_PT) ?? lastS;
  return Array.from({ length: Math.floor(lastS / step) + 1 }, (_, at) => at * step);
}

export interface NumberGroup {
  /** Place of its first entry. */
  x: number;
  row: number;
  text: string;
  /** Right end of the text. */
  endX: number;
}

/**
 * Entries' numbers along the axis, so that none lies over another: where there is no room for each, those
 * that follow one another share a place ("12–17").
 * @param places of the entries, in order
 * @param mostX no text goes farther to the right: the last ones share a place
 */
export function numberGroups(
  places: readonly number[],
  rows: number,
  widthOf: (text: string) => number,
  mostX: number,
): NumberGroup[] {
  const groups: NumberGroup[] = [];
  let first = 1;
  places.forEach((x, at) => {
    const number = at + 1;
    const row = groups.length % rows;
    const before = groups.findLast((one) => one.row === row);
    const open = groups.at(-1);
    // At one place a second number would only say the same.
    const isApart = open === undefined || x - open.x > 2;
    const fits = open === undefined || x + 2 + widthOf(`${number}–${places.length}`) <= mostX;
    if (isApart && fits && (before === undefined || x > before.endX + 3)) {
      const text = `${number}`;
      groups.push({ x, row, text, endX: x + 2 + widthOf(text) });
      first = number;
    } else if (open) {
      open.text = `${first}–${number}`;
      open.endX = open.x + 2 + widthOf(open.text);
    }
  });
  return groups;
}
