/** Inches as the trade writes them: 2½, 1¾, 1⅛. */

const glyphs: Readonly<Record<string, number>> = {
  '⅛': 1 / 8,
  '¼': 1 / 4,
  '⅜': 3 / 8,
  '½': 1 / 2,
  '⅝': 5 / 8,
  '¾': 3 / 4,
  '⅞': 7 / 8,
};

/**
 * Reads `2.5`, `2 1/2`, `2-1/2`, `2½`, `1/2`, `15/16` as a number; null where it is none
 * of these.
 */
export function parseFraction(text: string): number | null {
  const plain = text.trim();
  if (/^(\d+\.?\d*|\.\d+)$/.test(plain)) return Number(plain);
  const glyph = /^(\d*)\s*([⅛¼⅜½⅝¾⅞])$/.exec(plain);
  if (glyph) return Number(glyph[1] || 0) + (glyphs[glyph[2]!] ?? Number.NaN);
  const written = /^(?:(\d+)(?:\s*-\s*|\s+))?(\d+)\s*[/⁄]\s*(\d+)$/.exec(plain);
  if (!written) return null;
  const denominator = Number(written[3]);
  if (denominator === 0) return null;
  return Number(written[1] ?? 0) + Number(written[2]) / denominator;
}

/**
 * Writes a number of inches with a fraction where it is one of the sixteenths that tips
 * and hose come in (`2½`, `15/16`), else as a decimal of at most three digits.
 */
export function formatFraction(inches: number): string {
  const whole = Math.floor(inches);
  const rest = inches - whole;
  if (rest === 0) return String(whole);
  for (const [glyph, value] of Object.entries(glyphs)) {
    if (rest === value) return `${whole === 0 ? '' : whole}${glyph}`;
  }
  const sixteenths = rest * 16;
  if (Number.isInteger(sixteenths)) return `${whole === 0 ? '' : `${whole} `}${sixteenths}/16`;
  return String(Number(inches.toFixed(3)));
}
