import {
  availableFlowGpm,
  dropPercent,
  type HydrantClass,
  hydrantClass,
  RATING_RESIDUAL_PSI,
  ratingResidualPsi,
  supplyCurvePsi,
} from '@plugside/hydraulics';
import type { Hydrant } from '../plan/plan.ts';
import { finding, psi, refused, type TestFinding } from './finding.ts';
import type { FlowTestEntry } from './flow-test-entry.ts';
import { ageFindings, drawdownFindings, placeFindings } from './flow-test-findings.ts';
import { type TestFlow, testFlow } from './flow-test-flow.ts';
import type { OutletFlow } from './outlet-flow.ts';
import { yearsOn } from './test-date.ts';
import { isDatedAhead, latestTestDay } from './test-day.ts';

/** Public hydrants are tested again after this. NFPA 291 (2022) 4.15.1, as quoted in "NFPA 291 (2022) testing guidance", QRFS. */
export const RETEST_YEARS = 5;

export interface FlowTestResult {
  /** Flow of all outlets together [gpm]; null where nothing tells it. */
  flowGpm: number | null;
  flowFrom: TestFlow['from'];
  /** In the order of the test; null where an outlet's flow cannot be told. */
  outlets: readonly (OutletFlow | null)[];
  /** Drop as a share of static [%]. */
  dropPercent: number | null;
  /** Flow at 20 psi [gpm]; 0 where static is 20 psi or less. Less than the test's flow where it went below 20. */
  q20Gpm: number | null;
  /** Flow at the residual that the hydrant is rated at: 20 psi, or half static where static is under 40. */
  rating: { residualPsi: number; flowGpm: number } | null;
  class: HydrantClass | null;
  /** Pressure left in the main [psi] at a flow [gpm]; below 0 the main cannot give it. */
  curve: ((flowGpm: number) => number) | null;
  /** ISO date by which to test again; null where the test cannot be used: it counts for nothing. */
  retestOn: string | null;
  notices: readonly TestFinding[];
}

/**
 * What a flow test says of the main: total flow, flow at 20 psi, class, supply curve, and what to
 * doubt. Never throws: a test that cannot be used has an `error` among its notices and null for
 * what it cannot tell. Nothing is clamped: a test that drew the main below 20 psi is good, and
 * its flow at 20 psi is then less than what flowed.
 *   Q20 = Q·((static − 20)/(static − residual))^0.54
 * @param test pressures [psi], outlets, dates
 * @param options `today` (ISO date) to be told when the test is old; a test dated after it (or, left
 *   out, after the machine's day), one day allowed, cannot be used
 * @returns flows [gpm], curve [psi against gpm], notices
 * Source: Water-supply analysis, slides 1, 15 and 16 (http://tkolb.net/WatSup/sld001.htm); NFPA 291.
 */
export function flowTestResult(
  test: FlowTestEntry,
  options: { today?: string | undefined } = {},
): FlowTestResult {
  const { staticPsi, residualPsi } = test;
  const notices: TestFinding[] = [];
  if (!(staticPsi > 0 && Number.isFinite(staticPsi))) {
    notices.push(
      finding(
        'error',
        'no-static',
      )`Static is ${psi(staticPsi)}. Read it at the gauged hydrant before anything flows.`,
    );
  } else if (!(residualPsi >= 0 && Number.isFinite(residualPsi))) {
    notices.push(
      finding(
        'error',
        'no-residual',
      )`Residual is ${psi(residualPsi)}. Read it while everything flows; 0 or more.`,
    );
  } else if (residualPsi > staticPsi) {
    notices.push(
      finding(
        'error',
        'residual-above-static',
      )`Residual ${psi(residualPsi)} is above static ${psi(staticPsi)}. Check whether the two are swapped.`,
    );
  } else if (residualPsi === staticPsi) {
    notices.push(
      finding(
        'error',
        'no-drop',
      )`The pressure did not drop from ${psi(staticPsi)}. Flow more water: without a drop the main cannot be judged.`,
    );
  }
  const retestOn = yearsOn(test.testedOn, RETEST_YEARS);
  if (retestOn === null) {
    notices.push(
      finding(
        'error',
        'no-date',
      )`"${test.testedOn}" is no date. Write year-month-day, for instance 2024-05-20.`,
    );
  } else if (isDatedAhead(test.testedOn, options.today)) {
    notices.push(
      finding(
        'error',
        'dated-ahead',
      )`The test is dated ${test.testedOn}, after ${latestTestDay(options.today)}: it cannot have been made yet. Correct its date.`,
    );
  }
  const flow = testFlow(test, notices);
  const { flowGpm } = flow;
  const common = {
    flowGpm,
    flowFrom: flow.from,
    outlets: flow.outlets,
    notices,
  };
  if (refused(notices) || flowGpm === null || retestOn === null) {
    return {
      ...common,
      dropPercent: null,
      q20Gpm: null,
      rating: null,
      class: null,
      curve: null,
      retestOn: null,
    };
  }
  const measured = { staticPsi, residualPsi, testGpm: flowGpm };
  const ratedAtPsi = ratingResidualPsi(staticPsi);
  const rating = {
    residualPsi: ratedAtPsi,
    flowGpm: availableFlowGpm(measured, ratedAtPsi),
  };
  notices.push(
    ...drawdownFindings(test),
    ...placeFindings(test),
    ...ageFindings(test, retestOn, options.today),
  );
  return {
    ...common,
    retestOn,
    dropPercent: dropPercent(staticPsi, residualPsi),
    q20Gpm: staticPsi > RATING_RESIDUAL_PSI ? availableFlowGpm(measured) : 0,
    rating,
    class: hydrantClass(rating.flowGpm),
    curve: (drawnGpm) => supplyCurvePsi(measured, drawnGpm),
  };
}

/**
 * A test as a plan's hydrant takes it: static, residual [psi], flow [gpm], date. Null where the
 * test cannot be used.
 */
export function planSupply(
  test: FlowTestEntry,
): Required<Pick<Hydrant, 'staticPsi' | 'residualPsi' | 'testGpm' | 'testedOn'>> | null {
  const { flowGpm, curve } = flowTestResult(test);
  if (flowGpm === null || curve === null) return null;
  const { staticPsi, residualPsi, testedOn } = test;
  return { staticPsi, residualPsi, testGpm: flowGpm, testedOn };
}
