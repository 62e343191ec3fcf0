import { describe, expect, it } from 'vitest';
import type { HydrantProperties } from '../../api/district.ts';
import { hoseDue, hydrantsDue, rigsDue } from './due.ts';

const TODAY = '2026-06-01';

const hydrant = (name: string, more: Partial<HydrantProperties>) =>
  ({
    id: name,
    name,
    status: 'in service',
    testedOn: null,
    retestOn: null,
    ...more,
  }) as HydrantProperties;

describe('tests due', () => {
  it('are the hydrants in service whose test has run out, oldest first, never tested last', () => {
    const due = hydrantsDue(
      [
        hydrant('H-10', {}),
        hydrant('H-2', {}),
        hydrant('H-3', { testedOn: '2021-06-01', retestOn: '2026-06-01' }),
        hydrant('H-4', { testedOn: '2020-01-01', retestOn: '2025-01-01' }),
        hydrant('H-5', { testedOn: '2021-06-02', retestOn: '2026-06-02' }),
        hydrant('H-6', { status: 'out of service' }),
      ],
      TODAY,
    );
    expect(due.map(({ name }) => name)).toEqual(['H-4', 'H-3', 'H-2', 'H-10']);
  });

  it('are the rated pumps in service without a test within the year', () => {
    const rig = (id: string, more: object = {}) =>
      ({ id, name: id, inService: true, ratedGpm: 1500, ...more }) as never;
    const test = (rigId: string, testedOn: string) => ({ rigId, testedOn }) as never;
    const due = rigsDue(
      [
        rig('E1'),
        rig('E2'),
        rig('E3'),
        rig('E4', { inService: false }),
        rig('T1', { ratedGpm: undefined }),
      ],
      [test('E1', '2024-06-01'), test('E1', '2025-06-02'), test('E2', '2025-06-01')],
      TODAY,
    );
    expect(due.map(({ id }) => id)).toEqual(['E2', 'E3']);
  });
});

describe('tests that count for nothing', () => {
  it('leave a hydrant due, with the day that does not count', () => {
    const [due] = hydrantsDue([hydrant('H-1', { testedOn: '2026-05-01' })], TODAY);
    expect(due).toMatchObject({ name: 'H-1', testedOn: '2026-05-01', isVoid: true });
  });

  it('and dated ahead leave a pump due', () => {
    const rig = { id: 'E1', name: 'E1', inService: true, ratedGpm: 1500 } as never;
    const test = { rigId: 'E1', testedOn: '2130-01-01' } as never;
    expect(rigsDue([rig], [test], TODAY)).toMatchObject([{ id: 'E1', testedOn: null }]);
  });
});

describe('service tests of hose', () => {
  const length = (rigId: string | undefined, tests: [string, boolean][], more: object = {}) =>
    ({
      rigId,
      serviceTests: tests.map(([testedOn, passed]) => ({ testedOn, psi: 200, passed })),
      ...more,
    }) as never;
  const rigs = [{ id: 'E1', name: 'Engine 1' }] as never;

  it('are due a year on, after a failure and where there was none, but not of retired hose', () => {
    const due = hoseDue(
      [
        length('E1', [['2025-06-02', true]]),
        length('E1', [['2025-06-01', true]]),
        length('E1', [
          ['2024-04-01', true],
          ['2026-04-01', false],
        ]),
        length('E1', [], { retiredOn: '2026-01-01' }),
        length(undefined, []),
      ],
      rigs,
      TODAY,
    );
    expect(due).toEqual([
      { id: 'E1', name: 'Engine 1', count: 2, testedOn: '2025-06-01' },
      { id: '', name: 'Hose on no rig', count: 1, testedOn: null },
    ]);
  });
});
