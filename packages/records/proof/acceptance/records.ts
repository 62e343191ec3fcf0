import {
  DuplicateKeyError,
  NotFoundError,
  openStore,
  RecordIssuesError,
  ReferredToError,
  StaleRecordError,
} from '@plugside/records';
import { kinds, recordSchemas } from '@plugside/records/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleRecords } from '../example-records.ts';
import { fillExamples } from '../fill-examples.ts';
import { type Fresh, hydrant, refusal, withStore } from './trial.ts';

export function describeRecords(fresh: Fresh): void {
  describe('a record', () => {
    it(
      'of every kind comes back as it was given, after closing and opening too',
      withStore(fresh, async (store, target) => {
        const made = await fillExamples(store);
        for (const kind of kinds) {
          const one = made.get(kind)!;
          expect(await store.get(kind, one.id)).toStrictEqual(one);
          expect(Object.keys(one)).toEqual(
            expect.arrayContaining(Object.keys(recordSchemas[kind].shape)),
          );
        }
        if ('memory' in target) return;
        const again = await openStore(target);
        for (const kind of kinds) {
          const one = made.get(kind)!;
          expect(await again.get(kind, one.id)).toStrictEqual(one);
        }
        await again.close();
      }),
    );

    it(
      'holds the fields given, what the store keeps, the defaults, and nothing else',
      withStore(fresh, async (store) => {
        const given = { name: 'H-1', longitude: -84.1, latitude: 33.4, mainIn: 8 };
        const one = await store.create('hydrants', given);
        const { id, createdAt, updatedAt, ...rest } = one;
        expect(id).toMatch(/^[0-9A-HJKMNP-TV-Z]{26}$/);
        expect(new Date(createdAt).toISOString()).toBe(createdAt);
        expect(updatedAt).toBe(createdAt);
        expect(rest).toStrictEqual({
          version: 1,
          ...given,
          sideOutlets: 2,
          sideOutletIn: 2.5,
          status: 'in service',
          origins: {},
        });
      }),
    );

    it(
      'keeps any number to its last bit and any text to its last character',
      withStore(fresh, async (store) => {
        const number = (min: number, max: number) =>
          fc.double({ min, max, noNaN: true }).map((x) => (x === 0 ? 0 : x));
        const fields = fc.record({
          name: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }),
          longitude: number(-180, 180),
          latitude: number(-90, 90),
          elevationFt: number(-1500, 20000),
          note: fc.string({ unit: 'grapheme', maxLength: 100 }),
        });
        await fc.assert(
          fc.asyncProperty(fields, async (given) => {
            fc.pre(given.name.trim() !== '' && !/\0/.test(JSON.stringify(given)));
            fc.pre(!JSON.stringify(given).includes('\\u0000'));
            const one = await store.create('buildings', given);
            expect(await store.get('buildings', one.id)).toStrictEqual(one);
            expect(one).toMatchObject({ ...given, name: given.name.trim() });
          }),
          { numRuns: 100 },
        );
      }),
    );

    it(
      'that does not fit is refused field by field, with what is allowed and what to do',
      withStore(fresh, async (store) => {
        const wrong = { name: 'H-1', longitude: -190, status: 'open', stem: 4 };
        const error = await refusal(store.create('hydrants', wrong as never));
        expect(error).toBeInstanceOf(RecordIssuesError);
        const { issues } = error as RecordIssuesError;
        expect(issues.map(({ path, value, allowed }) => ({ path, value, allowed }))).toEqual(
          expect.arrayContaining([
            { path: 'longitude', value: -190, allowed: 'a number, -180 to 180' },
            { path: 'latitude', value: undefined, allowed: 'a number, -90 to 90' },
            { path: 'status', value: 'open', allowed: 'one of: in service, out of service' },
            { path: 'stem', value: 4, allowed: expect.stringContaining('steamerIn') },
          ]),
        );
        for (const { message, remedy } of issues) expect(message && remedy).toBeTruthy();
        expect(await store.count('hydrants')).toBe(0);
      }),
    );

    it(
      'names the place of a fault inside a list',
      withStore(fresh, async (store) => {
        const points = [
          { flowGpm: 100, netPsi: 150 },
          { flowGpm: 100, netPsi: 5000 },
        ];
        const given = { rigId: '01ARZ3NDEKTSV4RRFFQ69G5FAV', testedOn: '2026-01-01', points };
        const error = (await refusal(store.create('pump-tests', given))) as RecordIssuesError;
        expect(error.issues).toMatchObject([
          { path: 'points[1].netPsi', value: 5000, allowed: 'a number, 0 to 1000' },
        ]);
      }),
    );

    it(
      'with a NUL or half a character in its text is refused',
      withStore(fresh, async (store) => {
        for (const name of ['H\u00001', 'H\ud800']) {
          expect(await refusal(store.create('hydrants', hydrant(name)))).toBeInstanceOf(
            RecordIssuesError,
          );
        }
      }),
    );

    it(
      'that refers to what is not there is refused, one id and a list of them',
      withStore(fresh, async (store) => {
        const nobody = '01ARZ3NDEKTSV4RRFFQ69G5FAV';
        const test = { hydrantId: nobody, testedOn: '2026-01-01', staticPsi: 60, residualPsi: 40 };
        const one = (await refusal(store.create('flow-tests', test))) as RecordIssuesError;
        expect(one.issues).toMatchObject([{ path: 'hydrantId', value: nobody }]);
        const { id } = await store.create('hydrants', hydrant('H-1'));
        const plan = { name: 'P', text: 'x', hydrantIds: [id, nobody] };
        const list = (await refusal(store.create('plans', plan))) as RecordIssuesError;
        expect(list.issues).toMatchObject([{ path: 'hydrantIds[1]', value: nobody }]);
        expect(await store.count('plans')).toBe(0);
      }),
    );

    it(
      'has its key of its own; records without a key are many',
      withStore(fresh, async (store) => {
        const key = { externalSource: 'list', externalId: '1' };
        await store.create('hydrants', { ...hydrant('H-1'), ...key });
        const again = store.create('hydrants', { ...hydrant('H-2'), ...key });
        expect(await refusal(again)).toBeInstanceOf(DuplicateKeyError);
        await store.create('hydrants', { ...hydrant('H-2'), ...key, externalSource: 'other' });
        await store.create('hydrants', hydrant('H-3'));
        await store.create('hydrants', hydrant('H-4'));
        expect(await store.count('hydrants')).toBe(4);
      }),
    );
  });

  describe('a change', () => {
    it(
      'writes the fields given, clears those given as undefined, and counts the version up',
      withStore(fresh, async (store) => {
        const made = await store.create('hydrants', {
          ...hydrant('H-1'),
          mainIn: 8,
          owner: 'Town',
        });
        const after = await store.change('hydrants', made.id, 1, {
          mainIn: undefined,
          sideOutlets: 1,
        });
        const { mainIn: _, ...rest } = made;
        expect(after).toStrictEqual({
          ...rest,
          sideOutlets: 1,
          origins: { mainIn: expect.objectContaining({ kind: 'department' }) },
          version: 2,
          updatedAt: after.updatedAt,
        });
        expect(after.updatedAt >= made.updatedAt).toBe(true);
        expect(await store.get('hydrants', made.id)).toStrictEqual(after);
      }),
    );

    it(
      'that changes nothing leaves the version',
      withStore(fresh, async (store) => {
        const made = await store.create('hydrants', hydrant('H-1'));
        expect(await store.change('hydrants', made.id, 1, { name: 'H-1' })).toStrictEqual(made);
      }),
    );

    it(
      'made on an older version is refused with the record as it is now',
      withStore(fresh, async (store) => {
        const { id } = await store.create('hydrants', hydrant('H-1'));
        const current = await store.change('hydrants', id, 1, { name: 'H-2' });
        const error = await refusal(store.change('hydrants', id, 1, { name: 'H-3' }));
        expect(error).toBeInstanceOf(StaleRecordError);
        expect(error).toMatchObject({ kind: 'hydrants', id, yours: 1, current });
        expect(await store.get('hydrants', id)).toStrictEqual(current);
      }),
    );

    it(
      'made by many at once on one version goes through for one of them',
      withStore(fresh, async (store) => {
        const { id } = await store.create('hydrants', hydrant('H-1'));
        const tries = Array.from({ length: 12 }, (_, index) =>
          store.change('hydrants', id, 1, { name: `H-1 by ${index}` }),
        );
        const outcomes = await Promise.allSettled(tries);
        const done = outcomes.filter(({ status }) => status === 'fulfilled');
        expect(done).toHaveLength(1);
        for (const one of outcomes) {
          if (one.status === 'rejected') expect(one.reason).toBeInstanceOf(StaleRecordError);
        }
        expect((await store.get('hydrants', id))?.version).toBe(2);
      }),
    );

    it(
      'of nothing is refused, and so is one that does not fit',
      withStore(fresh, async (store) => {
        const nobody = '01ARZ3NDEKTSV4RRFFQ69G5FAV';
        const lost = store.change('hydrants', nobody, 1, {});
        expect(await refusal(lost)).toBeInstanceOf(NotFoundError);
        expect(await store.get('hydrants', nobody)).toBeUndefined();
        const made = await store.create('hydrants', hydrant('H-1'));
        const unfit = store.change('hydrants', made.id, 1, { latitude: 91 });
        expect(await refusal(unfit)).toBeInstanceOf(RecordIssuesError);
        expect(await store.get('hydrants', made.id)).toStrictEqual(made);
      }),
    );
  });

  describe('a removal', () => {
    it(
      'is refused while others refer to the record, and says who',
      withStore(fresh, async (store) => {
        const made = await fillExamples(store);
        const one = made.get('hydrants')!;
        const error = await refusal(store.remove('hydrants', one.id, one.version));
        expect(error).toBeInstanceOf(ReferredToError);
        expect((error as ReferredToError).by).toEqual([
          { kind: 'flow-tests', field: 'hydrantId', count: 1, ids: [made.get('flow-tests')?.id] },
          { kind: 'plans', field: 'hydrantIds', count: 1, ids: [made.get('plans')?.id] },
        ]);
        expect(await store.get('hydrants', one.id)).toStrictEqual(one);
      }),
    );

    it(
      'of everything goes through from the last that refers to the first that is referred to',
      withStore(fresh, async (store) => {
        const made = await fillExamples(store);
        const { id, version } = made.get('hydrants')!;
        made.set(
          'hydrants',
          await store.change('hydrants', id, version, { planTestId: undefined }),
        );
        for (const kind of [...kinds].reverse()) {
          const one = made.get(kind)!;
          await store.remove(kind, one.id, one.version);
          expect(await store.get(kind, one.id)).toBeUndefined();
        }
      }),
    );

    it(
      'made on an older version, or of nothing, is refused',
      withStore(fresh, async (store) => {
        const { id } = await store.create('stations', hydrant('Station 1'));
        await store.change('stations', id, 1, { name: 'Station 2' });
        expect(await refusal(store.remove('stations', id, 1))).toBeInstanceOf(StaleRecordError);
        await store.remove('stations', id, 2);
        expect(await refusal(store.remove('stations', id, 2))).toBeInstanceOf(NotFoundError);
      }),
    );

    it(
      'and something new that refers to the record do not both go through',
      withStore(fresh, async (store) => {
        for (let round = 0; round < 10; round += 1) {
          const { id } = await store.create('hydrants', hydrant(`H-${round}`));
          const plan = { name: `P-${round}`, text: 'x', hydrantIds: [id] };
          const outcomes = await Promise.allSettled([
            store.remove('hydrants', id, 1),
            store.create('plans', plan),
          ]);
          expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
        }
      }),
    );
  });

  it('the examples fill in every field that a kind has', () => {
    const ids = { station: '', hydrant: '', rig: '', building: '' };
    for (const kind of kinds) {
      const given = Object.keys(exampleRecords[kind](ids));
      const all = Object.keys(recordSchemas[kind].shape).filter((field) => field !== 'planTestId');
      expect([...given].sort()).toEqual(all.sort());
    }
  });
}
