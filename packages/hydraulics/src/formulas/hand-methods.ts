import { requirePositive, requireWithin } from '../quantity-check.ts';

/**
 * Friction loss of a hand line by a department's mental rule.
 *   FL per 100 ft = gpm·N/10 − 10
 * @param flowGpm flow [gpm]
 * @param hoseNumber the rule's number for the hose; 3 for 1¾ in [-]
 * @returns friction loss [psi per 100 ft]
 * Valid: near 150 gpm in 1¾ in hose, where it gives 35 psi against 34.9 by C = 15.5. It is a
 * straight line laid on a curve: at 250 gpm it gives 65 psi against 96.9.
 * Outside: throws QuantityError below 100/N gpm, where the rule goes negative.
 * @example handMethodPsiPer100Ft(250, 3) // 65
 * Source: Hydraulics study cards (hand method).
 */
export function handMethodPsiPer100Ft(flowGpm: number, hoseNumber: number): number {
  requirePositive('hoseNumber', hoseNumber, '');
  requireWithin(
    'flowGpm',
    flowGpm,
    [100 / hoseNumber, Number.MAX_VALUE],
    'gpm',
    'The hand rule goes negative at small flows; use the coefficient law.',
  );
  return (flowGpm * hoseNumber) / 10 - 10;
}

/**
 * Friction loss of a 4 in supply line by a mental rule.
 *   FL per 100 ft = q·(q − 1)/4, q in hundreds of gpm
 * @param flowGpm flow [gpm]
 * @returns friction loss [psi per 100 ft]
 * Valid: about 500 to 1,500 gpm in 4 in hose; at 1,000 gpm it gives 22.5 psi against 20 by C = 0.2.
 * Outside: throws QuantityError below 100 gpm, where the rule goes negative.
 * @example supplyHandMethodPsiPer100Ft(1000) // 22.5
 * Source: Hydraulics study cards (hand method).
 */
export function supplyHandMethodPsiPer100Ft(flowGpm: number): number {
  requireWithin(
    'flowGpm',
    flowGpm,
    [100, Number.MAX_VALUE],
    'gpm',
    'The hand rule goes negative at small flows; use the coefficient law.',
  );
  const q = flowGpm / 100;
  return (q * (q - 1)) / 4;
}
