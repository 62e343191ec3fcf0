import { describe, expect, it } from 'vitest';
import { recordSchemas } from '../model/index.ts';
import { withHoseInService } from './hose-in-service.ts';
import type { PlanningNotice } from './notice.ts';

const TODAY = '2026-12-01';
const id = '01ARZ3NDEKTSV4RRFFQ69G5FAV';
const rig = {
  ...recordSchemas.rigs.parse({
    name: 'Engine 3',
    hose: [
      { size: '5', lengthFt: 200, where: 'rear step' },
      { size: '5', lengthFt: 1000, where: 'supply bed' },
      { size: '3', lengthFt: 600, where: 'supply bed' },
    ],
  }),
  id,
};
const length = (more: object = {}) =>
  recordSchemas.hose.parse({ name: 'L-1', size: '5', lengthFt: 100, rigId: id, ...more });

function carried(lengths: ReturnType<typeof length>[]) {
  const notices: PlanningNotice[] = [];
  const { hose } = withHoseInService(rig, lengths, TODAY, notices);
  return { hose: hose.map(({ size, lengthFt }) => `${size}: ${lengthFt}`), notices };
}

describe('hose in service', () => {
  it('is what the rig says while no length is on record, or as much is', () => {
    expect(carried([]).hose).toEqual(['5: 200', '5: 1000', '3: 600']);
    const sound = Array.from({ length: 12 }, () => length());
    expect(carried(sound)).toMatchObject({ hose: ['5: 200', '5: 1000', '3: 600'], notices: [] });
  });

  it('is none of a size whose lengths are all retired, and the others stay', () => {
    const retired = Array.from({ length: 12 }, () => length({ retiredOn: '2026-04-14' }));
    const { hose, notices } = carried(retired);
    expect(hose).toEqual(['3: 600']);
    expect(notices).toMatchObject([{ level: 'caution', code: 'hose-not-in-service' }]);
    expect(notices[0]!.text).toContain('12 of 12 retired or failed');
  });

  it('is without what failed its newest service test, the supply bed short first', () => {
    const test = (testedOn: string, passed: boolean) => ({ testedOn, psi: 200, passed });
    const lengths = Array.from({ length: 12 }, (_, at) =>
      length({
        serviceTests:
          at < 2
            ? [test('2025-04-01', true), test('2026-04-01', false)]
            : [test('2025-04-01', false), test('2026-04-01', true)],
      }),
    );
    expect(carried(lengths).hose).toEqual(['5: 200', '5: 800', '3: 600']);
  });

  it('does not count what is to be retired later, nor another rig’s hose', () => {
    const other = length({ rigId: '01ARZ3NDEKTSV4RRFFQ69G5FAW', retiredOn: '2020-01-01' });
    const later = Array.from({ length: 12 }, () => length({ retiredOn: '2027-04-14' }));
    expect(carried([other, ...later]).notices).toEqual([]);
  });
});
