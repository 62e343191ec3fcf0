import { evolutionOf } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { firstOpen, stepNow, tooEarly, wrongPort } from './order.ts';

const scene = evolutionOf('boost through valve')!.scene();
const all = ['hydrant operator', 'attack operator', 'nozzle crew'] as const;
const until = (id: string) => {
  const at = scene.steps.findIndex((step) => step.id === id);
  return new Set(scene.steps.slice(0, at).map((step) => step.id));
};

describe('the step at hand', () => {
  it('is the first in the script whose forerunners are done', () => {
    expect(stepNow(scene, new Set(), all)?.id).toBe('suction on valve');
    expect(stepNow(scene, until('handle to boost'), all)?.id).toBe('handle to boost');
  });

  it('is nothing for a role that has to wait, and tells what for', () => {
    expect(stepNow(scene, new Set(), ['attack operator'])).toBeUndefined();
    expect(firstOpen(scene, new Set())?.role).toBe('hydrant operator');
  });

  it('ends when every step is done', () => {
    const done = new Set(scene.steps.map(({ id }) => id));
    expect(stepNow(scene, done, all)).toBeUndefined();
    expect(firstOpen(scene, done)).toBeUndefined();
  });
});

describe('out of order', () => {
  it('is the assist valve moved before hose is on it, and says what comes first', () => {
    const early = tooEarly(scene, new Set(), 'hydrant operator', {
      do: 'set valve',
      valve: 'V1.handle',
      opening: 0.25,
    });
    expect(early?.did.id).toBe('handle to boost');
    expect(early?.before.id).toBe('suction on valve');
  });

  it('is not the step at hand, nor what belongs to no step', () => {
    const couple = { do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' } as const;
    expect(tooEarly(scene, new Set(), 'hydrant operator', couple)).toBeUndefined();
    const other = { do: 'set valve', valve: 'B1.intake3', opening: 1 } as const;
    expect(tooEarly(scene, new Set(), 'hydrant operator', other)).toBeUndefined();
  });

  it('is not a valve shut that a later step opens', () => {
    const shut = { do: 'set valve', valve: 'V1.handle', opening: 0 } as const;
    expect(tooEarly(scene, new Set(), 'hydrant operator', shut)).toBeUndefined();
  });
});

describe('a wrong port', () => {
  it('is any but those that the plan has the hose on, and their like', () => {
    const end = { do: 'couple', hose: 'suction', end: 'to' } as const;
    expect(wrongPort(scene, { ...end, port: 'B1.intake1' })).toBeUndefined();
    // An intake is as good as another, an end as good as the other.
    expect(wrongPort(scene, { ...end, port: 'B1.intake2' })).toBeUndefined();
    expect(wrongPort(scene, { ...end, port: 'V1.pump-suction' })).toBeUndefined();
    expect(wrongPort(scene, { ...end, port: 'B1.discharge1' })?.planned).toBe('B1.intake1');
  });
});
