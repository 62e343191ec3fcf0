import { formatQuantity, type UnitSystem } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { compoundShare, isVacuum, pressureWords, vacuumInHg, zeroShare } from './compound-gauge.ts';

const units = (system: UnitSystem) => ({
  system,
  text: (...[value, quantity]: [number, Parameters<typeof formatQuantity>[1]]) => {
    const { number, unit } = formatQuantity(value, quantity, system);
    return `${number} ${unit}`;
  },
});

describe('a compound gauge', () => {
  // NIST SP 811, appendix B: 1 psi is 6.894757 kPa, 1 inHg (conventional) 3.386389 kPa.
  it.each([-1, -5, -10, -14])('%d psi is as much vacuum in inHg, to a thousandth', (psi) => {
    expect(vacuumInHg(psi) / ((-psi * 6.894757) / 3.386389)).toBeCloseTo(1, 3);
  });

  it('tells pressure in psi or bar, vacuum in inHg or kPa', () => {
    expect(pressureWords(46, units('us'))).toBe('46 psi');
    // By hand: 6 × 2.036 = 12.2 inHg; 6 × 6.895 = 41.4 kPa.
    expect(pressureWords(-6, units('us'))).toBe('12 inHg vacuum');
    expect(pressureWords(-6, units('si'))).toBe('41 kPa vacuum');
    expect(pressureWords(46, units('si'))).toBe('3.2 bar');
    // What rounds to none is none.
    expect(pressureWords(-0.2, units('us'))).toBe('0 psi');
    expect(isVacuum(-0.2)).toBe(false);
    expect(vacuumInHg(30)).toBe(0);
  });

  it('rises from full vacuum over zero to its top, without a jump', () => {
    expect(compoundShare(-14.735, 150)).toBeCloseTo(0, 3);
    expect(compoundShare(0, 150)).toBe(zeroShare);
    expect(compoundShare(-1e-9, 150)).toBeCloseTo(zeroShare, 6);
    expect(compoundShare(150, 150)).toBe(1);
    expect(compoundShare(-40, 150)).toBe(0);
    expect(compoundShare(400, 150)).toBe(1);
    let before = -1;
    for (let psi = -14; psi <= 150; psi++) {
      const share = compoundShare(psi, 150);
      expect(share).toBeGreaterThan(before);
      before = share;
    }
  });
});
