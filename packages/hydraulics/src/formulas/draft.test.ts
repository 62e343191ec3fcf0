import { describe, expect, test } from 'vitest';
import { airPressurePsi, vapourPressurePsi } from './air-and-vapour.ts';
import {
  capacityShareAtLift,
  cavitationMarginPsi,
  draftIntakePsi,
  draftVacuumInHg,
  liftForVacuumFt,
  practicalLiftFt,
  theoreticalLiftFt,
} from './draft.ts';
import { misses, titled } from './published/published-row.ts';
import { maxLiftRows, theoreticalLiftRows } from './published/pumps.ts';

describe('lift', () => {
  test.each(titled(theoreticalLiftRows))('%s', (_, row) => {
    const { atmosphericPsi, psiPerFt } = row.given;
    const theoreticalFt = theoreticalLiftFt(atmosphericPsi, 0, psiPerFt);
    expect(misses(row, { theoreticalFt })).toEqual([]);
  });

  test.each(titled(maxLiftRows))('%s', (_, row) => {
    expect(misses(row, { liftFt: liftForVacuumFt(row.given.vacuumInhg) })).toEqual([]);
  });

  test('two thirds of 33.9 ft: 22.5 ft (published: NWCG 3.5 Drafting Guidelines)', () => {
    expect(Math.abs(practicalLiftFt(33.9) - 22.5)).toBeLessThanOrEqual(0.11);
  });

  test('1,000 ft of altitude cost about a foot of lift (published: Chapter 11 Static Water Supply Sources study cards)', () => {
    const lost = theoreticalLiftFt(airPressurePsi(0)) - theoreticalLiftFt(airPressurePsi(1000));
    expect(Math.abs(lost - 1)).toBeLessThanOrEqual(0.25);
  });

  test('warm water lifts less', () => {
    const air = airPressurePsi(0);
    const cold = theoreticalLiftFt(air, vapourPressurePsi(50));
    const warm = theoreticalLiftFt(air, vapourPressurePsi(110));
    // Handbook of Chemistry and Physics: 1.2281 kPa at 10 °C and 8.83 kPa at 43.3 °C, 2.54 ft apart.
    expect(cold - warm).toBeCloseTo(2.54, 1);
  });
});

describe('vacuum', () => {
  test('a foot of water is 0.883 inHg and an inch 1.13 ft (units’ definitions)', () => {
    expect(draftVacuumInHg(1, 0)).toBeCloseTo(0.883, 2);
    expect(liftForVacuumFt(1)).toBeCloseTo(1.13, 2);
    expect(liftForVacuumFt(draftVacuumInHg(12, 5))).toBeCloseTo(17, 9);
  });

  test('the intake and the gauge say the same', () => {
    expect(-draftIntakePsi(14, 0) * 2.036).toBeCloseTo(draftVacuumInHg(14, 0), 3);
  });

  test('margin is what the air has left over the water’s boiling', () => {
    expect(cavitationMarginPsi(14.7, draftIntakePsi(10, 2), 0.26)).toBeCloseTo(8.1, 6);
  });
});

describe('capacity by lift', () => {
  test.each([
    [0, 1],
    [10, 1],
    [15, 0.7],
    [20, 0.6],
  ])('%i ft: %f of rated (published: NWCG glossary, suction lift)', (lift, share) => {
    expect(capacityShareAtLift(lift)).toBeCloseTo(share, 12);
  });

  test('never rises with lift', () => {
    let before = 1;
    for (let lift = 0; lift <= 20; lift += 0.5) {
      expect(capacityShareAtLift(lift)).toBeLessThanOrEqual(before);
      before = capacityShareAtLift(lift);
    }
  });
});

test('bad input refuses', () => {
  expect(() => capacityShareAtLift(21)).toThrow('Bring the pump nearer to the water.');
  expect(() => theoreticalLiftFt(10, 11)).toThrow('boils at this altitude');
  expect(() => liftForVacuumFt(31)).toThrow('No vacuum is deeper than this.');
});
