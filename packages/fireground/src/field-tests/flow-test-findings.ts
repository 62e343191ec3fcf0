import {
  dropPercent,
  LEAST_DROP_PERCENT,
  RATING_RESIDUAL_PSI,
  ratingResidualPsi,
} from '@plugside/hydraulics';
import { finding, psi, type TestFinding } from './finding.ts';
import type { FlowTestEntry } from './flow-test-entry.ts';

/** What the drop of a usable test says of its projection. */
export function drawdownFindings({ staticPsi, residualPsi }: FlowTestEntry): TestFinding[] {
  const found: TestFinding[] = [];
  const percent = dropPercent(staticPsi, residualPsi);
  const shown = `${percent < 10 ? percent.toFixed(1) : Math.round(percent)} %`;
  if (percent < LEAST_DROP_PERCENT.newer) {
    found.push(
      finding(
        'caution',
        'small-drop',
      )`The pressure dropped only ${shown}. Under 10 % a projection is unreliable: a gauge error of ${psi(1)} moves it far. Flow more water.`,
    );
  } else if (percent < LEAST_DROP_PERCENT.edition2010) {
    found.push(
      finding(
        'fact',
        'drop-under-25',
      )`The pressure dropped ${shown}: enough for newer editions of NFPA 291 (10 %, from memory), under the 25 % of the 2010 edition (4.3.6).`,
    );
  }
  if (residualPsi < RATING_RESIDUAL_PSI) {
    found.push(
      finding(
        'fact',
        'below-20',
      )`The test drew the main to ${psi(residualPsi)}, under ${psi(RATING_RESIDUAL_PSI)}. The flow at ${psi(RATING_RESIDUAL_PSI)} is rightly less than what flowed. Do not draw it this low again without the water utility.`,
    );
  }
  const ratedAtPsi = ratingResidualPsi(staticPsi);
  if (ratedAtPsi < RATING_RESIDUAL_PSI) {
    found.push(
      finding(
        'caution',
        'weak-hydrant',
      )`Static is under ${psi(40)}: the hydrant is rated at half its static, ${psi(ratedAtPsi)} ("20 psi or half static", FireHydrant.org; the trigger of 40 from memory).`,
    );
  }
  return found;
}

/** Where the water flowed, where that colours the result. */
export function placeFindings({ flowing }: FlowTestEntry): TestFinding[] {
  if (flowing.length === 0 || flowing.some(({ hydrant }) => hydrant)) return [];
  return [
    finding(
      'fact',
      'one-hydrant',
    )`No other flowing hydrant is named. Gauged and flowed at one hydrant, its own losses count against the main ("Conducting a Fire Flow Test", MTAS).`,
  ];
}

/** Whether the test is due again. */
export function ageFindings(
  { testedOn }: FlowTestEntry,
  retestOn: string,
  today: string | undefined,
): TestFinding[] {
  if (today === undefined || today <= retestOn) return [];
  return [
    finding(
      'caution',
      'old-test',
    )`Tested on ${testedOn}; due again since ${retestOn}: every 5 years, NFPA 291 (2022) 4.15.1 as quoted by QRFS.`,
  ];
}
