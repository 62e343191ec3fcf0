import { describe, expect, test } from 'vitest';
import { velocityRows } from './published/hose.ts';
import { misses, titled } from './published/published-row.ts';
import { VELOCITY_CONSTANT, velocityFtS } from './velocity.ts';

describe('velocity', () => {
  test.each(titled(velocityRows))('%s', (_, row) => {
    const { flowGpm, hoseIn } = row.given;
    expect(misses(row, { velocityFtS: velocityFtS(flowGpm, hoseIn) })).toEqual([]);
  });

  test('its constant follows from 231 in³ to the gallon', () => {
    expect(VELOCITY_CONSTANT).toBeCloseTo(231 / 60 / 12 / (Math.PI / 4), 4);
  });

  test('refuses a bore of 0', () => {
    expect(() => velocityFtS(100, 0)).toThrow('diameterIn is 0');
  });
});
