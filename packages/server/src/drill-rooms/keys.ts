/** What a drill is joined by, and what a device shows to act in a role. */
import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';

/**
 * Letters that neither look nor sound alike when they are read out: no I, L, O, Q, U, V. No A and E
 * either, so that no word comes of them by chance.
 */
const LETTERS = 'BCDFGHJKMNPRSTWXYZ';
const CODE_LENGTH = 5;
const WATCH_KEY_LENGTH = 8;

const letters = (count: number) =>
  Array.from({ length: count }, () => LETTERS[randomInt(LETTERS.length)]).join('');

/** One of 1.9 million: too many to be tried out at the rate at which wrong ones are let in. */
export function newCode(): string {
  return letters(CODE_LENGTH);
}

/**
 * What a wall's computer shows: short enough to be typed there, and one of 11,000 million, of which wrong
 * ones are let in at the same pace.
 */
export function newWatchKey(): string {
  return letters(WATCH_KEY_LENGTH);
}

/** A code as somebody typed it, in capitals; undefined for what cannot be one. */
export function codeIn(text: string): string | undefined {
  const code = text.trim().toUpperCase();
  const isCode = code.length === CODE_LENGTH && [...code].every((one) => LETTERS.includes(one));
  return isCode ? code : undefined;
}

/** 128 bits. */
export function newKey(): string {
  return randomBytes(16).toString('base64url');
}

/** What is kept of a key: it cannot be turned back, so that the records give no role away. */
export function hashOf(key: string): string {
  return createHash('sha256').update(key).digest('base64url');
}

export function fits(key: string | undefined, hash: string | undefined): boolean {
  if (key === undefined || hash === undefined) return false;
  return timingSafeEqual(Buffer.from(hashOf(key)), Buffer.from(hash));
}
