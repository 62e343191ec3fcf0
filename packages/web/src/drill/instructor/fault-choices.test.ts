import { evolutions, mayDo, readAction } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { armed, faultChoices, sameFault } from './fault-choices.ts';

describe('what an instructor can make go wrong', () => {
  it.each(evolutions.map((one) => [one.key, one] as const))(
    'in %s: all of it is understood and allowed by the drill',
    (_, evolution) => {
      const scene = evolution.scene();
      const options = faultChoices(scene).flatMap((choice) => choice.options);
      expect(options.length).toBeGreaterThan(scene.hoses.length * 2);
      const ids = new Set<string>();
      options.forEach((option, at) => {
        const fault = armed(option, at, 40);
        ids.add(fault.id);
        const read = readAction(JSON.parse(JSON.stringify({ do: 'arm fault', fault })));
        expect(read, option.key).toEqual({ action: { do: 'arm fault', fault } });
        expect(mayDo('instructor', scene, { do: 'arm fault', fault }), option.key).toBeUndefined();
      });
      expect(ids.size).toBe(options.length);
    },
  );

  it('knows the same fault again whatever its strength', () => {
    const weak = (hydrant: string, share: number) =>
      ({ kind: 'hydrant weak', hydrant, share }) as const;
    expect(sameFault(weak('H1', 0.5), weak('H1', 0.8))).toBe(true);
    expect(sameFault(weak('H1', 0.5), weak('H2', 0.5))).toBe(false);
    expect(
      sameFault(
        { kind: 'hose burst', hose: 'lay' },
        { kind: 'hose kinked', hose: 'lay', factor: 5 },
      ),
    ).toBe(false);
  });
});
