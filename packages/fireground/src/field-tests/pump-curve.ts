import { capabilityFlowGpm, capabilityPsi } from '@plugside/hydraulics';
import { formatNumber } from '../units/format-quantity.ts';
import { finding, gpm, psi, type TestFinding } from './finding.ts';
import {
  atFullSpeed,
  headShare,
  type PumpReading,
  provenOutline,
  type ReadingAtSpeed,
} from './pump-speed.ts';
import { perYear } from './test-date.ts';
import { isDatedAhead } from './test-day.ts';

/** A pump test as a department writes it down. */
export interface PumpTestEntry {
  id?: string | undefined;
  /** ISO date. */
  testedOn: string;
  points: readonly PumpReading[];
}

/**
 * What the rating asks for: share of rated capacity [-] at a net pressure [psi]. Relay Pumping
 * Operations lesson p3, Firehouse; a pump maker's performance test table.
 */
export const RATING_POINTS = [
  { share: 1, netPsi: 150 },
  { share: 0.7, netPsi: 200 },
  { share: 0.5, netPsi: 250 },
] as const;

/** Under this share of its rating a pump is to be mended or rated down. From memory of the in-service test standard (NFPA 1911). */
export const LEAST_SHARE_OF_RATING = 0.9;

export interface RatingPoint {
  netPsi: number;
  requiredGpm: number;
  /** Null where the test went nowhere near this point. */
  gotGpm: number | null;
  share: number | null;
}

export interface PumpTrendRow {
  testedOn: string;
  shareOfRating: number | null;
  /** Net pressure at rated capacity [psi]; null where the test did not reach it, or nothing is rated. */
  netAtRatedPsi: number | null;
  /** Pressure against the first test's that has speeds, at the same flow and speed [-]; null without speeds. */
  headShareOfFirst: number | null;
}

export interface PumpCurve<T extends PumpTestEntry = PumpTestEntry> {
  test: T | null;
  /** Readings of that test, at full speed where speeds are given. */
  readings: readonly ReadingAtSpeed[];
  fullSpeedRpm: number | null;
  /** Net pressure [psi] against flow [gpm]: a rig's `capability` in a plan. Null where the test gives none. */
  points: readonly (readonly [flowGpm: number, netPsi: number])[] | null;
  rating: readonly RatingPoint[];
  /** Least share of the rating's points that the test reached [-]. */
  shareOfRating: number | null;
  /** Oldest first. */
  trend: readonly PumpTrendRow[];
  /** Least-squares change of the share of rating [per year]; null under a year. */
  sharePerYear: number | null;
  notices: readonly TestFinding[];
}

/** Pressure lost against the first test that is worth a question. Ours, no source. */
const WEAR_FROM = 0.05;

/**
 * A rig's own pump curve out of its tests, against its rating, and its wear over the years.
 * Readings with a speed are brought to full speed by the affinity laws, as far as the power of
 * the test goes. The curve ends at the greatest flow shown: a plan asks for nothing unproven.
 * Never throws: a test that gives no curve has an `error` among the notices.
 * @param tests of one rig, in any order
 * @param ratedGpm rated capacity at 150 psi net [gpm]; undefined where the rig has none
 * @param options `chosenId`: another test than the newest. `fullSpeedRpm`: where left out, the
 *   greatest speed of the test [rpm]. `today`: ISO date, the machine's where left out; a test dated
 *   after it, one day allowed, counts for nothing and is told
 */
export function pumpCurve<T extends PumpTestEntry>(
  tests: readonly T[],
  ratedGpm: number | undefined,
  options: {
    chosenId?: string | undefined;
    fullSpeedRpm?: number | undefined;
    today?: string | undefined;
  } = {},
): PumpCurve<T> {
  const ahead = tests.filter(({ testedOn }) => isDatedAhead(testedOn, options.today));
  const sorted = tests
    .filter((one) => !ahead.includes(one))
    .sort((a, b) => a.testedOn.localeCompare(b.testedOn));
  const test =
    sorted.find(({ id }) => id !== undefined && id === options.chosenId) ?? sorted.at(-1);
  const notices: TestFinding[] = [];
  for (const { testedOn } of ahead) {
    notices.push(
      finding(
        'caution',
        'dated-ahead',
      )`The test dated ${testedOn} is not used: it cannot have been made yet. Correct its date.`,
    );
  }
  const one = readTest(test?.points ?? [], ratedGpm, options.fullSpeedRpm);
  if (!one.points) {
    notices.push(
      finding(
        'error',
        'no-curve',
      )`No curve can be drawn. Enter a flow and a net pressure above 0 for each reading.`,
    );
  } else {
    notices.push(...curveFindings(one));
  }
  if (test && !test.points.every(readable)) {
    notices.push(
      finding(
        'caution',
        'reading-left-out',
      )`A reading is left out: flow and net pressure must be numbers of 0 or more.`,
    );
  }
  // Speeds are often written down from some year on only.
  const first = sorted.find(({ points }) => points.some(({ speedRpm }) => speedRpm));
  const trend = sorted.map((each) => {
    const read = readTest(each.points, ratedGpm, options.fullSpeedRpm);
    return {
      testedOn: each.testedOn,
      shareOfRating: read.shareOfRating,
      netAtRatedPsi: netAt(read.points, ratedGpm),
      headShareOfFirst: !first || each === first ? null : headShare(first.points, each.points),
    };
  });
  const lastHead = trend.at(-1)?.headShareOfFirst ?? null;
  if (lastHead !== null && lastHead < 1 - WEAR_FROM) {
    notices.push(
      finding(
        'caution',
        'wear',
      )`At the same speed and flow the pump makes ${String(Math.round((1 - lastHead) * 100))} % less pressure than on ${first!.testedOn}. Worn clearances do this, or a gauge or tachometer that is off.`,
    );
  }
  const shares = trend.flatMap(({ testedOn, shareOfRating }) =>
    shareOfRating === null ? [] : [{ on: testedOn, value: shareOfRating }],
  );
  return { test: test ?? null, ...one, trend, sharePerYear: perYear(shares), notices };
}

