import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compareNetworkCase, type NetworkCase } from './network-cases.ts';

const file = new URL('cases/network-cases.json', import.meta.url);
const cases = JSON.parse(readFileSync(file, 'utf8')) as NetworkCase[];

// Data invented; answers by the EPANET toolkit, an independent solver.
describe('answers by the EPANET toolkit, an independent solver, within 0.5 gpm and 0.05 psi', () => {
  for (const one of cases) {
    it(`${one.id}: ${one.title}`, () => {
      const compared = compareNetworkCase(one);
      expect(compared.length).toBeGreaterThan(10);
      expect(compared.filter((value) => !value.agrees)).toEqual([]);
    });
  }
});
