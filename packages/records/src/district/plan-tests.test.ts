import { describe, expect, it } from 'vitest';
import type { Stored } from '../model/index.ts';
import { openStore, RecordIssuesError, type RecordStore } from '../store/index.ts';
import { validate } from '../store/validate.ts';
import { flowTestsAhead, planTest, planTests } from './plan-tests.ts';

const hydrant = { name: 'H-1', longitude: -130, latitude: -40 };
const flowTest = (hydrantId: string, testedOn: string, residualPsi = 40) => ({
  hydrantId,
  testedOn,
  staticPsi: 60,
  residualPsi,
  statedFlowGpm: 900,
});

describe('a test dated after today', () => {
  it('is refused with the field, the value, the range and what to do', async () => {
    const store = await openStore({ memory: true });
    try {
      const { id } = await store.create('hydrants', hydrant);
      const refused = await store
        .create('flow-tests', flowTest(id, '2130-05-06'))
        .catch((error: unknown) => error);
      expect(refused).toBeInstanceOf(RecordIssuesError);
      const [issue] = (refused as RecordIssuesError).issues;
      expect(issue).toMatchObject({ path: 'testedOn', value: '2130-05-06' });
      expect(issue!.allowed).toMatch(/YYYY-MM-DD, up to \d{4}-\d\d-\d\d/);
      expect(issue!.remedy).toContain('day on which the test was made');
      expect(await store.count('flow-tests')).toBe(0);
      const hose = {
        name: 'L-1',
        size: '5',
        lengthFt: 100,
        serviceTests: [{ testedOn: '2130-01-01', psi: 200, passed: true }],
      };
      await expect(store.create('hose', hose)).rejects.toThrow('serviceTests[0].testedOn');
    } finally {
      await store.close();
    }
  });

  it('that was kept before comes back from an archive', () => {
    const kept = flowTest('01ARZ3NDEKTSV4RRFFQ69G5FAV', '2130-05-06');
    expect(validate('flow-tests', kept, '', { kept: true }).testedOn).toBe('2130-05-06');
  });

  it('and one that cannot be used give way to the newest that can, in plans', async () => {
    const stored = (testedOn: string, residualPsi?: number) =>
      ({ ...flowTest('h', testedOn, residualPsi), id: testedOn, flowing: [] }) as unknown;
    const tests = [stored('2024-05-06'), stored('2025-05-06'), stored('2026-05-06', 70)];
    const store = {
      all: async function* () {
        yield* [...tests, stored('2130-05-06')];
      },
    } as unknown as RecordStore;
    const one = { ...hydrant, id: 'h' } as unknown as Stored<'hydrants'>;
    expect((await planTest(store, one))?.testedOn).toBe('2025-05-06');
    const named = { ...one, planTestId: '2024-05-06' } as Stored<'hydrants'>;
    expect((await planTests(store, [named])).get('h')?.testedOn).toBe('2024-05-06');
    const wrong = { ...one, planTestId: '2130-05-06' } as Stored<'hydrants'>;
    expect((await planTest(store, wrong))?.testedOn).toBe('2025-05-06');
    const ahead = (await flowTestsAhead(store)).get('h');
    expect(ahead?.map(({ testedOn }) => testedOn)).toEqual(['2130-05-06']);
  });
});
