/**
 * Whether a text is one line of plain characters: no control characters or line breaks, no marks that turn
 * the direction of what follows (UAX #9, explicit formatting and marks), no half of a pair. Others see it,
 * it is kept in either database (PostgreSQL takes no NUL), and printed.
 */
export function isPlainText(text: string): boolean {
  return !/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u.test(text);
}
