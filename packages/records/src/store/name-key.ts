import { folded } from './folded.ts';

/** Digits of the longest run that a name can hold. */
const LENGTH_DIGITS = 3;

/**
 * A text that puts names in the order in which people count when it is compared byte by byte, which
 * both databases do alike: H-2 before H-10. Case, accents and zeros in front make no difference;
 * each run of digits is written behind its own length.
 */
export function nameKey(name: string): string {
  return folded(name).replace(/\d+/g, (digits) => {
    const bare = digits.replace(/^0+(?=\d)/, '');
    return String(bare.length).padStart(LENGTH_DIGITS, '0') + bare;
  });
}
