import { requireCount, requireZeroOrMore } from '../quantity-check.ts';

/** Pressure to pump at a sprinkler connection where no other order stands [psi]. Source: Engineer's Test 2014 study cards; Sprinkler/standpipe connection pressures. */
export const SPRINKLER_CONNECTION_PSI = 150;

/** Pressure to pump at a standpipe connection before floors are added [psi]. Source: Sprinkler/standpipe connection pressures. */
export const STANDPIPE_BASE_PSI = 150;

/** Friction coefficients of standpipe risers by size [psi per 100 ft at 100 gpm]. From memory of the IFSTA driver/operator text. */
export const RISER_COEFFICIENTS = { 4: 0.374, 5: 0.126, 6: 0.052 } as const;

/**
 * Pressure at a standpipe connection by one department's rule.
 *   P = 150 + 5·floors, up to 9 floors; 200 from 10
 * @param floors floors of the building [count]
 * @param basePsi pressure before floors are added; 150 where left out [psi]
 * @param psiPerFloor added for each floor; 5 where left out [psi]
 * @returns pressure at the connection [psi]
 * Valid: as the rule; high-rise systems need their own pressures from the building's plan.
 * Outside: throws QuantityError for no floors.
 * @example standpipeConnectionPsi(6) // 180
 * Source: Sprinkler/standpipe connection pressures.
 */
export function standpipeConnectionPsi(
  floors: number,
  basePsi: number = STANDPIPE_BASE_PSI,
  psiPerFloor = 5,
): number {
  requireCount('floors', floors, 1);
  requireZeroOrMore('basePsi', basePsi, 'psi');
  requireZeroOrMore('psiPerFloor', psiPerFloor, 'psi');
  return floors >= 10 ? basePsi + 10 * psiPerFloor : basePsi + psiPerFloor * floors;
}
