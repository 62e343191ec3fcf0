import { requirePositive, requireWithin, requireZeroOrMore } from '../quantity-check.ts';
import { PSI_PER_FT } from './elevation.ts';
import { velocityFtS } from './velocity.ts';

/** Kinematic viscosity of water at 60 °F [ft²/s]. Common handbook value, from memory. */
export const WATER_VISCOSITY_FT2_S = 1.217e-5;

/** Acceleration of gravity [ft/s²]. */
const GRAVITY_FT_S2 = 32.174;

/** Reynolds number below which flow is laminar, and above which it is turbulent [-]. Source: EPANET 2.2 user manual, Darcy–Weisbach formula (from memory). */
export const LAMINAR_TO = 2000;
export const TURBULENT_FROM = 4000;

/**
 * Friction loss in pipe by Hazen–Williams.
 *   p = 4.52·Q^1.85·L/(C^1.85·d^4.87)
 * @param roughness Hazen–Williams C, 100 (old iron) to 150 (smooth) [-]
 * @param flowGpm flow [gpm]
 * @param diameterIn inside diameter [in]
 * @param lengthFt length [ft]
 * @returns friction loss [psi]
 * Valid: water near 60 °F, turbulent, pipe of 2 in and more.
 * Accuracy: within 1 % of EPANET's form of the same law (4.727, powers 1.852 and 4.871).
 * Outside: throws QuantityError.
 * @example hazenWilliamsPsi(100, 100, 1, 1) // 4.52
 * Source: NFPA 13, as printed in Pipe friction loss,
 * https://fire.ezvirtualtools.com/calc/pipe-friction-loss.html
 */
export function hazenWilliamsPsi(
  roughness: number,
  flowGpm: number,
  diameterIn: number,
  lengthFt: number,
): number {
  requirePositive('roughness', roughness, '');
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  requirePositive('diameterIn', diameterIn, 'in');
  requireZeroOrMore('lengthFt', lengthFt, 'ft');
  return (4.52 * flowGpm ** 1.85 * lengthFt) / (roughness ** 1.85 * diameterIn ** 4.87);
}

/**
 * Reynolds number of flow in a full bore.
 *   Re = v·d/ν
 * @param flowGpm flow [gpm]
 * @param diameterIn inside diameter [in]
 * @param viscosityFt2S kinematic viscosity; water at 60 °F where left out [ft²/s]
 * @returns Reynolds number [-]
 * Valid: any.
 * Outside: throws QuantityError.
 * @example reynoldsNumber(0, 2.5) // 0
 * Source: definition.
 */
export function reynoldsNumber(
  flowGpm: number,
  diameterIn: number,
  viscosityFt2S: number = WATER_VISCOSITY_FT2_S,
): number {
  requirePositive('viscosityFt2S', viscosityFt2S, 'ft²/s');
  return (velocityFtS(flowGpm, diameterIn) * (diameterIn / 12)) / viscosityFt2S;
}

/**
 * Darcy friction factor of turbulent flow by Swamee and Jain (1976).
 *   f = 0.25/log10(e/3.7 + 5.74/Re^0.9)²
 * @param reynolds Reynolds number [-]
 * @param relativeRoughness roughness over diameter [-]
 * @returns Darcy friction factor, not Fanning [-]
 * Valid: 5e3 ≤ Re ≤ 1e8 and 1e-6 ≤ e ≤ 5e-2 by its authors; used from 4,000 here as EPANET does.
 * Accuracy: within 1 to 3 % of Colebrook–White.
 * Outside: throws QuantityError below Re 4,000, above 1e8 and above e 0.05.
 * @example swameeJain1976(60000, 0.0023) // 0.027
 * Source: Swamee and Jain (1976), from memory; value from the documentation of a package of
 * Colebrook approximations, https://pypi.org/project/colebrook/
 */
