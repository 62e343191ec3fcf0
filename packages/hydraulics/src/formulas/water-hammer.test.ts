import { describe, expect, test } from 'vitest';
import { waterHammerJoukowskyRows, waterHammerSlowRows } from './published/hose.ts';
import { misses, titled } from './published/published-row.ts';
import {
  hammerRise,
  JOUKOWSKY_CONSTANT,
  joukowskyRisePsi,
  rigidColumnRisePsi,
  slowClosureRisePsi,
} from './water-hammer.ts';

describe('water hammer', () => {
  test.each(titled(waterHammerJoukowskyRows))('%s', (_, row) => {
    const { deltaVFtS, waveFtS } = row.given;
    expect(misses(row, { risePsi: joukowskyRisePsi(deltaVFtS, waveFtS) })).toEqual([]);
  });

  test.each(titled(waterHammerSlowRows))('%s', (_, row) => {
    const { deltaVFtS, lengthFt, closeS } = row.given;
    expect(misses(row, { risePsi: slowClosureRisePsi(deltaVFtS, lengthFt, closeS) })).toEqual([]);
  });

  test('its constant is 62.4 lb/ft³ over 32.174 ft/s² and 144 in²/ft²', () => {
    expect(JOUKOWSKY_CONSTANT).toBeCloseTo(62.4 / 32.174 / 144, 5);
  });

  test('the published slow form is about five times the rigid column', () => {
    expect(slowClosureRisePsi(10, 500, 3) / rigidColumnRisePsi(10, 500, 3)).toBeCloseTo(5.2, 1);
  });

  test('at the wave’s return a rigid column stopped evenly rises by half of a sudden stop', () => {
    expect(rigidColumnRisePsi(10, 500, (2 * 500) / 1000)).toBeCloseTo(
      joukowskyRisePsi(10, 1000) / 2,
      9,
    );
  });

  test('slamming is the worst, and slower is never worse', () => {
    let before = joukowskyRisePsi(16, 1200);
    for (let closeS = 0; closeS <= 20; closeS += 0.1) {
      const { risePsi, closure } = hammerRise(16, 600, closeS, 1200);
      expect(risePsi).toBeLessThanOrEqual(before);
      expect(closure).toBe(closeS <= 1 ? 'fast' : 'slow');
      before = risePsi;
    }
    expect(before).toBeLessThan(40);
  });

  test('a wave speed is asked for, never assumed', () => {
    expect(() => joukowskyRisePsi(10, Number.NaN)).toThrow('waveFtS is NaN');
    expect(() => slowClosureRisePsi(10, 100, 0)).toThrow('For a valve slammed shut');
  });
});
