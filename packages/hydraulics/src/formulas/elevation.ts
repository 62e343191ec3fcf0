import { requireFinite, requirePositive, requireZeroOrMore } from '../quantity-check.ts';

/**
 * Pressure of a foot of water [psi/ft]. Trade value; fresh water at 62.4 lb/ft³ gives 0.4333 and at
 * 62.5 lb/ft³ 0.4340 (62.5/144). Source: Formulas study cards; Pump Ops ch 7 study cards.
 */
export const PSI_PER_FT = 0.434;

/** The field's round value [psi/ft]: 15 % more than the water weighs. Source: NWCG 3.4 Calculating Engine Pump Pressures; Pump Ops ch 7 study cards. */
export const FIELD_PSI_PER_FT = 0.5;

/** The field's value for each floor above the first [psi]. Source: Engineer's Test 2014 study cards; Math Formulas study cards. */
export const PSI_PER_FLOOR = 5;

/**
 * Pressure taken by a climb, given back by a drop.
 *   EL = h·psiPerFt
 * @param riseFt height gained; negative: lost [ft]
 * @param psiPerFt pressure of a foot of water; 0.434 where left out, 0.5 by the field rule [psi/ft]
 * @returns pressure lost to height; negative: gained [psi]
 * Valid: any height.
 * Outside: throws QuantityError for an unreadable input.
 * @example elevationPsi(50) // 21.7
 * Source: Formulas study cards.
 */
export function elevationPsi(riseFt: number, psiPerFt: number = PSI_PER_FT): number {
  requireFinite('riseFt', riseFt, 'ft');
  requirePositive('psiPerFt', psiPerFt, 'psi/ft');
  return riseFt * psiPerFt;
}

/**
 * Pressure taken by floors climbed, by the field rule: the first floor counts nothing.
 *   EL = 5·(floor − 1)
 * @param floor floor reached, 1 being the ground floor [count]
 * @param psiPerFloor pressure for each floor above the first; 5 where left out [psi]
 * @returns pressure lost to height [psi]
 * Valid: floors of about 10 ft: 5 psi then stands for 4.34.
 * Outside: throws QuantityError below floor 1.
 * @example floorElevationPsi(6) // 25
 * Source: Engineer's Test 2014 study cards; Math Formulas study cards.
 */
export function floorElevationPsi(floor: number, psiPerFloor: number = PSI_PER_FLOOR): number {
  requireZeroOrMore('floor - 1', floor - 1, 'floors', 'The ground floor is floor 1.');
  requireZeroOrMore('psiPerFloor', psiPerFloor, 'psi');
  return (floor - 1) * psiPerFloor;
}

/**
 * Height of water that a pressure holds up.
 *   h = P/psiPerFt (1 psi holds 2.304 ft)
 * @param psi pressure [psi]
 * @param psiPerFt pressure of a foot of water; 0.434 where left out [psi/ft]
 * @returns head [ft]
 * Valid: any pressure.
 * Outside: throws QuantityError for an unreadable input.
 * @example headFt(1) // 2.304
 * Source: Formulas study cards.
 */
export function headFt(psi: number, psiPerFt: number = PSI_PER_FT): number {
  requireFinite('psi', psi, 'psi');
  requirePositive('psiPerFt', psiPerFt, 'psi/ft');
  return psi / psiPerFt;
}
