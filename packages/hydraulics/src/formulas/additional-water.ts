import { requirePositive, requireZeroOrMore } from '../quantity-check.ts';
import { QuantityError } from '../quantity-error.ts';
import { dropPercent, RATING_RESIDUAL_PSI } from './hydrant-flow-test.ts';

// Rules for the pump panel: how much more water like that now flowing a hydrant can give. They are
// rough, and at small drops they promise more than the supply curve gives: show both.

/**
 * Further volumes by the percentage rule.
 *   drop ≤ 10 %: 3; ≤ 15 %: 2; ≤ 25 %: 1; more: less than one, given as 0
 * @param staticPsi intake pressure before water flowed [psi]
 * @param residualPsi intake pressure now [psi]
 * @returns further volumes like the one flowing [count]
 * Valid: one line flowing from one hydrant. Printed in whole percents; 10.1 to 10.9 takes the lower
 * number. At a 10 % drop from 80 psi the supply curve to 20 psi gives 1.97 volumes, not 3.
 * Outside: throws QuantityError for a residual above static.
 * @example extraVolumesByPercent(80, 60) // 1
 * Source: Tracking/estimating water supply on the fire ground; Engineer's Test 2014 study cards;
 * the last step from memory.
 */
export function extraVolumesByPercent(staticPsi: number, residualPsi: number): 0 | 1 | 2 | 3 {
  // The drop is a quotient: 10 % must not become 10.000000000000002 %.
  const percent = dropPercent(staticPsi, residualPsi) - 1e-9;
  if (percent <= 10) return 3;
  if (percent <= 15) return 2;
  return percent <= 25 ? 1 : 0;
}

/**
 * Further volumes by the first-digit rule.
 *   drop ≤ digit: 3; ≤ 2·digit: 2; ≤ 3·digit: 1; digit = tens of static
 * @param staticPsi intake pressure before water flowed [psi]
 * @param residualPsi intake pressure now [psi]
 * @returns further volumes like the one flowing [count]
 * Valid: as extraVolumesByPercent. For 100 psi and more the tens are taken (105 gives 10), as the
 * rule intends a tenth of static.
 * Outside: throws QuantityError for a residual above static.
 * @example extraVolumesByFirstDigit(65, 59) // 3
 * Source: Tracking/estimating water supply on the fire ground; the last step from memory.
 */
export function extraVolumesByFirstDigit(staticPsi: number, residualPsi: number): 0 | 1 | 2 | 3 {
  dropPercent(staticPsi, residualPsi);
  const digit = Math.floor(staticPsi / 10);
  const drop = staticPsi - residualPsi;
  if (drop <= digit) return 3;
  if (drop <= 2 * digit) return 2;
  return drop <= 3 * digit ? 1 : 0;
}

/**
 * Drop for several like lines by the squaring rule.
 *   drop(n) = n²·drop(1)
 * @param oneLineDropPsi drop with one line flowing [psi]
 * @param lines like lines flowing [count]
 * @returns drop [psi]
 * Valid: a little cautious: mains follow the 1.85 power, so three lines drop 7.6 times, not 9.
 * Outside: throws QuantityError.
 * @example squaredDropPsi(5, 3) // 45
 * Source: from memory of driver/operator texts.
 */
export function squaredDropPsi(oneLineDropPsi: number, lines: number): number {
  requireZeroOrMore('oneLineDropPsi', oneLineDropPsi, 'psi');
  requireZeroOrMore('lines', lines, 'lines');
  return lines ** 2 * oneLineDropPsi;
}

/**
 * Like lines that a hydrant feeds by the squaring rule, the one flowing included.
 *   greatest n with static − n²·drop ≥ target
 * @param staticPsi intake pressure before water flowed [psi]
 * @param oneLineDropPsi drop with one line flowing [psi]
 * @param targetPsi residual to keep; 20 where left out [psi]
 * @returns lines [count]
 * Valid: as squaredDropPsi.
 * Outside: throws QuantityError for no drop, and for a target above static.
 * @example greatestLinesBySquaring(70, 5) // 3
 * Source: from memory of driver/operator texts.
 */
export function greatestLinesBySquaring(
  staticPsi: number,
  oneLineDropPsi: number,
  targetPsi: number = RATING_RESIDUAL_PSI,
): number {
  requirePositive('staticPsi', staticPsi, 'psi');
  requirePositive('oneLineDropPsi', oneLineDropPsi, 'psi', 'No drop: flow more water to judge by.');
  requireZeroOrMore('targetPsi', targetPsi, 'psi');
  if (targetPsi > staticPsi) {
    throw new QuantityError({
      field: 'targetPsi',
      value: targetPsi,
      allowed: `staticPsi (${staticPsi} psi) or less`,
      remedy: 'This hydrant never shows the residual asked for.',
    });
  }
  return Math.floor(Math.sqrt((staticPsi - targetPsi) / oneLineDropPsi) + 1e-9);
}
