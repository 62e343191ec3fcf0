import { evolutionOf, evolutions, sceneFromPlan } from '@plugside/drill';
import { boostedAtHydrant, piecesOf } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { layoutWhole } from './whole-layout.ts';

const spotsOf = (key: string) => {
  const { spots } = layoutWhole(evolutionOf(key)!.scene());
  return new Map(spots.map((spot) => [spot.id, spot]));
};

describe('the drawing of the whole', () => {
  it.each(evolutions.map(({ key }) => key))('%s: every piece has a place of its own', (key) => {
    const scene = evolutionOf(key)!.scene();
    const { spots, columns, rows } = layoutWhole(scene);
    expect(spots.map(({ id }) => id).sort()).toEqual(
      piecesOf(scene.plan)
        .map(({ id }) => id)
        .sort(),
    );
    expect(new Set(spots.map(({ column, row }) => `${column} ${row}`)).size).toBe(spots.length);
    expect(Math.max(...spots.map(({ column }) => column))).toBe(columns - 1);
    expect(Math.max(...spots.map(({ row }) => row))).toBe(rows - 1);
  });

  it('goes from the water to the fire', () => {
    const spots = spotsOf('boost through valve');
    const column = (id: string) => spots.get(id)!.column;
    expect(column('H1')).toBe(0);
    expect(column('V1')).toBeGreaterThan(column('H1'));
    expect(column('A1')).toBeGreaterThan(column('V1'));
    expect(column('N1')).toBeGreaterThan(column('A1'));
  });

  it('puts a booster beside its valve, not between valve and fire', () => {
    const spots = spotsOf('boost through valve');
    expect(spots.get('B1')!.column).toBe(spots.get('V1')!.column);
  });

  it('stands still: the same for whatever start of a plan', () => {
    const plan = boostedAtHydrant({ attackLines: [{}, {}] });
    const laid = layoutWhole(sceneFromPlan(plan, { start: 'hose laid' }));
    const flowing = layoutWhole(sceneFromPlan(plan, { start: 'water flowing' }));
    expect(flowing).toEqual(laid);
  });
});
