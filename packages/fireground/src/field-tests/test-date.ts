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

export interface YearlySlope {
  /** Change [per year]. */
  perYear: number;
  /** Its standard error from the values' own [per year]. */
  error: number;
}

/**
 * Slope of values over time by least squares, all weighed alike.
 * @param points `error` is the standard error of the value; 0 where left out
 * @returns slope; null where the tests span under a year, which is too short to tell
 * Source: propagation of independent errors, slope = Σ(tᵢ − t̄)yᵢ / Σ(tᵢ − t̄)².
 */
export function yearlySlope(
  points: readonly { on: string; value: number; error?: number }[],
): YearlySlope | null {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last || yearsBetween(first.on, last.on) < 0.9) return null;
  const years = points.map(({ on }) => yearsBetween(first.on, on));
  const meanYear = years.reduce((a, b) => a + b, 0) / years.length;
  let across = 0;
  let along = 0;
  let errors = 0;
  for (const [index, year] of years.entries()) {
    const { value, error = 0 } = points[index]!;
    across += (year - meanYear) * value;
    along += (year - meanYear) ** 2;
    errors += ((year - meanYear) * error) ** 2;
  }
  return { perYear: across / along, error: Math.sqrt(errors) / along };
}

/** The slope alone [per year]. */
export function perYear(points: readonly { on: string; value: number }[]): number | null {
  return yearlySlope(points)?.perYear ?? null;
}
