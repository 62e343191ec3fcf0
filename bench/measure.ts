/** A small harness for speed: warm-up, repeated timing, and tables that say how things compare. */

/** One thing that was timed. */
export interface Measurement {
  name: string;
  /** Calls timed. */
  runs: number;
  /** Seconds for one call. */
  min: number;
  median: number;
  mean: number;
  /** Standard deviation of a call [s]; 0 for a single run. */
  sd: number;
}

export interface MeasureOptions {
  /** Least time spent on warm-up, which is not counted [s]. */
  warmUpS?: number;
  /** Least time spent on timed calls [s]. */
  timedS?: number;
  /** Least number of timed calls. */
  leastRuns?: number;
}

/** A call shorter than this is repeated inside one timing, so that the clock's own step does not show [s]. */
const SHORTEST_TIMING_S = 1e-3;

/**
 * Times a piece of work. It must return something that depends on what it did, which is
 * kept, so that the compiler cannot leave the work out.
 */
export function measure(
  name: string,
  work: () => unknown,
  { warmUpS = 0.3, timedS = 1, leastRuns = 5 }: MeasureOptions = {},
): Measurement {
  let calls = 0;
  const warmUp = now();
  do {
    kept = work();
    calls += 1;
  } while (now() - warmUp < warmUpS);
  const roughS = (now() - warmUp) / calls;
  const repeats = Math.max(1, Math.ceil(SHORTEST_TIMING_S / roughS));

  const times: number[] = [];
  const start = now();
  while (times.length < leastRuns || now() - start < timedS) {
    const from = now();
    for (let i = 0; i < repeats; i += 1) kept = work();
    times.push((now() - from) / repeats);
  }
  return { name, runs: times.length * repeats, ...summarize(times) };
}

/** Holds the last result of timed work, out of the compiler's sight. */
let kept: unknown;
/** The last result of timed work. */
export function lastResult(): unknown {
  return kept;
}

function now(): number {
  return performance.now() / 1000;
}

/**
 * @throws RangeError when there is no time to summarize
 */
export function summarize(times: readonly number[]): Omit<Measurement, 'name' | 'runs'> {
  if (times.length === 0) throw new RangeError('No times to summarize; give at least one.');
  const sorted = [...times].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle]!;
  const median = sorted.length % 2 ? upper : (sorted[middle - 1]! + upper) / 2;
  const mean = times.reduce((sum, t) => sum + t, 0) / times.length;
  const spread = times.reduce((sum, t) => sum + (t - mean) ** 2, 0);
  const sd = times.length > 1 ? Math.sqrt(spread / (times.length - 1)) : 0;
  return { min: sorted[0]!, median, mean, sd };
}

/**
 * Random numbers from 0 up to 1 that are the same on every run and machine: the 32-bit
 * "mulberry32" generator (public domain).
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * Prints a table. The last column says how many times the first row's median each takes,
 * so the row to compare with goes first.
 */
export function printTable(title: string, rows: readonly Measurement[]): void {
  const first = rows[0]?.median;
  const cells = rows.map((row) => [
    row.name,
    String(row.runs),
    formatSeconds(row.min),
    formatSeconds(row.median),
    `${formatSeconds(row.mean)} ± ${formatSeconds(row.sd)}`,
    first ? formatRatio(row.median / first) : '',
  ]);
  const table = [['', 'runs', 'min', 'median', 'mean ± sd', 'ratio'], ...cells];
  const widths = table[0]!.map((_, i) => Math.max(...table.map((line) => line[i]!.length)));
  console.log(`\n${title}`);
  for (const line of table) {
    const padded = line.map((cell, i) =>
      i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!),
    );
    console.log(`  ${padded.join('  ')}`);
  }
}

function formatRatio(ratio: number): string {
  return `${ratio >= 1000 ? Math.round(ratio) : ratio.toPrecision(3)}×`;
}

/** Three significant digits with the unit that suits: `12.3 µs`. */
export function formatSeconds(seconds: number): string {
  const [unit, scale] =
    seconds >= 1
      ? ['s', 1]
      : seconds >= 1e-3
        ? ['ms', 1e3]
        : seconds >= 1e-6
          ? ['µs', 1e6]
          : ['ns', 1e9];
  return `${(seconds * Number(scale)).toPrecision(3)} ${unit}`;
}