/** Pressure at a flow that the test reached [psi]; null where it did not. */
function netAt(points: PumpCurve['points'], flowGpm: number | undefined): number | null {
  const last = points?.at(-1);
  if (!points || !last || !flowGpm || flowGpm > last[0]) return null;
  return capabilityPsi(points, flowGpm);
}

type OneTest = Pick<PumpCurve, 'readings' | 'fullSpeedRpm' | 'points' | 'rating' | 'shareOfRating'>;

/** A reading that can be: neither a flow nor a pressure below 0. */
const readable = ({ flowGpm, netPsi }: PumpReading): boolean =>
  flowGpm >= 0 && netPsi >= 0 && Number.isFinite(flowGpm + netPsi);

function readTest(
  written: readonly PumpReading[],
  ratedGpm: number | undefined,
  fullSpeedRpm: number | undefined,
): OneTest {
  const points = written.filter(readable);
  const speeds = points.flatMap(({ speedRpm }) => (speedRpm ? [speedRpm] : []));
  const full = fullSpeedRpm ?? (speeds.length > 0 ? Math.max(...speeds) : null);
  const readings = full
    ? atFullSpeed(points, full)
    : points.map((one) => ({ ...one, measured: one, heldBy: 'measured' as const }));
  const outline = provenOutline(readings);
  const rated = ratedGpm !== undefined && ratedGpm > 0 ? ratedGpm : null;
  const rating = (rated === null ? [] : RATING_POINTS).map(({ share, netPsi }) => {
    const requiredGpm = share * rated!;
    // A test that never came near this pressure or flow says nothing of it.
    const reached =
      outline !== null &&
      readings.some((one) => one.netPsi <= netPsi * 1.05 || one.flowGpm >= requiredGpm) &&
      readings.some((one) => one.netPsi >= netPsi * 0.95);
    const gotGpm = reached ? capabilityFlowGpm(outline, netPsi) : null;
    return { netPsi, requiredGpm, gotGpm, share: gotGpm === null ? null : gotGpm / requiredGpm };
  });
  const shares = rating.flatMap(({ share }) => (share === null ? [] : [share]));
  return {
    readings,
    fullSpeedRpm: full,
    points: outline,
    rating,
    shareOfRating: shares.length > 0 ? Math.min(...shares) : null,
  };
}

function curveFindings(one: OneTest): TestFinding[] {
  const found: TestFinding[] = [];
  const points = one.points!;
  const [lastGpm] = points.at(-1)!;
  found.push(
    finding(
      'fact',
      'curve-ends',
    )`The curve ends at ${gpm(lastGpm)}, the greatest flow shown: a plan asks this pump for no more.`,
  );
  if (one.readings.every(({ measured }) => measured.flowGpm > 0)) {
    found.push(
      finding(
        'fact',
        'no-shut-off',
      )`No reading at shut-off: under ${gpm(points[1]![0])} the pressure is held at ${psi(points[0]![1])}, the greatest measured.`,
    );
  }
  const moved = one.readings.filter(
    (each) => Math.abs(each.netPsi - each.measured.netPsi) > 0.5,
  ).length;
  if (moved > 0) {
    found.push(
      finding(
        'fact',
        'brought-to-speed',
      )`${String(moved)} ${moved === 1 ? 'reading is' : 'readings are'} brought to ${formatNumber(one.fullSpeedRpm!, 0)} rpm by the affinity laws, no further than the power that the test proved.`,
    );
  }
  const weak = one.rating.filter(({ share }) => share !== null && share < 0.995);
  for (const { netPsi, gotGpm, requiredGpm, share } of weak) {
    const percent = String(Math.round(share! * 100));
    found.push(
      share! < LEAST_SHARE_OF_RATING
        ? finding(
            'caution',
            'under-rating',
          )`At ${psi(netPsi)} net it gives ${gpm(gotGpm!)}, ${percent} % of the ${gpm(requiredGpm)} it is rated for. Under 90 %, mend it or rate it down (NFPA 1911, from memory).`
        : finding(
            'fact',
            'under-rating',
          )`At ${psi(netPsi)} net it gives ${gpm(gotGpm!)}, ${percent} % of the ${gpm(requiredGpm)} it is rated for.`,
    );
  }
  for (const { netPsi, requiredGpm } of one.rating.filter(({ share }) => share === null)) {
    found.push(
      finding('fact', 'stage-untested')`Not tested: ${gpm(requiredGpm)} at ${psi(netPsi)} net.`,
    );
  }
  return found;
}
