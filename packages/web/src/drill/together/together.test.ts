import { createDrill, evolutionOf, viewFor } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { readTogetherAddress, wallAddress } from './address.ts';
import { waitMs } from './backoff.ts';
import { codeIn, codeProblem, inParts, watchKeyIn, watchKeyProblem } from './room-codes.ts';
import { nextShown } from './view-parts.ts';

describe('a code', () => {
  it('is read however it is typed', () => {
    for (const text of ['KTMRB', ' ktmrb ', 'k t m r b', 'KT-MRB']) {
      expect(codeIn(text), text).toBe('KTMRB');
    }
  });

  it('with a letter that no code has: says which', () => {
    expect(codeIn('KTMRA')).toBeUndefined();
    expect(codeProblem('KTMRA')).toContain('A is in no code');
    expect(codeProblem('KTM')).toContain('KTM has 3');
    expect(codeProblem(' ')).toContain('five letters');
  });
});

describe('a wall code', () => {
  it('is read however it is typed, and shown in two parts', () => {
    for (const text of ['KTMRBWXZ', ' ktmr bwxz ', 'ktmr-bwxz', inParts('KTMRBWXZ')]) {
      expect(watchKeyIn(text), text).toBe('KTMRBWXZ');
    }
    expect(inParts('KTMRBWXZ')).toBe('KTMR BWXZ');
  });

  it('that is none: says why, and tells it from the code to join by', () => {
    expect(watchKeyIn('KTMRB')).toBeUndefined();
    expect(watchKeyProblem('KTMRB')).toContain('KTMRB is a code to join by');
    expect(watchKeyProblem('KTMR BWXA')).toContain('A is in no code');
    expect(watchKeyProblem('KTMR BWX')).toContain('KTMRBWX has 7');
    expect(watchKeyProblem('')).toContain('eight letters');
  });

  it('goes in the wall’s address behind the #, which no server is sent', () => {
    expect(wallAddress('KTMRB')).toBe('/drill/KTMRB/wall');
    const url = new URL(wallAddress('KTMRB', 'KTMRBWXZ'), 'http://127.0.0.1');
    expect(url.hash).toBe('#KTMRBWXZ');
    expect(url.pathname + url.search).toBe('/drill/KTMRB/wall');
  });
});

describe('an address', () => {
  it.each([
    ['/drill/new', { at: 'new' }],
    ['/drill/past', { at: 'past' }],
    ['/drill/ktmrb', { at: 'room', code: 'KTMRB' }],
    ['/drill/KTMRB/wall', { at: 'wall', code: 'KTMRB' }],
    ['/drill/KTMRB/replay', { at: 'after', code: 'KTMRB' }],
    ['/drill/replay/01ARZ3NDEK', { at: 'replay', roomId: '01ARZ3NDEK' }],
  ])('%s names what it says', (address, named) => {
    expect(readTogetherAddress(address)).toEqual(named);
  });

  it.each(['/drill', '/drill/learn/boost', '/drill/sandbox', '/lay/KTMRB', '/drill/KTMRB/x'])(
    '%s is of no shared drill',
    (address) => {
      expect(readTogetherAddress(address)).toBeUndefined();
    },
  );
});

describe('waiting to connect again', () => {
  it('grows, never past ten seconds and a quarter, and is spread', () => {
    const waits = Array.from({ length: 12 }, (_, tries) => waitMs(tries, 0.5));
    expect(waits.slice(0, 5)).toEqual([500, 1000, 2000, 4000, 8000]);
    expect(Math.max(...waits)).toBe(10_000);
    expect(waitMs(20, 0.999)).toBeLessThanOrEqual(12_500);
    expect(waitMs(3, 0)).toBeLessThan(waitMs(3, 0.9));
  });
});

describe('frames of a view', () => {
  const scene = evolutionOf('boost through valve')!.scene();
  const view = viewFor('hydrant operator', scene, createDrill(scene, 1).state);

  it('put what came over what is shown', () => {
    const next = nextShown({ n: 3, view }, { n: 4, view: { tick: 9, paused: true } });
    expect(next).toEqual({ n: 4, view: { ...view, tick: 9, paused: true } });
  });

  it('take away what is null', () => {
    const guided = { ...view, next: scene.steps[0]! };
    const next = nextShown({ n: 1, view: guided }, { n: 2, view: { next: null } });
    expect(next!.view).not.toHaveProperty('next');
    expect(next!.view).toEqual(view);
  });

  it('with one missing between tell nothing, unless whole', () => {
    expect(nextShown({ n: 3, view }, { n: 5, view: { tick: 9 } })).toBeUndefined();
    expect(nextShown({ n: 3, view }, { n: 9, whole: true, view })?.view).toEqual(view);
  });
});
