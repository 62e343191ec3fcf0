import { evolutionOf, evolutions } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { unitsIn } from '../editing/use-units.ts';
import { drillAddress, readDrillAddress } from './address.ts';
import { hoseName, inUnits } from './words.ts';

describe('sentences in the reader’s units', () => {
  // 1 psi = 0.06894757 bar, 1 gal = 3.785412 L, 1 ft = 0.3048 m (NIST SP 811, appendix B.8).
  it('turns every quantity for a reader of SI', () => {
    const si = unitsIn('si');
    expect(inUnits('Raise the pressure to 90 psi and look.', si)).toContain('6.2 bar');
    expect(inUnits('Some 1,000 gpm through 900 ft.', si)).toMatch(/3,785 L\/min through 274 m/);
  });

  it('leaves US sentences as they are', () => {
    expect(inUnits('I want 120 psi.', unitsIn('us'))).toBe('I want 120 psi.');
  });
});

describe('names of hose', () => {
  it('are what the steps call them', () => {
    const { hoses } = evolutionOf('boost through valve')!.scene();
    const names = hoses.map(hoseName);
    expect(names).toContain('Suction hose');
    expect(names).toContain('Supply hose');
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('addresses', () => {
  it('read back for every evolution', () => {
    for (const { key } of evolutions) {
      const read = readDrillAddress(drillAddress('learn', key));
      expect(read.at === 'learn' && read.evolution.key).toBe(key);
    }
  });

  it('tell what is not there', () => {
    expect(readDrillAddress('/drill').at).toBe('start');
    expect(readDrillAddress('/drill/learn/no-such').at).toBe('unknown');
    expect(readDrillAddress('/drill/other/boost-through-valve').at).toBe('unknown');
  });
});
