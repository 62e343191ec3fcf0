import { type FlowStep, RATING_RESIDUAL_PSI, stepFlowAt } from '@plugside/hydraulics';
import { finding, gpm, psi, type TestFinding } from './finding.ts';
import { type FlowTestResult, flowTestResult } from './flow-test.ts';
import type { FlowTestEntry } from './flow-test-entry.ts';
import { perYear } from './test-date.ts';

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

export interface FlowTestHistory<T extends HistoryEntry = HistoryEntry> {
  /** Oldest first. */
  tests: readonly TestedFlow<T>[];
  /** The one that plans use. */
  used: TestedFlow<T> | null;
  usedBecause: 'chosen' | 'newest' | null;
  days: readonly StepDay[];
  /** Least-squares change over the years; null under two usable tests a year apart. */
  trend: { q20GpmPerYear: number; staticPsiPerYear: number; q20ChangeShare: number } | null;
  notices: readonly TestFinding[];
}

/** Change of the flow at 20 psi, or of static [psi], over the years that is worth a question. Ours, no source. */
const WORTH_ASKING = { q20Share: 0.2, staticPsi: 10 } as const;
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
  const daily = byDay.map((each) => each.at(-1)!);
  const trend = trendOf(daily);
  if (trend) notices.push(...trendFindings(daily, trend.q20ChangeShare));
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

function trendOf(daily: readonly TestedFlow[]): FlowTestHistory['trend'] {
  const q20 = perYear(
    daily.map(({ test, result }) => ({ on: test.testedOn, value: result.q20Gpm! })),
  );
  const still = perYear(daily.map(({ test }) => ({ on: test.testedOn, value: test.staticPsi })));
  if (q20 === null || still === null) return null;
  const from = daily[0]!.result.q20Gpm!;
  const to = daily.at(-1)!.result.q20Gpm!;
  return {
    q20GpmPerYear: q20,
    staticPsiPerYear: still,
    q20ChangeShare: from > 0 ? to / from - 1 : 0,
  };
}

function trendFindings(daily: readonly TestedFlow[], share: number): TestFinding[] {
  const found: TestFinding[] = [];
  const first = daily[0]!;
  const last = daily.at(-1)!;
  if (share <= -WORTH_ASKING.q20Share) {
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
