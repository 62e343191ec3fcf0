import { widthOf } from './table.ts';

/** Text broken at spaces to a width; later lines begin with `indent`. */
export function paragraph(text: string, width: number, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    if (line.trim() !== '' && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = `${indent}${word}`;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  lines.push(line);
  return lines.join('\n');
}

/** A list, one entry a bullet. */
export function bullets(texts: readonly string[], width: number): string {
  return texts.map((text) => paragraph(`- ${text}`, width, '  ')).join('\n');
}

/** Parts with an empty line between them; empty parts are left out. */
export function sections(...parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== '').join('\n\n');
}
