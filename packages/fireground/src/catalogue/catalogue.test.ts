import { describe, expect, test } from 'vitest';
import type { DepartmentValues, HoseSize, Nozzle } from '../plan/plan.ts';
import { hoseSizes } from '../units/hose-size.ts';
import { applianceLosses, assistValveLosses, hydrantLosses, rigLosses } from './appliances.ts';
import { coefficientFor, hoseCatalogue, hoseVolumeGal } from './hose.ts';
import { defaultLimits, hosePressureLimit, limitsFor } from './limits.ts';
import { nozzleCatalogue, nozzleK, nozzleRatedGpm } from './nozzles.ts';
import { capabilityFor } from './pumps.ts';

const plan = (department: DepartmentValues = {}) => ({ department });

describe('hose', () => {
  // "Which Supply Line?", FireRescue1: psi lost in 100 ft, whole psi.
  test.each<[HoseSize, number, number]>([
    ['2-1/2', 500, 50],
    ['3', 500, 20],
    ['4', 500, 5],
    ['5', 500, 2],
    ['2-1/2', 1000, 200],
    ['3', 1000, 80],
    ['4', 1000, 20],
    ['5', 1000, 8],
  ])('%s in at %d gpm loses %d psi in 100 ft (Which Supply Line?, FireRescue1)', (...row) => {
    const [size, gpm, psi] = row;
    const { coefficient } = coefficientFor(plan(), { hose: size });
    expect(Math.abs(coefficient * (gpm / 100) ** 2 - psi)).toBeLessThanOrEqual(0.5);
  });

  // "Math Formulas" and "Florida pump-operations exam answers": printed coefficients.
  test.each<[HoseSize, number]>([
    ['1-3/4', 15.5],
    ['2', 8],
    ['3-3', 0.677],
  ])('%s in has C %d (driver/operator textbook table, Math Formulas study cards)', (size, c) => {
    expect(hoseCatalogue[size].coefficient).toBe(c);
  });

  test('larger hose loses less, size by size', () => {
    const coefficients = hoseSizes.map((size) => hoseCatalogue[size].coefficient);
    expect(coefficients).toEqual([...coefficients].sort((a, b) => b - a));
  });

  test('where sources disagree, there is something to choose', () => {
    const choices = (size: HoseSize) =>
      hoseCatalogue[size].alternatives.map((choice) => choice.coefficient);
    expect(choices('1-3/4')).toEqual(expect.arrayContaining([10, 9.6]));
    expect(choices('5')).toEqual(expect.arrayContaining([0.06]));
    for (const size of hoseSizes) {
      expect(choices(size)).not.toContain(hoseCatalogue[size].coefficient);
    }
  });

  // "Know the basics when using LDH": about 100 gal in 100 ft of 5 in; NWCG 3.2: 9.2 in 1½ in.
  test('hose holds what is published (Know the basics when using LDH; NWCG S.3.2)', () => {
    expect(Math.abs(hoseVolumeGal('5', 100) - 100)).toBeLessThanOrEqual(5);
    expect(Math.abs(hoseVolumeGal('1-1/2', 100) - 9.2)).toBeLessThanOrEqual(0.05);
  });

  test("the line's own coefficient comes before the department's, that before the catalogue's", () => {
    const measured = { kind: 'measured', text: 'Hose test of spring' } as const;
    const department = { coefficients: { '5': { coefficient: 0.067, origin: measured } } };
    expect(coefficientFor(plan(), { hose: '5' }).coefficient).toBe(0.08);
    expect(coefficientFor(plan(department), { hose: '5' })).toEqual({
      coefficient: 0.067,
      origin: measured,
    });
    expect(coefficientFor(plan(department), { hose: '4' }).coefficient).toBe(0.2);
    const own = coefficientFor(plan(department), { hose: '5', coefficient: 0.055 });
    expect(own.coefficient).toBe(0.055);
    expect(own.origin.text).toMatch(/this line/);
  });
});

