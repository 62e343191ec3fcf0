import { evolutions } from '@plugside/drill';
import { deferral } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { sceneCautions } from './scene-cautions.ts';

describe('cautions that stand beside a drill', () => {
  it.each(evolutions.map((one) => [one.title, one] as const))('%s has its own', (_, evolution) => {
    expect(sceneCautions(evolution.scene())).toEqual(evolution.cautions);
  });

  it('a drill from a plan, or of an evolution that is not known, has what all have', () => {
    for (const scene of [{}, { evolution: 'of a newer version' }]) {
      const told = sceneCautions(scene);
      expect(told.join(' ')).toMatch(/Never uncouple under pressure/);
      expect(told.join(' ')).toMatch(/Open hydrants and large valves slowly/);
      expect(told.at(-1)).toBe(deferral);
    }
  });
});
