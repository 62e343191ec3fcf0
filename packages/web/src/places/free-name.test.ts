import { describe, expect, it } from 'vitest';
import { freeName, LONGEST_NAME } from './free-name.ts';

const named = (...names: string[]) => names.map((name) => ({ name }));

describe('the name of a plan that is saved', () => {
  it('is its title while no other has it, then with the first free number', () => {
    expect(freeName('Hotel from H-1', named())).toBe('Hotel from H-1');
    expect(freeName('Hotel from H-1', named('Hotel from H-1'))).toBe('Hotel from H-1 (2)');
    expect(freeName('Hotel from H-1', named('Hotel from H-1', 'Hotel from H-1 (2)'))).toBe(
      'Hotel from H-1 (3)',
    );
  });

  it('stays as short as records allow', () => {
    const long = 'x'.repeat(LONGEST_NAME);
    const name = freeName(long, named(long));
    expect(name).toHaveLength(LONGEST_NAME);
    expect(name.endsWith(' (2)')).toBe(true);
  });
});
