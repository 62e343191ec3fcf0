/** Letters of a code: those that neither look nor sound alike when read out. */
const LETTERS = 'BCDFGHJKMNPRSTWXYZ';
const LENGTH = 5;

/** A code as somebody typed it, blanks and dashes left out, in capitals; undefined for what cannot be one. */
export function codeIn(text: string): string | undefined {
  const code = text.replaceAll(/[\s-]/g, '').toUpperCase();
  const isCode = code.length === LENGTH && [...code].every((one) => LETTERS.includes(one));
  return isCode ? code : undefined;
}

/** Why a text is no code, in words. */
export function codeProblem(text: string): string {
  const letters = text.replaceAll(/[\s-]/g, '').toUpperCase();
  const odd = [...letters].find((one) => !LETTERS.includes(one));
  if (letters === '') return 'Type the five letters that the instructor reads out.';
  if (odd !== undefined)
    return `${odd} is in no code: codes are made of ${[...LETTERS].join(' ')}. Ask again for that letter.`;
  return `A code has ${LENGTH} letters; ${letters} has ${letters.length}.`;
}

/** Apart, so that a screen reader spells it and a person reads it out: `K T M R B`. */
export const spelled = (code: string): string => [...code].join(' ');
