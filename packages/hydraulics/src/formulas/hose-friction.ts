import { requirePositive, requireZeroOrMore } from '../quantity-check.ts';
import { QuantityError } from '../quantity-error.ts';

/**
 * Exact factor from a US friction coefficient to a metric one [-]:
 * 6.894757 kPa/psi · 3.280840 ft/m ÷ (3.785412 L/gal)².
 * Metric coefficients count kPa, hundreds of L/min and hundreds of metres.
 */
export const METRIC_COEFFICIENT_PER_US = (6.894757 * 3.28084) / 3.785411784 ** 2;

/**
 * Friction loss in one hose line by the coefficient law.
 *   FL = C·(Q/100)²·(L/100)
 * @param coefficient friction coefficient C [psi per 100 ft at 100 gpm]
 * @param flowGpm flow in this line [gpm]
 * @param lengthFt length [ft]
 * @returns friction loss [psi]
 * Valid: flows that fire hose carries, fully turbulent; C is measured, not derived from the
 * diameter. At trickles the true exponent is lower, so the law reads low.
 * Outside: throws QuantityError for a negative or unreadable input.
 * @example hoseFrictionPsi(2, 200, 100) // 8
 * Source: Calculating Friction Loss in Hose Lays, City of Rohnert Park records; the IFSTA law.
 */
export function hoseFrictionPsi(coefficient: number, flowGpm: number, lengthFt: number): number {
  requireZeroOrMore('coefficient', coefficient, 'psi per 100 ft at 100 gpm');
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  requireZeroOrMore('lengthFt', lengthFt, 'ft');
  return coefficient * (flowGpm / 100) ** 2 * (lengthFt / 100);
}

/**
 * Flow that a pressure difference drives through a hose line: the coefficient law turned round.
 *   Q = 100·√(FL / (C·L/100))
 * @param coefficient friction coefficient C [psi per 100 ft at 100 gpm]
 * @param lossPsi pressure to spend on friction [psi]
 * @param lengthFt length [ft]
 * @returns flow [gpm]
 * Valid: as hoseFrictionPsi.
 * Outside: throws QuantityError; a coefficient or length of 0 would give any flow.
 * @example hoseFlowGpm(0.2, 20, 100) // 1000
 * Source: Which Supply Line?, FireRescue1 (4 in hose loses 20 psi per 100 ft at 1,000 gpm).
 */
export function hoseFlowGpm(coefficient: number, lossPsi: number, lengthFt: number): number {
  requirePositive('coefficient', coefficient, 'psi per 100 ft at 100 gpm');
  requireZeroOrMore('lossPsi', lossPsi, 'psi');
  requirePositive('lengthFt', lengthFt, 'ft');
  return 100 * Math.sqrt(lossPsi / (coefficient * (lengthFt / 100)));
}

/**
 * Friction coefficient of a hose from a measured loss: how a department proves its own hose.
 *   C = FL / ((Q/100)²·(L/100))
 * @param lossPsi measured loss, height already taken off [psi]
 * @param flowGpm flow while it was measured [gpm]
 * @param lengthFt length between the gauges [ft]
 * @returns friction coefficient C [psi per 100 ft at 100 gpm]
 * Valid: a loss large against the gauges' error.
 * Outside: throws QuantityError for no flow or no length.
 * @example effectiveCoefficient(6, 1000, 100) // 0.06
 * Source: the coefficient law; the example's loss is from Working With Large-Diameter Hose Part 1,
 * Fire Engineering.
 */
export function effectiveCoefficient(lossPsi: number, flowGpm: number, lengthFt: number): number {
  requireZeroOrMore('lossPsi', lossPsi, 'psi');
  requirePositive('flowGpm', flowGpm, 'gpm', 'A coefficient needs a loss measured with flow.');
  requirePositive('lengthFt', lengthFt, 'ft');
  return lossPsi / ((flowGpm / 100) ** 2 * (lengthFt / 100));
}

/**
 * Coefficient of lines side by side between the same two points, for their flow together.
 *   1/√C = Σ 1/√Cᵢ
 * @param coefficients friction coefficient of each line [psi per 100 ft at 100 gpm]
 * @returns equivalent coefficient for the total flow [psi per 100 ft at 100 gpm]
 * Valid: lines of equal length; lines of unlike length need the network solver.
 * Outside: throws QuantityError for no lines or a coefficient of 0.
 * @example parallelCoefficient([2, 2]) // 0.5
 * Source: equal loss in each line under the coefficient law; agrees with the printed siamese
 * coefficients of the IFSTA driver/operator text (from memory) within their rounding.
 */
export function parallelCoefficient(coefficients: readonly number[]): number {
  if (coefficients.length === 0) {
    throw new QuantityError({
      field: 'coefficients',
      value: '[]',
      allowed: 'one line or more',
      remedy: 'Name the coefficient of each line.',
    });
  }
  let conductance = 0;
  for (const [index, coefficient] of coefficients.entries()) {
    requirePositive(`coefficients[${index}]`, coefficient, 'psi per 100 ft at 100 gpm');
    conductance += 1 / Math.sqrt(coefficient);
  }
  return 1 / conductance ** 2;
}

/**
 * How a total flow shares itself among lines side by side.
 *   Qᵢ = Q·(1/√Cᵢ)/Σ(1/√Cⱼ)
 * @param coefficients friction coefficient of each line [psi per 100 ft at 100 gpm]
 * @param totalGpm flow in all lines together [gpm]
 * @returns flow in each line, in the order given [gpm]
 * Valid: lines of equal length.
 * Outside: throws QuantityError.
 * @example parallelFlowsGpm([2, 2], 500) // [250, 250]
 * Source: equal loss in each line under the coefficient law.
 */
export function parallelFlowsGpm(coefficients: readonly number[], totalGpm: number): number[] {
  requireZeroOrMore('totalGpm', totalGpm, 'gpm');
  const together = Math.sqrt(parallelCoefficient(coefficients));
  return coefficients.map((coefficient) => (totalGpm * together) / Math.sqrt(coefficient));
}

/**
 * A US friction coefficient in metric terms, exactly.
 *   C(kPa; Q in 100 L/min; L in 100 m) = 1.5786·C
 * @param coefficient friction coefficient C [psi per 100 ft at 100 gpm]
 * @returns metric coefficient [kPa per 100 m at 100 L/min]
 * Valid: any. The metric table in print is not an exact conversion: it gives 0.305 for 4 in hose
 * where 0.2 converts to 0.316, and 0.138 for 5 in where 0.08 converts to 0.126.
 * Outside: throws QuantityError for a negative coefficient.
 * @example metricCoefficient(0.2) // 0.3157
 * Source: the units' definitions (NIST SP 811, appendix B).
 */
export function metricCoefficient(coefficient: number): number {
  requireZeroOrMore('coefficient', coefficient, 'psi per 100 ft at 100 gpm');
  return coefficient * METRIC_COEFFICIENT_PER_US;
}
