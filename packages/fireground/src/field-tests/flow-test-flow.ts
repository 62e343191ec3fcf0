import { finding, gpm, type TestFinding } from './finding.ts';
import type { FlowTestEntry } from './flow-test-entry.ts';
import { type OutletFlow, outletFlow } from './outlet-flow.ts';

/** Total flow of a test and where it comes from. */
export interface TestFlow {
  flowGpm: number | null;
  from: 'outlets' | 'stated' | null;
  outlets: readonly (OutletFlow | null)[];
}

/** A stated flow further than this from the outlets' own is worth a question. Ours, no source. */
const DISAGREES_FROM = 0.05;

/**
 * Total flow [gpm]: the outlets' together where each tells its flow, else as stated. Readings
 * outrank a stated total, unless an outlet's size had to be assumed. Adds to `findings` what to
 * doubt, and the error that no flow can be told.
 */
export function testFlow(
  test: Pick<FlowTestEntry, 'flowing' | 'statedFlowGpm'>,
  findings: TestFinding[],
): TestFlow {
  const { flowing, statedFlowGpm } = test;
  const outlets = flowing.map((outlet, index) =>
    outletFlow(outlet, `Outlet ${index + 1}`, findings),
  );
  const told = outlets.filter((each) => each !== null);
  const sumGpm = told.reduce((sum, { flowGpm }) => sum + flowGpm, 0);
  const complete = told.length > 0 && told.length === outlets.length && sumGpm > 0;
  const stated = statedFlowGpm !== undefined && statedFlowGpm > 0;
  if (complete && stated && Math.abs(sumGpm / statedFlowGpm - 1) > DISAGREES_FROM) {
    const percent = Math.round(Math.abs(sumGpm / statedFlowGpm - 1) * 100);
    findings.push(
      finding(
        'caution',
        'stated-disagrees',
      )`The outlets add up to ${gpm(sumGpm)}; ${gpm(statedFlowGpm)} was stated, ${String(percent)} % off. Check outlet sizes, coefficients and pitot readings.`,
    );
  }
  const assumed = told.some((each) => each.assumed);
  if (complete && !(stated && assumed)) return { flowGpm: sumGpm, from: 'outlets', outlets };
  if (stated) {
    if (outlets.length > told.length && told.length > 0) {
      findings.push(
        finding(
          'caution',
          'outlet-without-flow',
        )`An outlet has neither pitot nor meter, so the stated ${gpm(statedFlowGpm)} stands.`,
      );
    }
    return { flowGpm: statedFlowGpm, from: 'stated', outlets };
  }
  findings.push(
    told.length > 0 && told.length < outlets.length
      ? finding(
          'error',
          'outlet-without-flow',
        )`An outlet has no pitot reading that can be used and no meter reading: the total cannot be told. Enter it, or state the total flow.`
      : finding(
          'error',
          'no-flow',
        )`No flow can be told. Enter a pitot reading for each flowing outlet, a metered flow, or the total.`,
  );
  return { flowGpm: null, from: null, outlets };
}
