import type { DrillView, FromRoom, ViewParts } from '@plugside/drill';

/** The view that a device has, and the number of its frame. */
export interface Shown {
  n: number;
  view: DrillView;
}

/**
 * Puts the next frame over what is shown: parts that came take the place of the old ones, null takes one
 * away. Undefined where a frame is missing between: what is shown can then not be told, and has to be
 * asked for anew.
 */
export function nextShown(
  shown: Shown,
  frame: Pick<Extract<FromRoom, { type: 'view' }>, 'n' | 'whole' | 'view'>,
): Shown | undefined {
  if (frame.whole) return { n: frame.n, view: withParts({}, frame.view) };
  if (frame.n !== shown.n + 1) return undefined;
  return { n: frame.n, view: withParts(shown.view, frame.view) };
}

function withParts(view: Partial<DrillView>, parts: ViewParts): DrillView {
  const all = Object.entries({ ...view, ...parts }).filter(([, part]) => part !== null);
  return Object.fromEntries(all) as unknown as DrillView;
}
