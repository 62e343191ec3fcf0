import { describe, expect, it } from 'vitest';
import type { HydrantProperties } from '../../api/district.ts';
import { hydrantsDue, rigsDue } from './due.ts';

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
