import { describe, expect, test } from 'vitest';
import { formatHoseSize, hoseSizes, parseHoseSize } from './hose-size.ts';

describe('hose sizes', () => {
  test.each([
    ['2.5', '2-1/2'],
    [2.5, '2-1/2'],
    ['2 1/2', '2-1/2'],
    ['2-1/2', '2-1/2'],
    ['2½', '2-1/2'],
    ['2½ in', '2-1/2'],
    ['2-1/2"', '2-1/2'],
    ['65 mm', '2-1/2'],
    ['64mm', '2-1/2'],
    [1.75, '1-3/4'],
    ['1¾ in', '1-3/4'],
    ['45 mm', '1-3/4'],
    ['¾', '3/4'],
    ['3/4 inch', '3/4'],
    [5, '5'],
    ['5 in', '5'],
    ['125 mm', '5'],
    [3, '3'],
    ['3-3', '3-3'],
    ['3 in (3 in couplings)', '3-3'],
  ])('%s is %s', (written, size) => {
    expect(parseHoseSize(written)).toBe(size);
  });

  test.each(['7', '2.6', '5 ft', '65', '', 'five', '12 mm', null, undefined, [], '1/0'])(
    '%s is none',
    (written) => {
      expect(parseHoseSize(written)).toBeNull();
    },
  );

  test('every size is read back as shown', () => {
    for (const size of hoseSizes) {
      expect(parseHoseSize(size)).toBe(size);
      expect(parseHoseSize(formatHoseSize(size))).toBe(size);
      if (size !== '3-3') expect(parseHoseSize(formatHoseSize(size, 'si'))).toBe(size);
    }
  });

  test('run from small to large', () => {
    expect(hoseSizes[0]).toBe('3/4');
    expect(hoseSizes.slice(6, 10)).toEqual(['2-1/2', '3', '3-3', '3-1/2']);
    expect(hoseSizes.at(-1)).toBe('6');
  });
});
