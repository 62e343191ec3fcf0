import {
  FLOW_EXPONENT,
  type FlowStep,
  LEAST_DROP_PERCENT,
  RATING_RESIDUAL_PSI,
  stepFlowAt,
} from '@plugside/hydraulics';
import { finding, gpm, psi, type TestFinding } from './finding.ts';
import { type FlowTestResult, flowTestResult } from './flow-test.ts';
import type { FlowTestEntry } from './flow-test-entry.ts';
import { perYear, yearlySlope } from './test-date.ts';

/** A test among others of the same hydrant. */
export interface HistoryEntry extends FlowTestEntry {
  id?: string | undefined;
}

export interface TestedFlow<T extends HistoryEntry = HistoryEntry> {
  test: T;
  result: FlowTestResult;
}

/** A day on which one hydrant was tested at several flows. */
export interface StepDay {
  testedOn: string;
  /** What each point alone projects at 20 psi, smallest and greatest [gpm]. */
  lowGpm: number;
  highGpm: number;
  /** (greatest − smallest)/smallest. */
  spreadShare: number;
  /** Flow at 20 psi read between the points, projected only past the last one [gpm]; null where the points do not fall in order. */
  flowGpm: number | null;
  basis: 'between steps' | 'projected' | null;
}

/** Least-squares change over the years, one value a day. */
export interface FlowTrend {
  q20GpmPerYear: number;
  /** Two standard errors of it where static and residual may each be read 1 psi off [gpm a year]. */
  q20ErrorGpmPerYear: number;
  /** The change is no larger than that. */
  withinReadingError: boolean;
  staticPsiPerYear: number;
  q20ChangeShare: number;
  /** Tests left out of it: their drop is too small to project from. */
  leftOut: number;
}

export interface FlowTestHistory<T extends HistoryEntry = HistoryEntry> {
  /** Oldest first. */
  tests: readonly TestedFlow<T>[];
  /** The one that plans use. */
  used: TestedFlow<T> | null;
  usedBecause: 'chosen' | 'newest' | null;
  days: readonly StepDay[];
  /** Null under two tests a year apart that dropped the pressure enough to tell. */
  trend: FlowTrend | null;
  notices: readonly TestFinding[];
}

/** Change of the flow at 20 psi, or of static [psi], over the years that is worth a question. Ours, no source. */
const WORTH_ASKING = { q20Share: 0.2, staticPsi: 10 } as const;
/** Gauges are read to this [psi]; common practice, no source. */
const READ_TO_PSI = 1;
/** Spread of one day's points that is worth telling. Ours, no source. */
const SPREAD_FROM = 0.1;

/**
 * A hydrant's tests over the years: which one plans use (the chosen one, else the newest that can
 * be used; of several on that day the one that drew the main down most), how the points of one
 * day agree, and the trend.
 * @param tests of one hydrant, in any order
 * @param options `chosenId` as the hydrant's record has it; `today` as in flowTestResult
 */
export function flowTestHistory<T extends HistoryEntry>(
  tests: readonly T[],
  options: { chosenId?: string | undefined; today?: string | undefined } = {},
): FlowTestHistory<T> {
  const told = [...tests]
    .sort((a, b) => a.testedOn.localeCompare(b.testedOn) || b.residualPsi - a.residualPsi)
    .map((test) => ({ test, result: flowTestResult(test, options) }));
  const usable = told.filter(({ result }) => result.curve !== null);
  const notices: TestFinding[] = [];
  const chosen = options.chosenId
    ? told.find(({ test }) => test.id === options.chosenId)
    : undefined;
  const chosenUsable = chosen?.result.curve ? chosen : undefined;
  if (options.chosenId && !chosenUsable) {
    notices.push(
      finding(
        'caution',
        'chosen-unusable',
      )`The test chosen for plans ${chosen ? 'cannot be used' : 'is no longer there'}; the newest one stands in.`,
    );
  }
  const used = chosenUsable ?? usable.at(-1) ?? null;
  if (chosenUsable && usable.at(-1)!.test.testedOn > chosenUsable.test.testedOn) {
    notices.push(
      finding(
        'fact',
        'newer-test',
      )`Plans use the test of ${chosenUsable.test.testedOn}, as chosen; there is a newer one of ${usable.at(-1)!.test.testedOn}.`,
    );
  }
  const byDay = groupedByDay(usable);
  const days = byDay.filter((each) => each.length > 1).map(stepDay);
  for (const day of days) {
    if (day.spreadShare < SPREAD_FROM) continue;
    const read =
      day.flowGpm === null
        ? finding(
            'caution',
            'points-disagree',
          )`The points of ${day.testedOn} project ${gpm(day.lowGpm)} to ${gpm(day.highGpm)} at ${psi(RATING_RESIDUAL_PSI)}, and more flow did not always leave less pressure. Test again.`
        : finding(
            'caution',
            'points-disagree',
          )`The points of ${day.testedOn} project ${gpm(day.lowGpm)} to ${gpm(day.highGpm)} at ${psi(RATING_RESIDUAL_PSI)}; ${day.basis === 'between steps' ? 'read between the points' : 'projected from the deepest one'} it is ${gpm(day.flowGpm)}. Trust the points nearest ${psi(RATING_RESIDUAL_PSI)}.`;
    notices.push(read);
  }
  const trend = trendOf(byDay);
  const daily = byDay.map((each) => each.at(-1)!);
  if (trend) notices.push(...trendFindings(daily, trend));
  for (const { test, result } of told) {
    const isNewer = !used || test.testedOn > used.test.testedOn;
    const isPassedOver = isNewer && result.curve === null;
    const why = result.notices.find(({ level }) => level === 'error');
    if (!isPassedOver || !why) continue;
    const lead = `The test of ${test.testedOn} is not used. `;
    notices.push({
      level: 'caution',
      code: 'newer-unusable',
      parts: [lead, ...why.parts],
      text: lead + why.text,
    });
  }
  const usedBecause = used ? (chosenUsable ? 'chosen' : 'newest') : null;
  return { tests: told, used, usedBecause, days, trend, notices };
}

