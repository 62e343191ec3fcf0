import { textWidth } from './text-width.ts';

export interface Point {
  x: number;
  y: number;
}

export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** A label to be put near its point. */
export interface LabelWish extends Point {
  text: string;
  /** Dropped where there is no room, instead of going below the drawing. */
  optional?: boolean;
}

export interface PlacedLabel {
  wish: LabelWish;
  box: Box;
  /** Drawn from the point to the label where it stands far off. */
  leader?: [Point, Point];
}

export interface LabelRoom {
  frame: Box;
  fontSize: number;
  /** Lines that labels would rather not cover. */
  strokes: readonly [Point, Point][];
  /** Boxes that labels must not cover. */
  taken?: readonly Box[];
}

const GAP = 3;
const DISTANCES = [8, 18, 32, 48, 66, 86, 110];
/** An optional label stands beside its point or not at all. */
const OPTIONAL_STEPS = 3;
// Above first, then down either side.
const DIRECTIONS = [-90, -60, -30, 0, 30, 60, 90, -120, -150, 180, 150, 120].map(
  (degrees) => (degrees * Math.PI) / 180,
);

export function overlaps(a: Box, b: Box, gap = 0): boolean {
  return (
    a.left < b.right + gap &&
    a.right > b.left - gap &&
    a.top < b.bottom + gap &&
    a.bottom > b.top - gap
  );
}

/** Whether a stroke runs through a box: the stroke is cut down to the box, side by side. */
export function crosses([a, b]: readonly [Point, Point], box: Box): boolean {
  let enter = 0;
  let leave = 1;
  for (const [from, to, low, high] of [
    [a.x, b.x, box.left, box.right],
    [a.y, b.y, box.top, box.bottom],
  ] as const) {
    if (from === to) {
      if (from < low || from > high) return false;
      continue;
    }
    const first = (low - from) / (to - from);
    const second = (high - from) / (to - from);
    enter = Math.max(enter, Math.min(first, second));
    leave = Math.min(leave, Math.max(first, second));
  }
  return enter <= leave;
}

/**
 * Puts labels where no two cover each other, in the order of the wishes; first where they cover
 * no stroke either, then where they may. Those with no room come back in `left`, but for the
 * optional ones, which never cover a stroke and are dropped.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  room: LabelRoom,
): { placed: PlacedLabel[]; left: LabelWish[] } {
  const placed: PlacedLabel[] = [];
  const left: LabelWish[] = [];
  const points: Box[] = wishes.map(({ x, y }) => boxAround(x, y, 4, 4));
  for (const [index, wish] of wishes.entries()) {
    const others = points.filter((_, other) => other !== index);
    const label =
      findRoom(wish, placed, others, room, true) ??
      (wish.optional ? undefined : findRoom(wish, placed, others, room, false));
    if (label) placed.push(label);
    else if (!wish.optional) left.push(wish);
  }
  return { placed, left };
}

function boxAround(x: number, y: number, halfWidth: number, halfHeight: number): Box {
  return { left: x - halfWidth, right: x + halfWidth, top: y - halfHeight, bottom: y + halfHeight };
}

function findRoom(
  wish: LabelWish,
  placed: readonly PlacedLabel[],
  points: readonly Box[],
  { frame, fontSize, strokes, taken = [] }: LabelRoom,
  clear: boolean,
): PlacedLabel | undefined {
  const halfWidth = textWidth(wish.text, fontSize) / 2;
  const halfHeight = fontSize * 0.6;
  for (const distance of wish.optional ? DISTANCES.slice(0, OPTIONAL_STEPS) : DISTANCES) {
    for (const direction of DIRECTIONS) {
      const across = Math.cos(direction);
      const down = Math.sin(direction);
      const box = boxAround(
        wish.x + across * distance + Math.sign(Math.round(across * 10)) * halfWidth,
        wish.y + down * distance + Math.sign(Math.round(down * 10)) * halfHeight,
        halfWidth,
        halfHeight,
      );
      const leader: [Point, Point] | undefined =
        distance > 18 ? [{ x: wish.x, y: wish.y }, nearestOn(box, wish)] : undefined;
      const inside =
        box.left >= frame.left &&
        box.right <= frame.right &&
        box.top >= frame.top &&
        box.bottom <= frame.bottom;
      const free =
        inside &&
        taken.every((each) => !overlaps(box, each, GAP)) &&
        points.every((each) => !overlaps(box, each)) &&
        placed.every(
          (each) =>
            !overlaps(box, each.box, GAP) &&
            !(each.leader && crosses(each.leader, box)) &&
            !(leader && crosses(leader, each.box)),
        ) &&
        (!clear || strokes.every((stroke) => !crosses(stroke, box)));
      if (free) return leader ? { wish, box, leader } : { wish, box };
    }
  }
  return undefined;
}

function nearestOn(box: Box, { x, y }: Point): Point {
  return {
    x: Math.min(Math.max(x, box.left), box.right),
    y: Math.min(Math.max(y, box.top), box.bottom),
  };
}
