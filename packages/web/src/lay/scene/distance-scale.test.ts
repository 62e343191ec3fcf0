import { describe, expect, it } from 'vitest';
import { type DistanceInput, distanceScale } from './distance-scale.ts';

const base: DistanceInput = {
  widthPx: 1040,
  hookupPx: 300,
  layFt: 900,
  attackFt: 200,
  leastAttackPx: 100,
  endPx: 90,
  rigsAtFt: [900],
  rigPx: 70,
};

describe('distance scale', () => {
  it('draws the lay and the lines past the scene to the same scale where they fit', () => {
    const scale = distanceScale(base);
    expect(scale.attackToScale).toBe(true);
    expect(scale.layX(450) - scale.layX(0)).toBeCloseTo(scale.pxPerFt * 450, 9);
    expect(scale.attackX(200) - scale.attackX(0)).toBeCloseTo(scale.pxPerFt * 200, 9);
  });

  it('fills the width exactly', () => {
    for (const layFt of [50, 900, 12_000]) {
      const scale = distanceScale({ ...base, layFt, rigsAtFt: [layFt] });
      expect(scale.attackEndX + base.endPx).toBeCloseTo(base.widthPx, 6);
    }
  });

  it('widens the lines past the scene and says so when the lay is very long', () => {
    const scale = distanceScale({ ...base, layFt: 12_000, rigsAtFt: [12_000] });
    expect(scale.attackToScale).toBe(false);
    expect(scale.attackEndX - scale.attackStartX).toBeCloseTo(base.leastAttackPx, 6);
  });

  it('gives each pump in the lay the same width, and its two sides the same distance', () => {
    const scale = distanceScale({ ...base, layFt: 3000, rigsAtFt: [1000, 2000, 3000] });
    for (const ft of [1000, 2000, 3000]) {
      expect(scale.layX(ft, 'after') - scale.layX(ft, 'before')).toBeCloseTo(scale.rigPx, 9);
    }
  });

  it('narrows the rigs rather than squeeze the hose out of a relay on a phone', () => {
    const rigsAtFt = [1000, 2000, 3000, 4000, 5000];
    const scale = distanceScale({
      ...base,
      widthPx: 358,
      hookupPx: 110,
      endPx: 40,
      leastAttackPx: 30,
      layFt: 5000,
      rigsAtFt,
    });
    expect(scale.rigPx * 5).toBeLessThan((358 - 150) / 2);
    expect(scale.layX(1000) - scale.layX(0)).toBeGreaterThan(0);
  });

  it('finds the distance under a pointer, also inside a rig and past the ends', () => {
    const scale = distanceScale({ ...base, layFt: 2000, rigsAtFt: [800, 2000] });
    for (const ft of [0, 100, 799, 1200, 1999]) {
      expect(scale.layFtAt(scale.layX(ft, 'after'))).toBeCloseTo(ft, 6);
    }
    expect(scale.layFtAt(scale.layX(800) + scale.rigPx / 2)).toBe(800);
    expect(scale.layFtAt(-50)).toBe(0);
    expect(scale.layFtAt(5000)).toBe(2000);
  });

  it('stays finite with no lay and no lines', () => {
    const scale = distanceScale({ ...base, layFt: 0, attackFt: 0, rigsAtFt: [] });
    expect(Number.isFinite(scale.layX(0))).toBe(true);
    expect(Number.isFinite(scale.attackX(0))).toBe(true);
  });
});
