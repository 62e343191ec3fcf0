/** Letters of a code: those that neither look nor sound alike when read out. */
const LETTERS = 'BCDFGHJKMNPRSTWXYZ';
const LENGTH = 5;
const WATCH_KEY_LENGTH = 8;

const inCapitals = (text: string) => text.replaceAll(/[\s-]/g, '').toUpperCase();

const areLetters = (text: string, count: number) =>
  text.length === count && [...text].every((one) => LETTERS.includes(one));

/** A code as somebody typed it, blanks and dashes left out, in capitals; undefined for what cannot be one. */
export function codeIn(text: string): string | undefined {
  const code = inCapitals(text);
  return areLetters(code, LENGTH) ? code : undefined;
}

/** A wall code as somebody typed it; undefined for what cannot be one. */
export function watchKeyIn(text: string): string | undefined {
  const key = inCapitals(text);
  return areLetters(key, WATCH_KEY_LENGTH) ? key : undefined;
}

/** Why a text is no code, in words. */
export function codeProblem(text: string): string {
  const letters = inCapitals(text);
  if (letters === '') return 'Type the five letters that the instructor reads out.';
  return oddLetter(letters) ?? `A code has ${LENGTH} letters; ${letters} has ${letters.length}.`;
}

/** Why a text is no wall code, in words. */
export function watchKeyProblem(text: string): string {
  const letters = inCapitals(text);
  if (letters === '') return 'Type the eight letters of the wall code that the instructor has.';
  if (letters.length === LENGTH && codeIn(letters) !== undefined)
    return `${letters} is a code to join by. The wall code is another one, of ${WATCH_KEY_LENGTH} letters.`;
  return (
    oddLetter(letters) ??
    `A wall code has ${WATCH_KEY_LENGTH} letters; ${letters} has ${letters.length}.`
  );
}

function oddLetter(letters: string): string | undefined {
  const odd = [...letters].find((one) => !LETTERS.includes(one));
  if (odd === undefined) return undefined;
  return `${odd} is in no code: codes are made of ${[...LETTERS].join(' ')}. Ask again for that letter.`;
}

/** In two parts, to be read out and typed: `KTMR BWXZ`. */
export const inParts = (key: string): string => `${key.slice(0, 4)} ${key.slice(4)}`;

/** Apart, so that a screen reader spells it and a person reads it out: `K T M R B`. */
export const spelled = (code: string): string => [...code].join(' ');