export function swameeJain1976(reynolds: number, relativeRoughness: number): number {
  requireWithin('reynolds', reynolds, [TURBULENT_FROM, 1e8], '');
  requireWithin('relativeRoughness', relativeRoughness, [0, 0.05], '');
  return 0.25 / Math.log10(relativeRoughness / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
}

/** Cubic from (2000, 64/Re) to (4000, Swamee–Jain) that meets value and slope at both ends. */
function transitionFactor(reynolds: number, relativeRoughness: number): number {
  const span = TURBULENT_FROM - LAMINAR_TO;
  const t = (reynolds - LAMINAR_TO) / span;
  const low = 64 / LAMINAR_TO;
  const lowSlope = -low / LAMINAR_TO;
  const high = swameeJain1976(TURBULENT_FROM, relativeRoughness);
  const term = 5.74 / TURBULENT_FROM ** 0.9;
  const within = relativeRoughness / 3.7 + term;
  // d/dRe of 0.25/log10(within)²: the chain rule on 5.74/Re^0.9.
  const highSlope = (high * 2 * 0.9 * term) / (Math.log(within) * within * TURBULENT_FROM);
  return (
    (1 + 2 * t) * (1 - t) ** 2 * low +
    t * (1 - t) ** 2 * span * lowSlope +
    t ** 2 * (3 - 2 * t) * high +
    t ** 2 * (t - 1) * span * highSlope
  );
}

/**
 * Darcy friction factor at any Reynolds number.
 *   64/Re below 2,000; Swamee–Jain from 4,000; a cubic that meets both between
 * @param reynolds Reynolds number, above 0 [-]
 * @param relativeRoughness roughness over diameter [-]
 * @returns Darcy friction factor, not Fanning [-]
 * Valid: to Re 1e8; between 2,000 and 4,000 flow is unsteady and no value is sure.
 * Outside: throws QuantityError.
 * @example darcyFrictionFactor(1000, 0.001) // 0.064
 * Source: EPANET 2.2 user manual, Darcy–Weisbach formula (from memory).
 */
export function darcyFrictionFactor(reynolds: number, relativeRoughness: number): number {
  requirePositive('reynolds', reynolds, '');
  requireWithin('relativeRoughness', relativeRoughness, [0, 0.05], '');
  if (reynolds <= LAMINAR_TO) return 64 / reynolds;
  if (reynolds < TURBULENT_FROM) return transitionFactor(reynolds, relativeRoughness);
  return swameeJain1976(reynolds, relativeRoughness);
}

/** A bore for Darcy–Weisbach. */
export interface Bore {
  /** Inside diameter [in]. */
  diameterIn: number;
  /** Height of the wall's roughness; rubber-lined hose is near smooth, about 0.0002 in from memory [in]. */
  roughnessIn: number;
  /** Length [ft]. */
  lengthFt: number;
}

/**
 * Friction loss by Darcy–Weisbach, to compare with the coefficient law.
 *   h = f·(L/d)·v²/2g, p = 0.434·h
 * @param bore diameter, roughness and length [Bore]
 * @param flowGpm flow [gpm]
 * @param viscosityFt2S kinematic viscosity; water at 60 °F where left out [ft²/s]
 * @returns friction loss [psi]
 * Valid: as darcyFrictionFactor, for a bore that is known. Hose swells and its true bore is
 * seldom known, so hose goes by its measured coefficient.
 * Outside: throws QuantityError.
 * @example darcyWeisbachPsi({ diameterIn: 5, roughnessIn: 0, lengthFt: 100 }, 0) // 0
 * Source: Darcy–Weisbach, in any text.
 */
export function darcyWeisbachPsi(
  { diameterIn, roughnessIn, lengthFt }: Bore,
  flowGpm: number,
  viscosityFt2S: number = WATER_VISCOSITY_FT2_S,
): number {
  requireZeroOrMore('roughnessIn', roughnessIn, 'in');
  requireZeroOrMore('lengthFt', lengthFt, 'ft');
  const reynolds = reynoldsNumber(flowGpm, diameterIn, viscosityFt2S);
  if (reynolds === 0) return 0;
  const factor = darcyFrictionFactor(reynolds, roughnessIn / diameterIn);
  const headPerFt =
    (factor * velocityFtS(flowGpm, diameterIn) ** 2) / (2 * GRAVITY_FT_S2 * (diameterIn / 12));
  return PSI_PER_FT * headPerFt * lengthFt;
}
