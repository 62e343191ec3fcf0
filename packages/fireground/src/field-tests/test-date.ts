/** Days as ISO dates (`2024-05-31`): no clock, no time zone. */

const DAY_MS = 86_400_000;
const DAYS_PER_YEAR = 365.2425;

/** Years from one ISO date to another; negative where the second is the earlier. */
export function yearsBetween(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / DAY_MS / DAYS_PER_YEAR;
}

/** The same day some whole years on; 29 February becomes 1 March where there is none. Null for what is no date. */
export function yearsOn(date: string, years: number): string | null {
  const day = new Date(date);
  if (Number.isNaN(day.getTime())) return null;
  day.setUTCFullYear(day.getUTCFullYear() + years);
  return day.toISOString().slice(0, 10);
}

/**
 * Slope of values over time by least squares.
 * @returns change [per year]; null where the tests span under a year, which is too short to tell
 */
export function perYear(points: readonly { on: string; value: number }[]): number | null {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last || yearsBetween(first.on, last.on) < 0.9) return null;
  const years = points.map(({ on }) => yearsBetween(first.on, on));
  const meanYear = years.reduce((a, b) => a + b, 0) / years.length;
  const meanValue = points.reduce((sum, { value }) => sum + value, 0) / points.length;
  let across = 0;
  let along = 0;
  for (const [index, year] of years.entries()) {
    across += (year - meanYear) * (points[index]!.value - meanValue);
    along += (year - meanYear) ** 2;
  }
  return across / along;
}
