/** A place in a drawing [px]. */
export interface Place {
  x: number;
  y: number;
}

/** Where something may stand [px]. */
export interface Frame {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface Marked extends Place {
  /** Above the needed line or on it; the others are under it. */
  enough: boolean;
  /** How wide its number is [px]. */
  numberPx: number;
}

interface Box {
  x: number;
  y: number;
  widthPx: number;
  heightPx: number;
}

/** Radius of a mark with its edge [px]. */
export const MARK_PX = 5.5;
export const NUMBER_HEIGHT_PX = 15;
/** From a mark to a number right beside it [px]: farther ones have a leader line. */
export const BESIDE_PX = 15;

const STEP_PX = 3;
const DIRECTIONS = Array.from({ length: 24 }, (_, at) => (at * Math.PI) / 12);
/** A number's way past other things, as so many px farther away. */
const PAST = { leader: 40, mark: 15, number: 80, words: 80 } as const;

/**
 * Where each mark's number goes: beside its mark or, where it is crowded there, as near as there is
 * room, never over a mark, another number or the needed line's words, and on its mark's own side of
 * that line while there is room at all. Earlier ones choose first.
 * @returns the middle of each number [px]
 */
export function numberPlaces(
  marks: readonly Marked[],
  frame: Frame,
  needed: { y: number; words: Box },
): Place[] {
  const set: Box[] = [];
  const leaders: [Place, Place][] = [];
  for (const mark of marks) {
    const others = marks.filter((one) => Math.hypot(one.x - mark.x, one.y - mark.y) > 1);
    const box = (at: Place): Box => ({ ...at, widthPx: mark.numberPx, heightPx: NUMBER_HEIGHT_PX });
    const free = (at: Box) =>
      isWithin(at, frame) &&
      !overlap(at, needed.words) &&
      !set.some((one) => overlap(one, at)) &&
      !marks.some((one) => overlap(squareOf(one), at));
    const onOwnSide = ({ y, heightPx }: Box) =>
      mark.enough ? y + heightPx / 2 < needed.y - 1 : y - heightPx / 2 > needed.y + 1;
    const past = (at: Box) =>
      PAST.leader * leaders.filter(([from, to]) => cross(mark, at, from, to)).length +
      PAST.mark * others.filter((one) => distancePx(one, mark, at) < MARK_PX).length +
      PAST.number * set.filter((one) => passes(one, mark, at)).length +
      (passes(needed.words, mark, at) ? PAST.words : 0);
    const place = nearest(mark, frame, box, (at) => free(at) && onOwnSide(at), past) ??
      nearest(mark, frame, box, free, past) ?? { x: mark.x, y: mark.y };
    set.push(box(place));
    leaders.push([mark, place]);
  }
  return set.map(({ x, y }) => ({ x, y }));
}

/** The free place that costs least: its distance and what its leader line passes. */
function nearest(
  mark: Place,
  { left, right, top, bottom }: Frame,
  box: (at: Place) => Box,
  free: (at: Box) => boolean,
  past: (at: Box) => number,
): Place | undefined {
  let best: { at: Place; cost: number } | undefined;
  const farthest = Math.hypot(right - left, bottom - top);
  for (let awayPx = MARK_PX + 6; awayPx < Math.min(farthest, best?.cost ?? farthest); ) {
    for (const angle of DIRECTIONS) {
      const at = box({
        x: mark.x + awayPx * Math.cos(angle),
        y: mark.y - awayPx * Math.sin(angle),
      });
      if (!free(at)) continue;
      const cost = awayPx + past(at);
      if (!best || cost < best.cost) best = { at: { x: at.x, y: at.y }, cost };
    }
    awayPx += STEP_PX;
  }
  return best?.at;
}

/**
 * Where the needed line's words go: along the line where no mark stands, else over the drawing.
 * @returns the middle of the words [px]
 */
export function wordsPlace(
  marks: readonly Place[],
  frame: Frame,
  neededY: number,
  { widthPx, heightPx }: { widthPx: number; heightPx: number },
): Place {
  const off = heightPx / 2 + 2;
  for (let x = frame.right - widthPx / 2; x - widthPx / 2 >= frame.left; x -= 6) {
    for (const y of [neededY - off, neededY + off]) {
      const box = { x, y, widthPx, heightPx };
      if (isWithin(box, frame) && !marks.some((one) => overlap(squareOf(one), box))) {
        return { x, y };
      }
    }
  }
  return { x: frame.right - widthPx / 2, y: frame.top - heightPx / 2 };
}

const squareOf = ({ x, y }: Place): Box => ({
  x,
  y,
  widthPx: 2 * MARK_PX,
  heightPx: 2 * MARK_PX,
});

function overlap(one: Box, two: Box): boolean {
  return (
    Math.abs(one.x - two.x) < (one.widthPx + two.widthPx) / 2 &&
    Math.abs(one.y - two.y) < (one.heightPx + two.heightPx) / 2
  );
}

function isWithin({ x, y, widthPx, heightPx }: Box, { left, right, top, bottom }: Frame): boolean {
  return (
    x - widthPx / 2 >= left &&
    x + widthPx / 2 <= right &&
    y - heightPx / 2 >= top &&
    y + heightPx / 2 <= bottom
  );
}

/** Distance of a point from the line between two [px]. */
function distancePx({ x, y }: Place, from: Place, to: Place): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - from.x - t * dx, y - from.y - t * dy);
}

/** Whether the line between two places goes over a box, as told by points along it. */
function passes(box: Box, from: Place, to: Place): boolean {
  const points = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4);
  for (let at = 0; at <= points; at++) {
    const t = at / (points || 1);
    const point = { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
    if (overlap(box, { ...point, widthPx: 1, heightPx: 1 })) return true;
  }
  return false;
}

function cross(a: Place, b: Place, c: Place, d: Place): boolean {
  const side = (p: Place, q: Place, r: Place) =>
    Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
