/** How long after the call or an arrival something may be [min]. */
export const MINUTES = { least: 0, greatest: 120 } as const;

export type MinutesRead = { ok: true; minutes: number } | { ok: false; message: string };

/**
 * Minutes as they are typed: `6.5`, `6.5 min` or `6:30`.
 * @param heldMin what goes on counting where the text cannot be taken [min]
 */
export function readMinutes(text: string, heldMin: number): MinutesRead {
  const minutes = minutesIn(text.trim());
  if (minutes >= MINUTES.least && minutes <= MINUTES.greatest) return { ok: true, minutes };
  const range = `${MINUTES.least} to ${MINUTES.greatest} min`;
  const held = `Until then ${shownMinutes(heldMin)} min counts.`;
  const what = Number.isNaN(minutes) ? `Give minutes as a number, ${range}.` : `Give ${range}.`;
  return { ok: false, message: `${what} ${held}` };
}

/** Tenths are worth showing. */
export function shownMinutes(minutes: number): string {
  return String(Number(minutes.toFixed(1)));
}

/** The next half minute up or down, within the range. */
export function steppedMinutes(minutes: number, steps: 1 | -1): number {
  const halves = Number((minutes * 2).toFixed(3));
  const next = steps > 0 ? Math.floor(halves) + 1 : Math.ceil(halves) - 1;
  return Math.min(MINUTES.greatest, Math.max(MINUTES.least, next / 2));
}

function minutesIn(text: string): number {
  const clock = /^(\d{1,4}):([0-5]\d)$/.exec(text);
  if (clock) return Number(clock[1]) + Number(clock[2]) / 60;
  const number = /^([-−+]?(?:\d+\.?\d*|\.\d+))\s*(?:min|minutes?)?$/i.exec(text);
  return number ? Number(number[1]!.replace('−', '-')) : Number.NaN;
}
