import { Project, Workspace } from 'epanet-js';
import { beforeAll, describe, expect, test } from 'vitest';
import { PSI_PER_FT } from './elevation.ts';
import {
  type Bore,
  darcyFrictionFactor,
  darcyWeisbachPsi,
  hazenWilliamsPsi,
  LAMINAR_TO,
  reynoldsNumber,
  swameeJain1976,
  TURBULENT_FROM,
  WATER_VISCOSITY_FT2_S,
} from './pipe-friction.ts';

/** EPANET's own viscosity of water [ft²/s]. */
const EPANET_VISCOSITY = 1.1e-5;

/** Head lost in one pipe, by the EPANET toolkit [ft]. Its Darcy–Weisbach roughness counts thousandths of a foot. */
function epanetHeadLossFt(
  workspace: Workspace,
  formula: 'D-W' | 'H-W',
  bore: { diameterIn: number; lengthFt: number; roughness: number },
  flowGpm: number,
): number {
  const project = new Project(workspace);
  workspace.writeFile(
    'pipe.inp',
    `[JUNCTIONS]\nJ 0 ${flowGpm}\n[RESERVOIRS]\nR 5000\n[PIPES]\nP R J ${bore.lengthFt} ${bore.diameterIn} ${bore.roughness} 0 Open\n[OPTIONS]\nUnits GPM\nHeadloss ${formula}\nAccuracy 0.0001\nTrials 200\n[END]\n`,
  );
  project.open('pipe.inp', 'pipe.rpt', 'pipe.out');
  project.solveH();
  const head = project.getNodeValue(project.getNodeIndex('J'), 10);
  project.close();
  return 5000 - head;
}

describe('against the EPANET toolkit', () => {
  const workspace = new Workspace();
  beforeAll(() => workspace.loadModule());

  test.each([
    [2.5, 0.0002, 100, 300],
    [5, 0.0002, 100, 1000],
    [6, 0.01, 500, 800],
    [4, 0.0048, 200, 250],
    [8, 0.006, 1000, 4],
    [1, 0.0002, 50, 0.6],
    [3, 0.03, 300, 3],
    [3, 0.03, 300, 4],
  ])(
    'Darcy–Weisbach: %f in, roughness %f in, %i ft, %f gpm',
    (diameterIn, roughnessIn, lengthFt, flowGpm) => {
      const bore: Bore = { diameterIn, roughnessIn, lengthFt };
      const roughness = (roughnessIn / 12) * 1000;
      const theirs = epanetHeadLossFt(
        workspace,
        'D-W',
        { diameterIn, lengthFt, roughness },
        flowGpm,
      );
      const ours = darcyWeisbachPsi(bore, flowGpm, EPANET_VISCOSITY) / PSI_PER_FT;
      // Their g is 32.2, their heads carry seven digits.
      expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(0.003 * theirs + 0.001);
    },
  );

  test.each([
    [4, 120, 100, 250],
    [6, 100, 1000, 900],
    [8, 140, 2000, 1500],
    [2.5, 150, 100, 200],
  ])('Hazen–Williams: %f in, C %i, %i ft, %i gpm', (diameterIn, roughness, lengthFt, flowGpm) => {
    const theirs = epanetHeadLossFt(workspace, 'H-W', { diameterIn, lengthFt, roughness }, flowGpm);
    const ours = hazenWilliamsPsi(roughness, flowGpm, diameterIn, lengthFt) / PSI_PER_FT;
    expect(Math.abs(ours / theirs - 1)).toBeLessThanOrEqual(0.01);
  });
});

/** Colebrook–White solved by iteration: an independent way to the same factor. */
function colebrook(reynolds: number, relativeRoughness: number): number {
  let root = 8;
  for (let step = 0; step < 50; step++) {
    root = -2 * Math.log10(relativeRoughness / 3.7 + (2.51 * root) / reynolds);
  }
  return 1 / root ** 2;
}

describe('friction factor', () => {
  test('Re 60,000, roughness 0.0023: 0.027 (published: documentation of a package of Colebrook approximations, pypi.org/project/colebrook)', () => {
    expect(swameeJain1976(60_000, 0.0023)).toBeCloseTo(0.027, 3);
  });

  test('6 ft/s in 6 in asphalted iron, Re 270,000, roughness 0.0008: about 0.020 (from memory: White, Fluid Mechanics, example 6.6)', () => {
    expect(Math.abs(darcyFrictionFactor(270_000, 0.0008) - 0.02)).toBeLessThanOrEqual(0.0005);
  });

  test('stays within 3 % of Colebrook–White over its authors’ range', () => {
    for (let re = 5e3; re <= 1e8; re *= 1.5) {
      for (const rough of [1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 5e-2]) {
        expect(Math.abs(swameeJain1976(re, rough) / colebrook(re, rough) - 1)).toBeLessThan(0.034);
      }
    }
  });

  test.each([0, 0.0001, 0.01])('has no step where the branches meet, roughness %f', (rough) => {
    for (const at of [LAMINAR_TO, TURBULENT_FROM]) {
      const below = darcyFrictionFactor(at - 1e-3, rough);
      const above = darcyFrictionFactor(at + 1e-3, rough);
      expect(above).toBeCloseTo(below, 6);
      const slopeBelow = below - darcyFrictionFactor(at - 1, rough);
      const slopeAbove = darcyFrictionFactor(at + 1, rough) - above;
      expect(slopeAbove).toBeCloseTo(slopeBelow, 7);
    }
  });

  test('laminar flow loses by the flow, not by its square (Hagen–Poiseuille)', () => {
    const bore = { diameterIn: 2.5, roughnessIn: 0.0002, lengthFt: 100 };
    expect(reynoldsNumber(1, 2.5)).toBeLessThan(LAMINAR_TO);
    expect(darcyWeisbachPsi(bore, 1) / darcyWeisbachPsi(bore, 0.5)).toBeCloseTo(2, 9);
  });
});

describe('beside the coefficient law', () => {
  // What a smooth bore would lose: modern hose lies near it, the textbook coefficients above it.
  test.each([
    [2.5, 300, 2],
    [4, 1000, 0.2],
    [5, 1000, 0.08],
  ])('a smooth %f in bore at %i gpm loses less than C = %f says', (diameterIn, flowGpm, c) => {
    const smooth = darcyWeisbachPsi({ diameterIn, roughnessIn: 0, lengthFt: 100 }, flowGpm);
    const coefficient = smooth / (flowGpm / 100) ** 2;
    expect(coefficient).toBeLessThan(c);
    expect(coefficient).toBeGreaterThan(c / 3);
  });
});

test('bad input refuses', () => {
  expect(() => hazenWilliamsPsi(0, 100, 4, 100)).toThrow('roughness is 0');
  expect(() => swameeJain1976(3000, 0)).toThrow('reynolds is 3000; allowed: 4000 to 100000000');
  expect(() => darcyFrictionFactor(5000, 0.06)).toThrow('relativeRoughness is 0.06');
  expect(() => darcyFrictionFactor(0, 0)).toThrow('reynolds is 0');
  expect(() => reynoldsNumber(100, 2.5, 0)).toThrow('viscosityFt2S is 0');
  expect(WATER_VISCOSITY_FT2_S).toBeGreaterThan(EPANET_VISCOSITY);
});
