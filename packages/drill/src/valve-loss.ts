/** Flow through a full bore for a square root of pressure: 29.84·d² [gpm/√psi], the pitot formula without a coefficient. */
export function boreK(boreIn: number): number {
  return 29.84 * boreIn * boreIn;
}

/** Under this opening a valve is shut [-]. */
export const leastOpening = 0.005;

/**
 * What a valve that is part open costs beyond what it costs open: `psi = k·Q²`. The open area is taken to
 * grow with the opening, so a valve half open passes at a given loss half of what its bore would. Ours:
 * makers' curves differ, and a gate does most of its work in the first quarter of its travel.
 * @param opening from `leastOpening` to 1 [-]
 * @param boreIn bore [in]
 * @returns k [psi/gpm²]; 0 when open
 */
export function partOpenLossFactor(opening: number, boreIn: number): number {
  const full = boreK(boreIn);
  return (1 / (opening * opening) - 1) / (full * full);
}

/** The opening [0 … 1] at which a valve costs `factor` [psi/gpm²] beyond what it costs open. */
export function openingForLossFactor(factor: number, boreIn: number): number {
  const full = boreK(boreIn);
  return 1 / Math.sqrt(1 + factor * full * full);
}
