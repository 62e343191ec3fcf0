import { describe, expect, it } from 'vitest';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { mayDo } from './may-do.ts';
import { readAction } from './read-action.ts';

const malformed: [name: string, value: unknown, field: string][] = [
  ['nothing', undefined, 'action'],
  ['a list', [], 'action'],
  ['no kind', {}, 'do'],
  ['an unknown kind', { do: 'explode' }, 'do'],
  ['a kind of the language itself', { do: 'constructor' }, 'do'],
  [
    'an end that hoses do not have',
    { do: 'couple', hose: 'lay', end: 'middle', port: 'V1.supply' },
    'end',
  ],
  ['an empty name', { do: 'uncouple', hose: '', end: 'from' }, 'hose'],
  ['a name without end', { do: 'uncouple', hose: 'x'.repeat(81), end: 'from' }, 'hose'],
  ['an opening over 1', { do: 'set valve', valve: 'H1.stem', opening: 1.01 }, 'opening'],
  [
    'an opening that is no number',
    { do: 'set valve', valve: 'H1.stem', opening: Number.NaN },
    'opening',
  ],
  ['an opening in words', { do: 'set valve', valve: 'H1.stem', opening: '1' }, 'opening'],
  [
    'a move over two minutes',
    { do: 'set valve', valve: 'H1.stem', opening: 1, overS: 121 },
    'overS',
  ],
  ['a field too many', { do: 'pause', now: true }, 'now'],
  ['a governor over 400 psi', { do: 'set governor', rig: 'B1', pdpPsi: 401 }, 'pdpPsi'],
  ['a throttle under 0.3', { do: 'set throttle', rig: 'B1', speedFraction: 0.2 }, 'speedFraction'],
  ['a gear that is no yes or no', { do: 'pump in gear', rig: 'B1', inGear: 1 }, 'inGear'],
  ['a message over 200 characters', { do: 'radio', message: { text: 'x'.repeat(201) } }, 'text'],
  ['an empty message', { do: 'radio', message: { text: '  ' } }, 'text'],
  ['an unknown preset', { do: 'radio', message: { preset: 'hello' } }, 'preset'],
  ['a preset without its number', { do: 'radio', message: { preset: 'pressure wanted' } }, 'psi'],
  ['a number the preset has not', { do: 'radio', message: { preset: 'copied', gpm: 5 } }, 'gpm'],
  ['a speed over 8', { do: 'set speed', speed: 9 }, 'speed'],
  ['a fault of no kind', { do: 'arm fault', fault: { id: 'f1', kind: 'earthquake' } }, 'kind'],
  [
    'a fault with a strange id',
    { do: 'arm fault', fault: { id: 'a b', kind: 'pump dies', rig: 'B1' } },
    'id',
  ],
  [
    'a fault at half a tick',
    { do: 'arm fault', fault: { id: 'f', atTick: 0.5, kind: 'pump dies', rig: 'B1' } },
    'atTick',
  ],
];

describe('readAction', () => {
  it.each(malformed)('refuses %s and names the field', (_name, value, field) => {
    const read = readAction(value);
    expect(read).toHaveProperty('problem.field', field);
    expect(read).toHaveProperty('problem.message', expect.stringMatching(/\S/));
  });

  it('keeps what it lets through as it was, but for blanks around text', () => {
    for (const action of [
      { do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' },
      { do: 'set valve', valve: 'V1.handle', opening: 0.5, overS: 10 },
      { do: 'radio', message: { preset: 'pressure wanted', psi: 120 } },
      {
        do: 'arm fault',
        fault: { id: 'f1', atTick: 200, kind: 'hose kinked', hose: 'lay', factor: 4 },
      },
      { do: 'say', text: 'Stand by.', to: 'nozzle crew' },
    ])
      expect(readAction(action)).toEqual({ action });
    expect(readAction({ do: 'say', text: ' Go. ' })).toEqual({
      action: { do: 'say', text: 'Go.' },
    });
  });
});

describe('mayDo', () => {
  const scene = boostThroughValve.scene();

  it('keeps each role to its own place', () => {
    const handle = { do: 'set valve', valve: 'V1.handle', opening: 1 } as const;
    expect(mayDo('hydrant operator', scene, handle)).toBeUndefined();
    expect(mayDo('attack operator', scene, handle)?.message).toMatch(/V1 is out of .* reach/);
    expect(mayDo('nozzle crew', scene, handle)).toBeDefined();
    expect(mayDo('instructor', scene, handle)?.message).toMatch(/no pump, valve or hose/);
    expect(mayDo('observer', scene, handle)?.message).toMatch(/watches/);
    const bale = { do: 'set valve', valve: 'N1.bale', opening: 0 } as const;
    expect(mayDo('nozzle crew', scene, bale)).toBeUndefined();
    expect(mayDo('attack operator', scene, bale)).toBeDefined();
    const governor = { do: 'set governor', rig: 'A1', pdpPsi: 150 } as const;
    expect(mayDo('attack operator', scene, governor)).toBeUndefined();
    expect(mayDo('hydrant operator', scene, governor)).toBeDefined();
  });

  it('gives faults, pause and speed to the instructor alone', () => {
    for (const action of [
      { do: 'pause' },
      { do: 'set speed', speed: 2 },
      { do: 'arm fault', fault: { id: 'f', kind: 'pump dies', rig: 'B1' } },
    ] as const) {
      expect(mayDo('instructor', scene, action)).toBeUndefined();
      expect(mayDo('hydrant operator', scene, action)?.message).toMatch(/Only the instructor/);
    }
  });

  it('refuses what is not there by its name', () => {
    const message = (action: Parameters<typeof mayDo>[2]) =>
      mayDo('hydrant operator', scene, action)?.message;
    expect(message({ do: 'set valve', valve: 'Z9.stem', opening: 1 })).toContain('Z9.stem');
    expect(message({ do: 'uncouple', hose: 'rope', end: 'from' })).toContain('rope');
    expect(message({ do: 'pump in gear', rig: 'Z9', inGear: true })).toContain('Z9');
    const fault = { id: 'f', kind: 'hydrant weak', hydrant: 'H9', share: 0.5 } as const;
    expect(mayDo('instructor', scene, { do: 'arm fault', fault })?.message).toContain('H9');
  });
});
