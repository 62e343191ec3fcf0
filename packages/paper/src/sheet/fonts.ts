import { readFileSync } from 'node:fs';
import { unwrapWoff } from './unwrap-woff.ts';

/** IBM Plex Sans Condensed, as in the app's drawings. Its figures are all of one width. */
const file = (name: string) =>
  unwrapWoff(
    readFileSync(new URL(`../../fonts/IBMPlexSansCondensed-${name}.woff`, import.meta.url)),
  );

let loaded: { regular: Buffer; bold: Buffer } | undefined;

/** The font's two weights, read once. */
export function fontFiles(): { regular: Buffer; bold: Buffer } {
  loaded ??= { regular: file('Regular'), bold: file('SemiBold') };
  return loaded;
}
