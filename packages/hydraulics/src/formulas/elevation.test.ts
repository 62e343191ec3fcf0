import { describe, expect, test } from 'vitest';
import { elevationPsi, FIELD_PSI_PER_FT, floorElevationPsi, headFt } from './elevation.ts';
import { elevationRows } from './published/discharge-pressure.ts';
import { misses, titled } from './published/published-row.ts';

describe('elevation', () => {
  test.each(titled(elevationRows))('%s', (_, row) => {
    const { heightFt } = row.given;
    const got = {
      pressurePsi: elevationPsi(heightFt),
      fieldPsi: elevationPsi(heightFt, FIELD_PSI_PER_FT),
    };
    expect(misses(row, got)).toEqual([]);
  });

  test('1 psi holds 2.304 ft of water (published: Formulas study cards)', () => {
    expect(headFt(1)).toBeCloseTo(2.304, 3);
  });

  test('the first floor counts nothing, each further one 5 psi (Engineer’s Test 2014 study cards)', () => {
    expect(floorElevationPsi(1)).toBe(0);
    expect(floorElevationPsi(6)).toBe(25);
  });

  test('a drop gives back what a climb takes', () => {
    expect(elevationPsi(-120)).toBe(-elevationPsi(120));
  });

  test('refuses what is no height', () => {
    expect(() => elevationPsi(Number.NaN)).toThrow('riseFt is NaN');
    expect(() => floorElevationPsi(0)).toThrow('The ground floor is floor 1.');
  });
});
