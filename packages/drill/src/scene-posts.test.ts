import { newHydrant, newLine, newPlan, newRig, relay } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { evolutions } from './evolutions/index.ts';
import { postsOf, rolesIn } from './scene-posts.ts';

const hydrant = (id: string) => newHydrant(id, { staticPsi: 62, residualPsi: 44, testGpm: 1060 });

describe('who stands where', () => {
  it('on a relay: the source engine is the hydrant operator’s, each engine between has its own', () => {
    expect(postsOf(relay({ pumps: 2 }))).not.toHaveProperty('relay operator');
    expect(postsOf(relay({ pumps: 3 }))).toMatchObject({
      'hydrant operator': ['H1', 'P1'],
      'relay operator': ['P2'],
      'attack operator': ['P3'],
    });
    expect(postsOf(relay({ pumps: 5 }))).toMatchObject({
      'hydrant operator': ['H1', 'P1'],
      'relay operator': ['P2'],
      'second relay operator': ['P3'],
      'third relay operator': ['P4'],
      'attack operator': ['P5'],
    });
  });

  it('on a longer relay than there are roles for: the third has the rest', () => {
    const posts = postsOf(relay({ pumps: 40 }));
    expect(posts['second relay operator']).toEqual(['P3']);
    expect(posts['third relay operator']).toEqual(
      Array.from({ length: 36 }, (_, at) => `P${at + 4}`),
    );
  });

  it('an engine far from its hydrant, with none at the hydrant, has an operator of its own', () => {
    const plan = (firstFt: number) =>
      newPlan({
        title: 'One engine half way',
        scene: 'A1',
        hydrants: [hydrant('H1')],
        rigs: [newRig('R1', 'relay', {}), newRig('A1', 'attack', {})],
        lines: [
          newLine('first', 'H1.steamer', 'R1.intake1', '5', firstFt),
          newLine('second', 'R1.discharge1', 'A1.intake1', '5', 600),
        ],
      });
    expect(postsOf(plan(600))).toMatchObject({
      'hydrant operator': ['H1'],
      'relay operator': ['R1'],
    });
    // At the hydrant it is within the hydrant operator's reach.
    expect(postsOf(plan(25))).toMatchObject({ 'hydrant operator': ['H1', 'R1'] });
    expect(rolesIn({ posts: postsOf(plan(25)) })).toEqual(['hydrant operator', 'attack operator']);
  });

  it('an engine with lines from two hydrants, one of them at hand, stands at the source', () => {
    const plan = newPlan({
      title: 'Two hydrants',
      scene: 'A1',
      hydrants: [hydrant('H1'), hydrant('H2')],
      rigs: [newRig('B1', 'booster', {}), newRig('A1', 'attack', {})],
      lines: [
        newLine('far', 'H2.steamer', 'B1.intake2', '5', 500),
        newLine('suction', 'H1.steamer', 'B1.intake1', '5', 25),
        newLine('lay', 'B1.discharge1', 'A1.intake1', '5', 700),
      ],
    });
    expect(rolesIn({ posts: postsOf(plan) })).toEqual(['hydrant operator', 'attack operator']);
  });

  it('in the evolutions that ship: a relay operator in the relay alone', () => {
    const relayed = evolutions
      .filter((one) => rolesIn(one.scene()).includes('relay operator'))
      .map(({ key }) => key);
    expect(relayed).toEqual(['relay']);
  });
});
