import { requirePositive } from '../quantity-check.ts';

/** Service test over operating pressure [-]: the standards define operating pressure as service test ÷ 1.1. Source: NFPA 1962-2018 excerpts. */
export const SERVICE_TEST_FACTOR = 1.1;

/** Greatest setting of a relief valve as a share of the hose's service test pressure [-]. Source: NFPA 1962-2018 excerpts. */
export const RELIEF_SHARE_OF_SERVICE_TEST = 0.9;

/**
 * Greatest relief valve setting for a hose.
 *   P = 0.9·service test
 * @param serviceTestPsi service test pressure marked on the hose [psi]
 * @returns relief setting [psi]
 * Valid: marked hose. 200 psi hose gives 180 here, while its operating pressure is printed as
 * 185 (200/1.1 = 182, rounded): both are in the standard. Use the marking.
 * Outside: throws QuantityError.
 * @example greatestReliefPsi(200) // 180
 * Source: NFPA 1962-2018 excerpts.
 */
export function greatestReliefPsi(serviceTestPsi: number): number {
  requirePositive('serviceTestPsi', serviceTestPsi, 'psi');
  return RELIEF_SHARE_OF_SERVICE_TEST * serviceTestPsi;
}

/**
 * Greatest operating pressure of a hose.
 *   P = service test/1.1
 * @param serviceTestPsi service test pressure marked on the hose [psi]
 * @returns operating pressure, not rounded [psi]
 * Valid: marked hose.
 * Outside: throws QuantityError.
 * @example operatingPressurePsi(200) // 181.8
 * Source: NFPA 1962-2018 excerpts; Comparing Four- and Five-Inch LDH, Fire Apparatus (prints 185).
 */
export function operatingPressurePsi(serviceTestPsi: number): number {
  requirePositive('serviceTestPsi', serviceTestPsi, 'psi');
  return serviceTestPsi / SERVICE_TEST_FACTOR;
}

/**
 * Pressure to service-test a hose at, from its greatest working pressure.
 *   P = 1.1·working pressure
 * @param workingPsi greatest working pressure [psi]
 * @returns service test pressure [psi]
 * Valid: booster hose, and any hose by the standard's definition.
 * Outside: throws QuantityError.
 * @example serviceTestPsi(800) // 880
 * Source: hose test pressures article of 2006 (110 % of the greatest working pressure).
 */
export function serviceTestPsi(workingPsi: number): number {
  requirePositive('workingPsi', workingPsi, 'psi');
  return SERVICE_TEST_FACTOR * workingPsi;
}
