import { requireFinite, requirePositive, requireZeroOrMore } from '../quantity-check.ts';
import { QuantityError } from '../quantity-error.ts';
import { PSI_PER_FT } from './elevation.ts';
import { hoseFrictionPsi } from './hose-friction.ts';

/** Intake pressure to keep at the next pump [psi]. Source: Relay Pumping Operations lesson p3, Firehouse. */
export const RELAY_INTAKE_PSI = 20;

/** Discharge pressures of the printed relay tables [psi]. Source: Relay Pumping Operations lesson p3, Firehouse. */
export const RELAY_DISCHARGE_PSI = {
  /** 2½ and 3 in hose. */
  under3HalfIn: 200,
  /** 4 and 5 in hose. */
  largeDiameter: 185,
} as const;

/** Constant-pressure relay: every pump at 175 psi, about 1,000 ft apart [psi, ft]. Source: Relay Pumping Operations lesson p4, Firehouse; Relay pumping slides. */
export const CONSTANT_PRESSURE_RELAY = { pdpPsi: 175, spacingFt: 1000 } as const;

/** Pressures and hose that a relay runs on. */
export interface RelayBasis {
  /** Flow to carry [gpm]. */
  flowGpm: number;
  /** Coefficient of the lay, parallel lines taken together [psi per 100 ft at 100 gpm]. */
  coefficient: number;
  /** Greatest discharge pressure [psi]. */
  pdpPsi: number;
  /** Intake pressure to keep at the next pump; 20 where left out [psi]. */
  residualPsi?: number;
}

function pressureToSpend({ pdpPsi, residualPsi = RELAY_INTAKE_PSI }: RelayBasis): number {
  requirePositive('pdpPsi', pdpPsi, 'psi');
  requireZeroOrMore('residualPsi', residualPsi, 'psi');
  if (pdpPsi <= residualPsi) {
    throw new QuantityError({
      field: 'pdpPsi',
      value: pdpPsi,
      allowed: `more than residualPsi (${residualPsi} psi)`,
      remedy: 'Raise the discharge pressure or keep less at the next intake.',
    });
  }
  return pdpPsi - residualPsi;
}

/**
 * Greatest distance from one pump to the next.
 *   L = 100·(PDP − residual)/(C·(Q/100)² + 0.434·slope)
 * @param basis flow, hose and pressures [RelayBasis]
 * @param risePer100Ft height gained in 100 ft of hose; negative: lost; 0 where left out [ft]
 * @returns distance; Infinity where the drop pays for the friction [ft]
 * Valid: as the coefficient law; tables in print round down, by up to 13 %.
 * Outside: throws QuantityError for no flow and for a discharge pressure below the residual.
 * @example relaySpacingFt({ flowGpm: 500, coefficient: 0.2, pdpPsi: 185 }) // 3300
 * Source: basis from Relay Pumping Operations lesson p3, Firehouse; formula from memory.
 */
export function relaySpacingFt(basis: RelayBasis, risePer100Ft = 0): number {
  requirePositive('flowGpm', basis.flowGpm, 'gpm');
  requirePositive('coefficient', basis.coefficient, 'psi per 100 ft at 100 gpm');
  requireFinite('risePer100Ft', risePer100Ft, 'ft');
  const spend = pressureToSpend(basis);
  const lossPer100Ft =
    hoseFrictionPsi(basis.coefficient, basis.flowGpm, 100) + PSI_PER_FT * risePer100Ft;
  return lossPer100Ft <= 0 ? Number.POSITIVE_INFINITY : (100 * spend) / lossPer100Ft;
}

/** A relay with its pumps equally far apart. */
export interface RelayPlan {
  /** Greatest distance between pumps [ft]. */
  spacingFt: number;
  /** Lays between pumps [count]. */
  hoseSections: number;
  /** Pumps, the one at the source and the attack pump included [count]. */
  pumpers: number;
  /** Length of each lay when all are alike [ft]. */
  sectionFt: number;
  /** Discharge pressure that then suffices [psi]. */
  pdpNeededPsi: number;
}

/**
 * Pumps for a relay over a distance.
 *   lays = ⌈distance/spacing⌉, pumpers = lays + 1
 * @param basis flow, hose and pressures [RelayBasis]
 * @param distanceFt hose from source to attack pump [ft]
 * @param riseFt height gained over the whole distance; negative: lost; 0 where left out [ft]
 * @returns lays, pumps, equal length and pressure [RelayPlan]
 * Valid: height spread evenly; a hill in between needs the solver. Keep two lengths of hose in
 * reserve for each pumper.
 * Outside: throws QuantityError.
 * @example relayPlan({ flowGpm: 1000, coefficient: 0.08, pdpPsi: 185 }, 4500).pumpers // 4
 * Source: Relay Pumping Operations lesson p3, Firehouse (basis); equal spacing is ours.
 */
export function relayPlan(basis: RelayBasis, distanceFt: number, riseFt = 0): RelayPlan {
  requirePositive('distanceFt', distanceFt, 'ft');
  requireFinite('riseFt', riseFt, 'ft');
  const spacingFt = relaySpacingFt(basis, (100 * riseFt) / distanceFt);
  // An exact multiple must not gain a pump by the last digit of a division.
  const hoseSections = Math.max(1, Math.ceil(distanceFt / spacingFt - 1e-9));
  const sectionFt = distanceFt / hoseSections;
  const pdpNeededPsi =
    hoseFrictionPsi(basis.coefficient, basis.flowGpm, sectionFt) +
    (PSI_PER_FT * riseFt) / hoseSections +
    (basis.residualPsi ?? RELAY_INTAKE_PSI);
  return { spacingFt, hoseSections, pumpers: hoseSections + 1, sectionFt, pdpNeededPsi };
}
