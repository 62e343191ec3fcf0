import { describe, expect, test } from 'vitest';
import { effectiveCoefficient, hoseFrictionPsi, parallelCoefficient } from './hose-friction.ts';
import { misses, titled } from './published/published-row.ts';
import {
  relayDistanceDualRows,
  relayDistanceRows,
  relayFieldRows,
  relayFieldRows2,
  relayPlanRows,
} from './published/relay.ts';
import { RELAY_DISCHARGE_PSI, relayPlan, relaySpacingFt } from './relay.ts';

describe('distance between pumps', () => {
  test.each(titled(relayDistanceRows))('%s', (_, row) => {
    const { c, flowGpm, pdpPsi, residualPsi } = row.given;
    const distanceFt = relaySpacingFt({ flowGpm, coefficient: c, pdpPsi, residualPsi });
    expect(misses(row, { distanceFt })).toEqual([]);
  });

  test.each(titled(relayDistanceDualRows))('%s', (_, row) => {
    const { lineC, flowGpm, pdpPsi, residualPsi } = row.given;
    const coefficient = parallelCoefficient(lineC);
    const distanceFt = relaySpacingFt({ flowGpm, coefficient, pdpPsi, residualPsi });
    expect(misses(row, { distanceFt })).toEqual([]);
  });

  const { under3HalfIn, largeDiameter } = RELAY_DISCHARGE_PSI;
  const lays = [
    { lines: [2], pdpPsi: under3HalfIn },
    { lines: [0.8], pdpPsi: under3HalfIn },
    { lines: [0.2], pdpPsi: largeDiameter },
    { lines: [0.08], pdpPsi: largeDiameter },
    { lines: [2, 2], pdpPsi: under3HalfIn },
    { lines: [2, 0.8], pdpPsi: under3HalfIn },
    { lines: [0.8, 0.8], pdpPsi: under3HalfIn },
  ];
  // The table rounds: by up to 3 % to 1,000 gpm, and at 1,250 as far as 528 to 500 and 57.6 to 50.
  test.each([
    [250, 1440, 3600, 13200, 33000, 5760, 9600, 14400],
    [500, 360, 900, 3300, 8250, 1440, 2400, 3600],
    [750, 160, 400, 1450, 3670, 640, 1050, 1600],
    [1000, 90, 225, 825, 2050, 360, 600, 900],
    [1250, 50, 140, 500, 1320, 230, 375, 570],
  ])(
    '%i gpm through 2½, 3, 4, 5, two 2½, 2½ and 3, two 3 in (from memory: IFSTA table; basis published in Relay Pumping Operations lesson p3, Firehouse)',
    (flowGpm, ...printed) => {
      printed.forEach((ft, index) => {
        const { lines, pdpPsi } = lays[index]!;
        const spacing = relaySpacingFt({
          flowGpm,
          coefficient: parallelCoefficient(lines),
          pdpPsi,
        });
        expect(Math.abs(ft / spacing - 1), `column ${index}`).toBeLessThanOrEqual(
          flowGpm < 1250 ? 0.031 : index === 0 ? 0.14 : 0.055,
        );
      });
    },
  );

  test('a climb shortens it by 0.434 psi for each foot, a steep drop ends the need for a pump', () => {
    const basis = { flowGpm: 1000, coefficient: 0.08, pdpPsi: 185 };
    expect(relaySpacingFt(basis, 10)).toBeCloseTo((100 * 165) / (8 + 4.34), 9);
    expect(relaySpacingFt(basis, -20)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('relay over a distance', () => {
  test.each(titled(relayPlanRows))('%s', (_, row) => {
    const { distanceFt, flowGpm, c, pdpPsi, residualPsi } = row.given;
    const plan = relayPlan({ flowGpm, coefficient: c, pdpPsi, residualPsi }, distanceFt);
    expect(misses(row, plan)).toEqual([]);
  });

  test('a distance of exactly two spacings takes two lays', () => {
    const basis = { flowGpm: 500, coefficient: 0.2, pdpPsi: 185 };
    expect(relayPlan(basis, 6600).hoseSections).toBe(2);
    expect(relayPlan(basis, 6601).hoseSections).toBe(3);
  });

  test('a hill adds pumps, and each pressure then suffices', () => {
    const basis = { flowGpm: 1000, coefficient: 0.08, pdpPsi: 185 };
    const plan = relayPlan(basis, 4500, 300);
    expect(plan.hoseSections).toBe(Math.ceil((360 + 130.2) / 165));
    expect(plan.pdpNeededPsi).toBeLessThanOrEqual(185);
    expect(plan.pdpNeededPsi).toBeCloseTo((360 + 130.2) / plan.hoseSections + 20, 9);
  });
});

describe('what drills showed of 5 in hose', () => {
  test.each(titled(relayFieldRows))('%s', (_, row) => {
    const { lengthFt, flowGpm, pdpPsi, intakePsiAssumed } = row.given;
    const got = {
      textbookFlPsi: hoseFrictionPsi(0.08, flowGpm, lengthFt),
      maxEffectiveC: effectiveCoefficient(pdpPsi - intakePsiAssumed, flowGpm, lengthFt),
    };
    expect(misses(row, got)).toEqual([]);
  });

  test.each(titled(relayFieldRows2))('%s', (_, row) => {
    const { lengthFt, flowGpm, pdpPsi, intakePsi } = row.given;
    const got = {
      textbookFlPsi: hoseFrictionPsi(0.08, flowGpm, lengthFt),
      maxEffectiveC: effectiveCoefficient(pdpPsi - intakePsi, flowGpm, lengthFt),
    };
    expect(misses(row, got)).toEqual([]);
  });
});

test('bad input refuses', () => {
  const basis = { flowGpm: 1000, coefficient: 0.08, pdpPsi: 15 };
  expect(() => relaySpacingFt(basis)).toThrow(
    'pdpPsi is 15; allowed: more than residualPsi (20 psi)',
  );
  expect(() => relayPlan({ ...basis, pdpPsi: 150 }, 0)).toThrow('distanceFt is 0');
});
