import { requireWithin, requireZeroOrMore } from '../quantity-check.ts';

/** Standard air pressure at sea level [psi]. Source: U.S. Standard Atmosphere. */
export const SEA_LEVEL_PSI = 14.696;

/**
 * Air pressure by altitude in the standard atmosphere.
 *   p = 14.696·(1 − 6.8754e-6·Z)^5.2559
 * @param altitudeFt height above sea level [ft]
 * @returns air pressure [psi]
 * Valid: −16,500 to 36,000 ft. Weather moves it by about half a psi either way.
 * Accuracy: within 0.02 psi of the printed table.
 * Outside: throws QuantityError.
 * @example airPressurePsi(5000) // 12.23
 * Source: U.S. Standard Atmosphere, equation and table as printed in Standard Atmospheric Data for
 * Altitude and Temperature, https://engineersedge.com/calculators/standard_atmospheric_data_15729.htm
 */
export function airPressurePsi(altitudeFt: number): number {
  requireWithin('altitudeFt', altitudeFt, [-16_500, 36_000], 'ft');
  return SEA_LEVEL_PSI * (1 - 6.8754e-6 * altitudeFt) ** 5.2559;
}

/**
 * Air pressure by the field rule.
 *   p = 14.7 − 0.5·Z/1000
 * @param altitudeFt height above sea level [ft]
 * @param psiPer1000Ft pressure lost in 1,000 ft; 0.5 where left out [psi]
 * @returns air pressure [psi]
 * Valid: 0 to about 8,000 ft; at 10,000 ft it reads 0.4 psi low.
 * Outside: throws QuantityError above 10,000 ft.
 * @example fieldAirPressurePsi(4200) // 12.6
 * Source: Chapter 11 Static Water Supply Sources study cards; Engineer's Test 2014 study cards.
 */
export function fieldAirPressurePsi(altitudeFt: number, psiPer1000Ft = 0.5): number {
  requireWithin(
    'altitudeFt',
    altitudeFt,
    [0, 10_000],
    'ft',
    'The field rule ends here; use airPressurePsi.',
  );
  requireZeroOrMore('psiPer1000Ft', psiPer1000Ft, 'psi');
  return 14.7 - (psiPer1000Ft * altitudeFt) / 1000;
}

// IAPWS SR1-86 (1992), equation 1, for the vapour pressure of ordinary water. From memory.
const CRITICAL_K = 647.096;
const CRITICAL_MPA = 22.064;
const SATURATION_TERMS: readonly (readonly [coefficient: number, power: number])[] = [
  [-7.85951783, 1],
  [1.84408259, 1.5],
  [-11.7866497, 3],
  [22.6807411, 3.5],
  [-15.9618719, 4],
  [1.80122502, 7.5],
];
const PSI_PER_MPA = 145.03774;

/**
 * Pressure at which water boils, by its temperature.
 *   ln(p/pc) = (Tc/T)·(a1·τ + a2·τ^1.5 + a3·τ^3 + a4·τ^3.5 + a5·τ^4 + a6·τ^7.5), τ = 1 − T/Tc
 * @param waterF water temperature [°F]
 * @returns vapour pressure, absolute [psi]
 * Valid: 32 to 212 °F here; the equation reaches the critical point.
 * Accuracy: within 0.1 % of the handbook table over this range.
 * Outside: throws QuantityError.
 * @example vapourPressurePsi(212) // 14.71
 * Source: IAPWS SR1-86 (1992), revised supplementary release on saturation properties, eq. 1 (from
 * memory), proved against Vapor Pressure of Water, Handbook of Chemistry and Physics (1992-93).
 */
export function vapourPressurePsi(waterF: number): number {
  requireWithin('waterF', waterF, [32, 212], '°F');
  const kelvin = (waterF + 459.67) / 1.8;
  const tau = 1 - kelvin / CRITICAL_K;
  let sum = 0;
  for (const [coefficient, power] of SATURATION_TERMS) sum += coefficient * tau ** power;
  return CRITICAL_MPA * PSI_PER_MPA * Math.exp((CRITICAL_K / kelvin) * sum);
}
