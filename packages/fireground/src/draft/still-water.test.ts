import { misses, titled } from '@plugside/hydraulics';
import { describe, expect, test } from 'vitest';
import { pondRows, staticSourceRows, streamRows } from './published/still-water.ts';
import { FT2_PER_ACRE, pondGal, stillWaterMin, waterForGal } from './still-water.ts';
import { streamFlow } from './stream-flow.ts';

describe('a pond', () => {
  test.each(titled(staticSourceRows))('%s', (_, row) => {
    const { flowGpm, hours } = row.given;
    expect(misses(row, { gal: waterForGal(flowGpm, hours * 60) })).toEqual([]);
    expect(stillWaterMin(row.expected.gal, flowGpm)).toBeCloseTo(hours * 60, 9);
  });

  test.each(titled(pondRows))('%s', (_, row) => {
    const { acres, depthFt } = row.given;
    expect(misses(row, { gal: pondGal(acres * FT2_PER_ACRE, depthFt) })).toEqual([]);
  });

  test('what runs in makes it last longer, and lasts for ever where it keeps up', () => {
    expect(stillWaterMin(30_000, 500, 250)).toBe(120);
    expect(stillWaterMin(30_000, 500, 500)).toBeNull();
  });

  test('refuses what cannot be', () => {
    expect(() => pondGal(-1, 2)).toThrow('areaFt2 is -1; allowed: more than 0 ft²');
    expect(() => stillWaterMin(1000, 0)).toThrow('flowGpm is 0');
  });
});

describe('a stream', () => {
  test.each(titled(streamRows))('%s', (_, row) => {
    expect(misses(row, { flowGpm: streamFlow(row.given).flowGpm })).toEqual([]);
  });

  test('refuses a float that did not move', () => {
    expect(() => streamFlow({ widthFt: 3, depthFt: 1, floatFt: 0, floatS: 20 })).toThrow(
      'floatFt is 0',
    );
  });
});
