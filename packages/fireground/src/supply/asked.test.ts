import { describe, expect, it } from 'vitest';
import {
  adjusted,
  askedOf,
  askedText,
  asTheyCome,
  chooseSupply,
  type Situation,
  shareText,
} from '../index.ts';

const situation: Situation = {
  title: 'Works',
  invented: true,
  scene: { name: 'Works', elevationFt: 0 },
  demandGpm: 1200,
  rigs: [],
  hydrants: [],
  waters: [],
  fillPlaces: [],
  department: {},
};

describe('what ways are asked besides the demand', () => {
  it('is the usual where nobody says otherwise, and told as that', () => {
    const asked = askedOf(situation);
    expect(asked).toMatchObject({ usualMargin: true, usualPdp: true });
    expect(asked.marginGpm).toBeCloseTo(1200 / 10, 9);
    expect(askedText(asked, 'us')).toBe(
      '10 % of the demand (120 gpm) is wanted to spare: the default. The lines at the fire need 150 psi at the discharge of their pump: the default.',
    );
  });

  it('is what is given, in the units of the reader', () => {
    const given = adjusted(situation, { ...asTheyCome, marginShare: 0.25, fireLinePdpPsi: 200 });
    const asked = askedOf(given);
    expect(asked.marginGpm).toBeCloseTo(300, 9);
    // 300 gpm at 3.785412 L (NIST SP 811, B.8) are 1,136 L/min; 200 psi at 6.894757 kPa 13.8 bar.
    expect(askedText(asked, 'si')).toBe(
      '25 % of the demand (1,136 L/min) is wanted to spare: as given. The lines at the fire need 13.8 bar at the discharge of their pump: as given.',
    );
  });

  it('is told in per cent, with a digit where it takes one', () => {
    expect([0, 0.07, 0.125, 2].map(shareText)).toEqual(['0 %', '7 %', '12.5 %', '200 %']);
  });

  it.each([
    [{ marginShare: 2.1 }, 'marginShare is 2.1; allowed: 0 to 2.'],
    [{ marginShare: -0.1 }, 'marginShare is -0.1; allowed: 0 to 2.'],
    [{ fireLinePdpPsi: 401 }, 'fireLinePdpPsi is 401; allowed: 50 to 400.'],
    [{ fireLinePdpPsi: 49 }, 'fireLinePdpPsi is 49; allowed: 50 to 400.'],
  ])('is refused where it cannot be: %j', (changes, told) => {
    const asked = adjusted(situation, { ...asTheyCome, ...changes });
    expect(() => chooseSupply(asked)).toThrow(told);
  });
});
