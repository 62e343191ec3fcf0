import { describe, expect, it } from 'vitest';
import { nameKey } from './name-key.ts';

const byBytes = (a: string, b: string) => Buffer.compare(Buffer.from(a), Buffer.from(b));

describe('a key for a name', () => {
  it('puts names in the order of the language’s own collation, digits counted', () => {
    // Checked against the Unicode collation that the platform has (Intl.Collator, numeric).
    const { compare } = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
    const names = [2, 10, 1, 100, 99, 11, 9, 1000].flatMap((n) => [
      `H-${n}`,
      `Engine ${n}`,
      `${n} Elm`,
      `Église ${n}b`,
      `eglise ${n}a`,
    ]);
    const keyed = [...names].sort((a, b) => byBytes(nameKey(a), nameKey(b)));
    expect(keyed).toEqual([...names].sort(compare));
  });

  it('is the same whatever the case, the accents and the zeros in front', () => {
    expect(nameKey('ÉLM 007')).toBe(nameKey('elm 7'));
    expect(nameKey('H-0')).toBe(nameKey('h-000'));
  });

  it('counts numbers longer than any that a machine counts with', () => {
    const long = '9'.repeat(119);
    expect(byBytes(nameKey(`a${long}`), nameKey(`a1${long}`))).toBeLessThan(0);
  });
});
