import { describe, expect, test } from 'vitest';
import * as formulas from './index.ts';

/** Units that a docstring may name in brackets. `-`: a pure number; `name`: a choice by name. */
const UNITS = new Set([
  ...'- count name % psi psi/ft psi/gpm² gpm gpm/√psi ft in gal s min lb lb/gal ft/s'.split(' '),
  ...'ft²/s inHg °F hp mm bar L/min'.split(' '),
  'psi per 100 ft',
  'psi per 100 ft at 100 gpm',
  'kPa per 100 m at 100 L/min',
  'gpm per in²·√psi',
  'L/min per mm²·√bar',
  'lb/in²·psi',
  'lb/gpm·√psi',
]);

interface Documented {
  name: string;
  doc: string;
  parameters: string[];
}

declare global {
  interface ImportMeta {
    /** The test runner's: files by pattern, here as text. */
    glob(
      pattern: readonly string[],
      how: { query: '?raw'; import: 'default'; eager: true },
    ): Record<string, string>;
  }
}

const files = import.meta.glob(['./*.ts', '!./*.test.ts', '!./index.ts'], {
  query: '?raw',
  import: 'default',
  eager: true,
});
const sources = Object.entries(files).map(([path, text]) => ({ file: path.slice(2), text }));

/** Text up to the bracket that closes the one before `from`. */
function untilClosed(text: string, from: number): string {
  let depth = 1;
  let end = from;
  while (depth > 0 && end < text.length) {
    const sign = text[end++]!;
    if ('([{<'.includes(sign)) depth++;
    // An arrow's head closes nothing.
    else if (')]}'.includes(sign) || (sign === '>' && text[end - 2] !== '=')) depth--;
  }
  return text.slice(from, end - 1);
}

/** Splits at commas outside every bracket. */
function splitOutside(text: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let part = '';
  for (const [index, sign] of [...text].entries()) {
    if ('([{<'.includes(sign)) depth++;
    else if (')]}'.includes(sign) || (sign === '>' && text[index - 1] !== '=')) depth--;
    if (sign === ',' && depth === 0) {
      parts.push(part);
      part = '';
    } else part += sign;
  }
  return [...parts, part].map((each) => each.trim()).filter((each) => each !== '');
}

function functionsIn(text: string): Documented[] {
  return [...text.matchAll(/(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*)?export function (\w+)\(/g)].map(
    (found) => ({
      name: found[2]!,
      doc: found[1] ?? '',
      parameters: splitOutside(untilClosed(text, found.index + found[0].length)),
    }),
  );
}

const interfaces = new Set(
  sources.flatMap(({ text }) =>
    [...text.matchAll(/export (?:interface|type) (\w+)/g)].map((found) => found[1]!),
  ),
);
const known = (unit: string | undefined) =>
  unit !== undefined && (UNITS.has(unit) || interfaces.has(unit));
const lastBracket = (text: string) => /\[([^\]]*)\][.;]?\s*$/.exec(text.trim())?.[1];

/** `@param`, `@returns` and what follows, one entry for each tag. */
const tagsOf = (doc: string) =>
  doc
    .replace(/^\s*\* ?/gm, '')
    .split(/\n(?=@|Valid:|Accuracy:|Outside:|Source:)/)
    .slice(1)
    .map((tag) => tag.trim());

const functions = sources.flatMap(({ file, text }) =>
  functionsIn(text).map((found) => ({ file, ...found })),
);
const answering = functions.filter(({ name }) => !name.startsWith('require'));

test('reads every exported function', () => {
  const exported = Object.entries(formulas)
    .filter(([name, value]) => typeof value === 'function' && name !== 'QuantityError')
    .map(([name]) => name);
  expect(new Set(functions.map(({ name }) => name))).toEqual(new Set(exported));
});

describe.each(answering)('$file $name', ({ doc, parameters }) => {
  const tags = tagsOf(doc);

  test('names each parameter with its unit in brackets', () => {
    const documented = tags
      .filter((tag) => tag.startsWith('@param '))
      .map((tag) => ({ name: tag.split(/\s+/)[1]!, unit: lastBracket(tag) }));
    expect(documented.map(({ name }) => name)).toHaveLength(parameters.length);
    for (const [index, parameter] of parameters.entries()) {
      const name = /^\w+/.exec(parameter)?.[0];
      // A parameter taken apart in the signature goes by any name in the docs.
      if (name) expect(documented[index]?.name).toBe(name);
    }
    expect(documented.filter(({ unit }) => !known(unit))).toEqual([]);
  });

  test('says what it returns, in which unit, where it is valid, what it throws and its source', () => {
    const returns = tags.find((tag) => tag.startsWith('@returns '));
    expect(known(lastBracket(returns ?? '')), returns).toBe(true);
    for (const part of ['Valid:', 'Outside:', 'Source:']) {
      expect(
        tags.some((tag) => tag.startsWith(part) || tag.includes(`\n${part}`)),
        part,
      ).toBe(true);
    }
  });
});

describe('interfaces', () => {
  const members = sources.flatMap(({ file, text }) =>
    [...text.matchAll(/export interface (\w+) \{([\s\S]*?)\n\}/g)].flatMap((found) =>
      [...found[2]!.matchAll(/(?:\/\*\*([^*]*)\*\/\s*)?\n? {2}(\w+)\??: ([^;]+);/g)].map(
        (member) => ({
          title: `${file} ${found[1]}.${member[2]}`,
          doc: member[1] ?? '',
          numeric: member[3] === 'number',
        }),
      ),
    ),
  );
  test.each(members.filter(({ numeric }) => numeric))('$title has a unit', ({ doc }) => {
    expect(known(lastBracket(doc)), doc).toBe(true);
  });
});

describe('examples', () => {
  const examples = answering.flatMap(({ name, doc }) =>
    [...doc.matchAll(/@example (.+?) \/\/ (.+)/g)].map((found) => [name, found[1]!, found[2]!]),
  );

  test('every function has one', () => {
    expect(new Set(examples.map(([name]) => name))).toEqual(
      new Set(answering.map(({ name }) => name)),
    );
  });

  test.each(examples)('%s: %s is %s', (_, call, shown) => {
    const names = Object.keys(formulas);
    const run = new Function(...names, `return ${call}`);
    const got: unknown = run(...Object.values(formulas));
    const expected: unknown = new Function(`return ${shown}`)();
    if (typeof expected !== 'number') {
      expect(got).toEqual(expected);
      return;
    }
    const digits = shown!.split('.')[1]?.length ?? 0;
    // Half a unit of the last digit shown.
    expect(Math.abs((got as number) - expected)).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-9);
  });
});
