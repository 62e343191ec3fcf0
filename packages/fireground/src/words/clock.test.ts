import { expect, it } from 'vitest';
import { clock } from './clock.ts';

it.each([
  [0, '0:00'],
  [6.5, '6:30'],
  [9.999, '10:00'],
  [61.25, '61:15'],
])('%s min read %s', (minutes, text) => {
  expect(clock(minutes)).toBe(text);
});
