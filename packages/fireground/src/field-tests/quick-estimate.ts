import {
  availableFlowGpm,
  dropPercent,
  extraVolumesByFirstDigit,
  extraVolumesByPercent,
  greatestLinesBySquaring,
  RATING_RESIDUAL_PSI,
  supplyCurvePsi,
} from '@plugside/hydraulics';
import { finding, gpm, psi, type TestFinding } from './finding.ts';

/** What the operator reads at the panel with one line flowing. */
export interface PanelReading {
  /** Intake gauge before water flowed [psi]. */
  staticPsi: number;
  /** Intake gauge now [psi]. */
  residualPsi: number;
  /** The line flowing [gpm]. */
  flowGpm: number;
}

/** One way to say how many more lines there are. */
export interface LineEstimate {
  method: 'percent' | 'first digit' | 'squaring' | 'curve';
  /** Further lines like the one flowing. */
  moreLines: number;
  /** All of them together with the one flowing [gpm]. */
  totalGpm: number;
  /** What the supply curve leaves at the intake with all of them [psi]; below 0 they cannot all flow. */
  leftPsi: number;
}

export interface QuickEstimate {
  dropPercent: number | null;
  rules: readonly LineEstimate[];
  /** The curve's own answer to 20 psi; `moreLines` is whole lines. */
  curve: LineEstimate | null;
  /** Flow at 20 psi at the intake [gpm], and further lines it is worth, in parts of a line. */
  q20Gpm: number | null;
  moreVolumes: number | null;
  /** Flow at which the curve is down to 0 psi [gpm]. */
  emptyGpm: number | null;
  notices: readonly TestFinding[];
}

/**
 * How many more like lines a hydrant gives, at the panel: the three rules in use, beside the
 * supply curve's own answer to 20 psi at the intake. Never throws: readings that tell nothing
 * give an `error` among the notices.
 * @param reading intake pressures [psi] and the flow of the one line [gpm]
 * @returns whole lines, flows [gpm], what each leaves [psi]
 * Valid: one line from one hydrant, pump not yet short of water. The gauge also sees the loss of
 * the supply hose, which grows a little faster than the main's.
 * Source: Tracking/estimating water supply on the fire ground; Engineer's Test 2014 study cards;
 * squaring from memory of driver/operator texts; the curve as availableFlowGpm.
 */
export function quickEstimate(reading: PanelReading): QuickEstimate {
  const { staticPsi, residualPsi, flowGpm } = reading;
  const wrong = wrongReading(reading);
  if (wrong) {
    return {
      dropPercent: null,
      rules: [],
      curve: null,
      q20Gpm: null,
      moreVolumes: null,
      emptyGpm: null,
      notices: [wrong],
    };
  }
  const test = { staticPsi, residualPsi, testGpm: flowGpm };
  const estimate = (method: LineEstimate['method'], moreLines: number): LineEstimate => {
    const totalGpm = flowGpm * (1 + moreLines);
    return { method, moreLines, totalGpm, leftPsi: supplyCurvePsi(test, totalGpm) };
  };
  const drop = staticPsi - residualPsi;
  const squared =
    staticPsi > RATING_RESIDUAL_PSI ? greatestLinesBySquaring(staticPsi, drop) - 1 : 0;
  const rules = [
    estimate('percent', extraVolumesByPercent(staticPsi, residualPsi)),
    estimate('first digit', extraVolumesByFirstDigit(staticPsi, residualPsi)),
    estimate('squaring', Math.max(0, squared)),
  ];
  const q20Gpm = staticPsi > RATING_RESIDUAL_PSI ? availableFlowGpm(test) : 0;
  const moreVolumes = q20Gpm / flowGpm - 1;
  const curve = estimate('curve', Math.max(0, Math.floor(moreVolumes + 1e-9)));
  return {
    dropPercent: dropPercent(staticPsi, residualPsi),
    rules,
    curve,
    q20Gpm,
    moreVolumes,
    emptyGpm: availableFlowGpm(test, 0),
    notices: estimateFindings(reading, rules, moreVolumes),
  };
}

function wrongReading({ staticPsi, residualPsi, flowGpm }: PanelReading): TestFinding | null {
  if (!(staticPsi > 0 && Number.isFinite(staticPsi))) {
    return finding(
      'error',
      'no-static',
    )`Static is ${psi(staticPsi)}: read the intake gauge before water flows.`;
  }
  if (!(flowGpm > 0 && Number.isFinite(flowGpm))) {
    return finding(
      'error',
      'no-flow',
    )`The flow is ${gpm(flowGpm)}: flow one line and enter what it takes.`;
  }
  if (!(residualPsi >= 0 && residualPsi <= staticPsi)) {
    return finding(
      'error',
      'residual-above-static',
    )`Residual ${psi(residualPsi)} is above static ${psi(staticPsi)}. Check whether the two are swapped.`;
  }
  if (residualPsi === staticPsi) {
    return finding(
      'error',
      'no-drop',
    )`The gauge did not drop, so it tells nothing yet. Flow more water.`;
  }
  return null;
}

function estimateFindings(
  { staticPsi, residualPsi }: PanelReading,
  rules: readonly LineEstimate[],
  moreVolumes: number,
): TestFinding[] {
  const found: TestFinding[] = [];
  const over = rules.filter((rule) => rule.moreLines > Math.max(0, moreVolumes) + 1e-9);
  for (const { method, moreLines, leftPsi } of over) {
    const name = {
      percent: 'The percentage rule',
      'first digit': 'The first-digit rule',
      squaring: 'Squaring',
      curve: 'The curve',
    }[method];
    const left =
      leftPsi > 0
        ? finding(
            'caution',
            `${method.replace(' ', '-')}-overstates`,
          )`${name} promises ${String(moreLines)} more; by the curve that leaves ${psi(leftPsi)}, under the ${psi(RATING_RESIDUAL_PSI)} to keep.`
        : finding(
            'caution',
            `${method.replace(' ', '-')}-overstates`,
          )`${name} promises ${String(moreLines)} more; by the curve the hydrant cannot give that much.`;
    found.push(left);
  }
  if (residualPsi < RATING_RESIDUAL_PSI) {
    found.push(
      finding(
        'caution',
        'under-20',
      )`The intake is under ${psi(RATING_RESIDUAL_PSI)} already: no more lines.`,
    );
  }
  if (dropPercent(staticPsi, residualPsi) < 5) {
    found.push(
      finding(
        'caution',
        'small-drop',
      )`The gauge dropped by little: ${psi(1)} more or less changes the answer. Look again with more water flowing.`,
    );
  }
  found.push(
    finding(
      'fact',
      'rule-of-thumb',
    )`The percentage rule is a rule of thumb: just under its steps (10, 15 and 25 % drop) it overstates what is left above ${psi(RATING_RESIDUAL_PSI)}. The intake gauge also sees the supply hose.`,
  );
  return found;
}
