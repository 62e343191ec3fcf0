/** A tank's level as the lamps on a panel show it: by eighths, never in gallons. */
const EIGHTHS = ['empty', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞', 'full'] as const;

/** The lamps in a word. @param share of the tank that is full; outside 0 to 1 is held to it */
export function tankLamps(share: number): { number: string; unit: string } {
  const eighths = Math.round(Math.min(1, Math.max(0, share)) * 8);
  const number = EIGHTHS[eighths]!;
  return { number, unit: eighths === 0 || eighths === 8 ? '' : 'full' };
}

/** Marks along a tank's scale: empty, quarters, full. */
export const tankTicks: readonly { at: number; text: string }[] = [
  { at: 0, text: 'E' },
  { at: 0.25, text: '¼' },
  { at: 0.5, text: '½' },
  { at: 0.75, text: '¾' },
  { at: 1, text: 'F' },
];
