/** Colour and weight, or neither. Nothing is told by colour alone. */
export interface Ink {
  answer(text: string): string;
  head(text: string): string;
  caution(text: string): string;
}

const plain: Ink = {
  answer: (text) => text,
  head: (text) => text,
  caution: (text) => text,
};

const wrap = (code: number) => (text: string) => `\u001b[${code}m${text}\u001b[0m`;

const coloured: Ink = { answer: wrap(1), head: wrap(1), caution: wrap(33) };

/** Colours on a terminal, unless the reader said no by `--no-color` or NO_COLOR (https://no-color.org). */
export function inkFor(wanted: boolean, terminal: boolean): Ink {
  return wanted && terminal && !process.env.NO_COLOR ? coloured : plain;
}
