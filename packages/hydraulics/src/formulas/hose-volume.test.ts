import { describe, expect, test } from 'vitest';
import { hoseVolumeGal, WATER_LB_PER_GAL, waterWeightLb } from './hose-volume.ts';
import { hoseVolumeRows, hoseVolumeRows2, waterWeightRows } from './published/hose.ts';
import { misses, titled } from './published/published-row.ts';

describe('water in hose', () => {
  test.each(titled([...hoseVolumeRows]))('%s', (_, row) => {
    const gallons = hoseVolumeGal(row.given.hoseIn, row.given.lengthFt);
    expect(misses(row, { gallons })).toEqual([]);
  });

  test.each(titled(hoseVolumeRows2))('%s', (_, row) => {
    const gallons = hoseVolumeGal(row.given.hoseIn, row.given.lengthFt);
    expect(misses(row, { gallons, waterLb: waterWeightLb(gallons) })).toEqual([]);
  });

  test.each([
    [1, 4, 0.5, 'published: NWCG 3.2 Volume of Water in Hose, whole gallons'],
    [1.5, 9.2, 0.05, 'published: NWCG 3.2 Volume of Water in Hose'],
    [5, 100, 2.5, 'published: Know the basics when using LDH, "1 gal/ft"'],
    // One department counts 800 gal in 1,000 ft of 4 in; the bore holds 653.
    [4, 80, 15, 'published: Hornby Island relay procedure, high'],
  ])('100 ft of %f in hold %f gal within %f (%s)', (diameter, gallons, within) => {
    expect(Math.abs(hoseVolumeGal(diameter, 100) - gallons)).toBeLessThanOrEqual(within);
  });
});

describe('weight', () => {
  test.each(titled(waterWeightRows))('%s', (_, row) => {
    const { flowGpm, lbPerGal } = row.given;
    expect(misses(row, { lbPerMin: waterWeightLb(flowGpm, lbPerGal) })).toEqual([]);
  });

  test('a gallon is 62.4 lb/ft³ over 7.48 gal/ft³ (published: Water supply basics, FireRescue1)', () => {
    expect(WATER_LB_PER_GAL).toBeCloseTo(62.4 / 7.48, 2);
  });
});

test('bad input refuses', () => {
  expect(() => hoseVolumeGal(0, 100)).toThrow('diameterIn is 0');
  expect(() => waterWeightLb(-1)).toThrow('gallons is -1');
});
