/** What a pressure comes to that the next pump's intake stands once its lines shut: alike on charts and cards. */

/**
 * "over the next pump's intake relief (150 psi), …" for the key of a mark.
 * @param most the least pressure of it, written with its unit
 */
export function overIntake({ relief }: { relief: boolean }, most: string): string {
  return relief
    ? `over the next pump’s intake relief (${most}), which opens once its lines shut: see that it works and where it dumps.`
    : `over what the next pump’s intake should get once its lines shut (${most}); its relief is not on record: set one.`;
}
