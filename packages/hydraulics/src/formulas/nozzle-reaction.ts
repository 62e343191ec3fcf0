import { requirePositive, requireZeroOrMore } from '../quantity-check.ts';

/** Smooth-bore reaction constant [lb/in²·psi]: twice the area of a 1 in tip, 2·π/4 = 1.571. Source: Formulas study cards; Math Formulas study cards. */
export const SMOOTH_BORE_REACTION_CONSTANT = 1.57;

/** The field's round value of it [lb/in²·psi]. Source: Formulas study cards. */
export const FIELD_SMOOTH_BORE_REACTION_CONSTANT = 1.5;

/** Fog reaction constant [lb/gpm·√psi]. Source: Formulas study cards; Math Formulas study cards. */
export const FOG_REACTION_CONSTANT = 0.0505;

/** The field's round value of it [lb/gpm·√psi]: Q·√NP/20, half the gpm at 100 psi. Source: Fireground Hydraulics in Your Head: Nozzle Reaction, Fire Engineering. */
export const FIELD_FOG_REACTION_CONSTANT = 1 / 20;

/**
 * Push of a smooth-bore nozzle.
 *   NR = 1.57·d²·NP
 * @param tipIn tip diameter [in]
 * @param nozzlePsi nozzle pressure [psi]
 * @param constant reaction constant; 1.57 where left out, 1.5 in the field [lb/in²·psi]
 * @returns reaction [lb]
 * Valid: straight solid stream.
 * Outside: throws QuantityError.
 * @example smoothBoreReactionLb(1.125, 50) // 99.35
 * Source: Formulas study cards; Math Formulas study cards.
 */
export function smoothBoreReactionLb(
  tipIn: number,
  nozzlePsi: number,
  constant: number = SMOOTH_BORE_REACTION_CONSTANT,
): number {
  requirePositive('tipIn', tipIn, 'in');
  requireZeroOrMore('nozzlePsi', nozzlePsi, 'psi');
  requirePositive('constant', constant, 'lb/in²·psi');
  return constant * tipIn ** 2 * nozzlePsi;
}

/**
 * Push of a fog nozzle on straight stream.
 *   NR = 0.0505·Q·√NP
 * @param flowGpm flow [gpm]
 * @param nozzlePsi nozzle pressure [psi]
 * @param constant reaction constant; 0.0505 where left out, 0.05 in the field [lb/gpm·√psi]
 * @returns reaction [lb]
 * Valid: straight stream; a wide fog pushes less.
 * Outside: throws QuantityError.
 * @example fogReactionLb(200, 100) // 101
 * Source: Formulas study cards; Math Formulas study cards.
 */
export function fogReactionLb(
  flowGpm: number,
  nozzlePsi: number,
  constant: number = FOG_REACTION_CONSTANT,
): number {
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  requireZeroOrMore('nozzlePsi', nozzlePsi, 'psi');
  requirePositive('constant', constant, 'lb/gpm·√psi');
  return constant * flowGpm * Math.sqrt(nozzlePsi);
}
