/** Rated capacities that pumps come in, and what a rig is usually built with. */

/** Rated capacity [gpm] at 150 psi net, as listed in the apparatus standard (NFPA 1901, from memory). */
export const pumpRatingsGpm: readonly number[] = [
  250, 500, 750, 1000, 1250, 1500, 1750, 2000, 2250, 2500, 3000,
];

/** The usual attack engine and booster. */
export const usualRating = 1500;

export const usualIntakes = 3;
export const usualDischarges = 6;