describe('limits', () => {
  // "Comparing Four- and Five-Inch LDH", Fire Apparatus: supply hose 185 psi. Where supply hose
  // begins (3½ in) is the trade's meaning of large-diameter hose.
  test.each<[HoseSize, number]>([
    ['3', 250],
    ['3-3', 250],
    ['3-1/2', 185],
    ['4', 185],
    ['5', 185],
  ])('%s in hose: %d psi', (hose, psi) => {
    expect(hosePressureLimit(plan(), { hose }).limitPsi).toBe(psi);
  });

  test("the hose's own marking comes first", () => {
    expect(hosePressureLimit(plan(), { hose: '5', limitPsi: 200 })).toMatchObject({
      limitPsi: 200,
      origin: { kind: 'maker' },
    });
  });

  test("the department's limits replace the defaults one by one, with their origin", () => {
    const limitsOrigin = { kind: 'department', text: 'Operations order 12' } as const;
    const limits = limitsFor(plan({ limits: { mainResidualPsi: 25 }, limitsOrigin }));
    expect(limits.mainResidualPsi).toBe(25);
    expect(limits.origins.mainResidualPsi).toEqual(limitsOrigin);
    expect(limits.hoseFedIntakePsi).toBe(defaultLimits.hoseFedIntakePsi);
    expect(limits.origins.hoseFedIntakePsi.kind).toBe('common practice');
  });

  test('asking does not change the defaults', () => {
    limitsFor(plan({ limits: { mainResidualPsi: 99 } }));
    expect(limitsFor(plan()).mainResidualPsi).toBe(20);
    expect(limitsFor(plan()).origins.mainResidualPsi.text).toMatch(/NFPA 291/);
  });
});

describe('nozzles', () => {
  // A nozzle maker's tip table: gpm at 50 psi; the maker reckons with 29.71, so 1 gpm apart at most.
  test.each([
    [7 / 8, 161],
    [15 / 16, 185],
    [1, 210],
    [1.125, 266],
    [1.25, 328],
  ])("a %d in tip at 50 psi gives %d gpm (a nozzle maker's tip table)", (tipIn, gpm) => {
    const entry = nozzleCatalogue.find(
      ({ make }) => make.kind === 'smooth-bore' && make.tipIn === tipIn && make.ratedPsi === 50,
    );
    expect(entry).toBeDefined();
    const nozzle = { ...entry?.make, id: 'N', elevationFt: 0, open: true, use: 'hand line' };
    expect(Math.abs(nozzleRatedGpm(nozzle as Nozzle) - gpm)).toBeLessThanOrEqual(1);
  });

  test.each(nozzleCatalogue.map((entry) => [entry.label, entry] as const))(
    '%s: K gives its rated flow at its rated pressure',
    (_, { make }) => {
      const nozzle = { ...make, id: 'N', elevationFt: 0, open: true, use: 'hand line' } as Nozzle;
      const flow = nozzleK(nozzle) * Math.sqrt(nozzle.ratedPsi);
      expect(flow).toBeCloseTo(nozzleRatedGpm(nozzle), 9);
    },
  );

  test('ids are unique', () => {
    const ids = nozzleCatalogue.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

test('every loss says where it comes from, and published spreads hold the default', () => {
  const entries = [applianceLosses, assistValveLosses, hydrantLosses, rigLosses].flatMap((table) =>
    Object.values(table),
  );
  for (const entry of entries) {
    expect(entry.origin.text.length).toBeGreaterThan(10);
    if (!('publishedSpreadPsi' in entry)) continue;
    const [least, greatest] = entry.publishedSpreadPsi;
    const at1000 = entry.loss.lossPsi * (1000 / entry.loss.atGpm) ** 2;
    expect(at1000).toBeGreaterThanOrEqual(least);
    expect(at1000).toBeLessThanOrEqual(greatest);
  }
});

describe('pumps', () => {
  // A pump maker's performance test table, gpm at 150, 200 and 250 psi net.
  test.each([
    [750, 525, 375],
    [1000, 700, 500],
  ])("a %d gpm pump gives %d at 200 and %d at 250 psi (a pump maker's test table)", (...row) => {
    const [rated, at200, at250] = row;
    const { points, origin } = capabilityFor({ ratedGpm: rated });
    expect(points).toContainEqual([rated, 150]);
    expect(points).toContainEqual([at200, 200]);
    expect(points).toContainEqual([at250, 250]);
    expect(origin.kind).toBe('standard');
  });

  test("a rig's own test replaces the default", () => {
    const capability = [
      [0, 340],
      [1500, 165],
    ] as const;
    expect(capabilityFor({ ratedGpm: 1500, capability })).toMatchObject({
      points: capability,
      origin: { kind: 'measured' },
    });
  });
});
