import { requireFinite, requireZeroOrMore } from '../quantity-check.ts';

/** What a pump's discharge pressure is made of. */
export interface DischargePressureParts {
  /** Pressure wanted at the nozzle, or at the next pump's intake [psi]. */
  nozzlePsi: number;
  /** Friction in every line on the way [psi]. */
  frictionPsi: number;
  /** Loss of every appliance on the way; 0 where left out [psi]. */
  appliancePsi?: number;
  /** Pressure lost to height; negative: gained; 0 where left out [psi]. */
  elevationPsi?: number;
}

/**
 * Pump discharge pressure for a line.
 *   PDP = NP + FL + appliances ± elevation
 * @param parts the pressures that add up [DischargePressureParts]
 * @returns pump discharge pressure [psi]
 * Valid: one path from pump to nozzle; a network with several needs the solver.
 * Outside: throws QuantityError.
 * @example pumpDischargePsi({ nozzlePsi: 100, frictionPsi: 69.75, elevationPsi: 5 }) // 174.75
 * Source: all driver/operator texts; here Florida pump-operations exam answers.
 */
export function pumpDischargePsi({
  nozzlePsi,
  frictionPsi,
  appliancePsi = 0,
  elevationPsi = 0,
}: DischargePressureParts): number {
  requireZeroOrMore('nozzlePsi', nozzlePsi, 'psi');
  requireZeroOrMore('frictionPsi', frictionPsi, 'psi');
  requireZeroOrMore('appliancePsi', appliancePsi, 'psi');
  requireFinite('elevationPsi', elevationPsi, 'psi');
  return nozzlePsi + frictionPsi + appliancePsi + elevationPsi;
}
