import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compareSupplyCase, type SupplyCase } from './supply-cases.ts';

const file = new URL('cases/supply-cases.json', import.meta.url);
const cases = JSON.parse(readFileSync(file, 'utf8')) as SupplyCase[];

// Data invented; answers by the EPANET toolkit and, apart from it, by one-dimensional search.
describe('greatest flow to the scene, answers by the EPANET toolkit, an independent solver', () => {
  it('has cases', () => expect(cases.length).toBeGreaterThanOrEqual(12));
  for (const one of cases) {
    it(`${one.id}: ${one.title}`, () => {
      expect(compareSupplyCase(one).filter((value) => !value.agrees)).toEqual([]);
    });
  }
});
