import { createDrill, evolutionOf, viewFor } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { heldIn } from './room-state.ts';

describe('why the clock of a drill stands', () => {
  const scene = evolutionOf('boost through valve')!.scene();
  const view = { ...viewFor('attack operator', scene, createDrill(scene, 1).state), paused: true };

  it('is the instructor while the drill goes on', () => {
    expect(heldIn({ view, connection: { is: 'here' } })).toBe('instructor');
    expect(
      heldIn({ view: { ...view, paused: false }, connection: { is: 'here' } }),
    ).toBeUndefined();
  });

  it('is not told beside the words that the drill has ended', () => {
    const connection = { is: 'out', code: 'ended', why: '' } as const;
    expect(heldIn({ view, connection })).toBeUndefined();
    expect(heldIn({ view, heldBy: 'nobody here', connection })).toBeUndefined();
  });
});
