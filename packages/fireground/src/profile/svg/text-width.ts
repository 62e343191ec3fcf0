/** Widths of characters in common sans-serif fonts [em], rounded up: no font is at hand to measure. */
function characterWidth(character: string): number {
  if (/[0-9]/.test(character)) return 0.57;
  if (/[ilj.,:;'|! ]/.test(character)) return 0.3;
  if (/[mwMW—]/.test(character)) return 0.92;
  if (/[A-Z]/.test(character)) return 0.72;
  return 0.58;
}

/** Room that a line of text takes, never less than it will [px]. */
export function textWidth(text: string, fontSize: number): number {
  let em = 0;
  for (const character of text) em += characterWidth(character);
  return em * fontSize;
}
