import { describe, expect, it } from 'vitest';
import { newRig } from '../patterns/pieces.ts';
import { adjusted, asTheyCome, rankingOf } from './adjustments.ts';
import type { Situation } from './situation.ts';

const rig = (id: string, arrivesMin: number) => ({
  rig: newRig(id, 'attack'),
  kind: 'engine' as const,
  arrivesMin,
  hose: [],
  assistValve: false,
});
const situation: Situation = {
  title: 'Cooperage',
  invented: true,
  scene: { name: 'Cooperage', elevationFt: 0 },
  demandGpm: 1000,
  rigs: [rig('E1', 4), rig('E2', 6), rig('E3', 9)],
  hydrants: [],
  waters: [],
  fillPlaces: [],
  department: {},
};
const ids = (of: Situation) => of.rigs.map(({ rig: { id } }) => id);

describe('a situation changed', () => {
  it('stays as it is where nothing is changed', () => {
    expect(adjusted(situation, asTheyCome)).toEqual(situation);
  });
  it('takes the demand, leaves out who is away, and sorts by arrival anew', () => {
    const changed = adjusted(situation, {
      ...asTheyCome,
      demandGpm: 1750,
      away: ['E1'],
      arrivesMin: { E2: 12 },
    });
    expect(changed.demandGpm).toBe(1750);
    expect(ids(changed)).toEqual(['E3', 'E2']);
    expect(ids(situation)).toEqual(['E1', 'E2', 'E3']);
  });
  it('always weighs the demand first, and every criterion once', () => {
    expect(rankingOf({ ...asTheyCome, first: 'rigs used' })).toEqual([
      'meets demand',
      'rigs used',
      'time to water',
      'hose',
      'margin',
    ]);
  });
});