/** Sorted tests, those of one day together. */
function groupedByDay<T extends HistoryEntry>(sorted: readonly TestedFlow<T>[]): TestedFlow<T>[][] {
  const days: TestedFlow<T>[][] = [];
  for (const each of sorted) {
    const day = days.at(-1);
    if (day?.[0]?.test.testedOn === each.test.testedOn) day.push(each);
    else days.push([each]);
  }
  return days;
}

function trendOf(byDay: readonly TestedFlow[][]): FlowTrend | null {
  const told = byDay.flatMap((points) => {
    const deepest = points.at(-1)!;
    if ((deepest.result.dropPercent ?? 0) < LEAST_DROP_PERCENT.newer) return [];
    const read = points.length > 1 ? stepDay(points).flowGpm : null;
    const value = read ?? deepest.result.q20Gpm!;
    return [{ on: deepest.test.testedOn, value, error: q20ErrorGpm(deepest) }];
  });
  const slope = yearlySlope(told);
  const still = perYear(
    byDay.map(([first]) => ({ on: first!.test.testedOn, value: first!.test.staticPsi })),
  );
  if (slope === null || still === null) return null;
  const from = told[0]!.value;
  const to = told.at(-1)!.value;
  const q20ErrorGpmPerYear = 2 * slope.error;
  return {
    q20GpmPerYear: slope.perYear,
    q20ErrorGpmPerYear,
    withinReadingError: Math.abs(slope.perYear) <= q20ErrorGpmPerYear,
    staticPsiPerYear: still,
    q20ChangeShare: from > 0 ? to / from - 1 : 0,
    leftOut: byDay.length - told.length,
  };
}

/**
 * Standard error of a test's flow at 20 psi where static and residual are each read 1 psi off [gpm].
 *   Q20 = Q·(a/d)^n, a = static − 20, d = static − residual: ∂/∂residual = n·Q20/d,
 *   ∂/∂static = n·Q20·(1/a − 1/d)
 */
function q20ErrorGpm({ test, result }: TestedFlow): number {
  const a = test.staticPsi - RATING_RESIDUAL_PSI;
  const d = test.staticPsi - test.residualPsi;
  if (a <= 0 || d <= 0) return 0;
  const unit = FLOW_EXPONENT * result.q20Gpm! * READ_TO_PSI;
  return Math.hypot(unit / d, unit * (1 / a - 1 / d));
}

function trendFindings(daily: readonly TestedFlow[], trend: FlowTrend): TestFinding[] {
  const found: TestFinding[] = [];
  const first = daily[0]!;
  const last = daily.at(-1)!;
  if (!trend.withinReadingError && trend.q20ChangeShare <= -WORTH_ASKING.q20Share) {
    found.push(
      finding(
        'caution',
        'flow-fell',
      )`The flow at ${psi(RATING_RESIDUAL_PSI)} fell from ${gpm(first.result.q20Gpm!)} to ${gpm(last.result.q20Gpm!)} since ${first.test.testedOn}. A valve left part shut or a tuberculated main does this: ask the water utility.`,
    );
  }
  const change = last.test.staticPsi - first.test.staticPsi;
  if (Math.abs(change) >= WORTH_ASKING.staticPsi) {
    found.push(
      finding(
        'caution',
        'static-moved',
      )`Static went from ${psi(first.test.staticPsi)} to ${psi(last.test.staticPsi)} since ${first.test.testedOn}. Ask the water utility whether the pressure zone changed.`,
    );
  }
  return found;
}

/** Several usable points of one day, by falling residual. */
function stepDay(points: readonly TestedFlow[]): StepDay {
  const projected = points.map(({ result }) => result.q20Gpm!);
  const lowGpm = Math.min(...projected);
  const highGpm = Math.max(...projected);
  const staticPsi = Math.max(...points.map(({ test }) => test.staticPsi));
  const steps: FlowStep[] = points.map(({ test, result }) => ({
    residualPsi: test.residualPsi,
    testGpm: result.flowGpm!,
  }));
  const inOrder =
    staticPsi > RATING_RESIDUAL_PSI &&
    steps.every((step, at) => {
      const before = steps[at - 1];
      return !before || (step.testGpm > before.testGpm && step.residualPsi < before.residualPsi);
    });
  const read = inOrder ? stepFlowAt(staticPsi, steps) : null;
  return {
    testedOn: points[0]!.test.testedOn,
    lowGpm,
    highGpm,
    spreadShare: lowGpm > 0 ? highGpm / lowGpm - 1 : 0,
    flowGpm: read?.flowGpm ?? null,
    basis: read?.basis ?? null,
  };
}
