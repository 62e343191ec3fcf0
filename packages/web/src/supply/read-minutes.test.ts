import { describe, expect, it } from 'vitest';
import { readMinutes, steppedMinutes } from './read-minutes.ts';

describe('minutes as typed', () => {
  it.each([
    ['0', 0],
    ['120', 120],
    [' 6.5 ', 6.5],
    ['.5', 0.5],
    ['7 min', 7],
    ['6:30', 6.5],
    ['119:60', undefined],
    ['120.1', undefined],
    ['600', undefined],
    ['-3', undefined],
    ['−3', undefined],
    ['x', undefined],
    ['', undefined],
    ['1e2', undefined],
    ['6,5', undefined],
    ['Infinity', undefined],
  ])('reads "%s" as %s', (text, minutes) => {
    const read = readMinutes(text, 4.25);
    expect(read.ok ? read.minutes : undefined).toBe(minutes);
  });

  it.each(['600', '-3', 'x', ''])(
    'says of "%s" what is allowed and what goes on counting',
    (text) => {
      const read = readMinutes(text, 4.2);
      expect(read).toMatchObject({ ok: false });
      const message = read.ok ? '' : read.message;
      expect(message).toContain('0 to 120 min');
      expect(message).toContain('4.2 min');
    },
  );
});

it('steps to the next half minute and stops at the ends', () => {
  expect([3.2, 3.5, 119.8, 120].map((minutes) => steppedMinutes(minutes, 1))).toEqual([
    3.5, 4, 120, 120,
  ]);
  expect([3.2, 3, 0.2, 0].map((minutes) => steppedMinutes(minutes, -1))).toEqual([3, 2.5, 0, 0]);
});
