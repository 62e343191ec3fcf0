import { describe, expect, it } from 'vitest';
import type { DrillAction } from './action.ts';
import { isPlainText } from './plain-text.ts';
import { readAction } from './read-action.ts';

/** NUL, line feed, delete, a control of C1, half of a pair, line separator, and marks of direction (UAX #9). */
const notPlain = [
  '\u0000',
  '\n',
  '\t',
  '\u007f',
  '\u0085',
  '\ud800',
  '\u2028',
  '\u202e',
  '\u2066',
  '\u200f',
];

describe('text that others see', () => {
  it.each(['Send water.', 'Größe 45 mm — “gut” 🚒', 'مياه', 'e\u0301'])('“%s” is plain', (text) => {
    expect(isPlainText(text)).toBe(true);
    expect(readAction({ do: 'radio', message: { text } })).toEqual({
      action: { do: 'radio', message: { text } },
    });
  });

  it.each(notPlain.map((one) => [JSON.stringify(one), one]))('%s is not', (_, one) => {
    expect(isPlainText(`Send${one}water`)).toBe(false);
  });

  const saying: [string, string, (text: string) => DrillAction][] = [
    ['radio', 'text', (text) => ({ do: 'radio', message: { text } })],
    ['say', 'text', (text) => ({ do: 'say', text })],
    ['mark', 'text', (text) => ({ do: 'mark', verdict: 'good', text })],
    [
      'overrule',
      'reason',
      (text) => ({ do: 'overrule', criterion: 'main', met: true, reason: text }),
    ],
    ['a name', 'hose', (text) => ({ do: 'uncouple', hose: text, end: 'to' })],
  ];
  it.each(saying)('is refused in %s, by its field, with the remedy', (_, field, action) => {
    for (const one of notPlain) {
      const read = readAction(action(`Send${one}water`));
      expect(read).toMatchObject({ problem: { field } });
      if (!('problem' in read)) continue;
      expect(read.problem.message).toMatch(/plain text/);
      // The refusal does not carry it on.
      expect(isPlainText(read.problem.message)).toBe(true);
    }
  });
});
