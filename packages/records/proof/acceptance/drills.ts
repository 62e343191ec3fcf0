/** Drills and their logs among the records. */
import {
  type DrillLogRow,
  type DrillRunChange,
  DrillTakenError,
  type NewDrillRun,
  openStore,
  type RecordStore,
} from '@plugside/records';
import { describe, expect, it } from 'vitest';
import { type Fresh, refusal, withStore } from './trial.ts';

/** JSON of every sort: it must come back as it went in. */
const scene = { title: 'Boost', parts: [1.5, -0.25, 1e-9, null, true, 'ü "quoted" \\ '], deep: {} };

const drill = (code: string, more: Partial<NewDrillRun> = {}): NewDrillRun => ({
  code,
  title: 'Boost',
  seed: 4_294_967_295,
  scene,
  seats: { instructor: 'x', roles: {} },
  ...more,
});

const row = (seq: number, more: Partial<DrillLogRow> = {}): DrillLogRow => ({
  seq,
  entry: { tick: seq * 3, seq, kind: 'event', event: { text: `Entry ${seq}` } },
  ...more,
});

/** Writes as somebody who knows the drill as it is. */
async function wrote(store: RecordStore, changes: Omit<DrillRunChange, 'since' | 'changedAt'>[]) {
  const whole: DrillRunChange[] = [];
  for (const change of changes) {
    const since = (await store.drillRuns.get(change.id))!.changedAt;
    whole.push({ since, changedAt: next(since), ...change });
  }
  await store.drillRuns.write(whole);
}

const next = (since: string) => new Date(Date.parse(since) + 1).toISOString();

async function added(store: RecordStore, run: NewDrillRun) {
  const made = await store.drillRuns.add(run);
  if (!made) throw new Error('The code is taken.');
  return made;
}

export function describeDrills(fresh: Fresh): void {
  describe('drills', () => {
    it(
      'come back as they were written, log and all, after closing and opening too',
      withStore(fresh, async (store, target) => {
        const { id } = await added(store, drill('KTMRB', { crew: 'B shift', evolution: 'boost' }));
        const rows = [row(0), row(1, { sender: 'nozzle crew/tablet', clientSeq: 1 }), row(2)];
        await wrote(store, [{ id, tick: 9, log: rows.slice(0, 2) }]);
        const keyframe = { tick: 12, state: { seq: 3, valves: [{ opening: 0.1 }] } };
        const seats = { instructor: 'x', roles: { 'nozzle crew': { keyHash: 'h' } } };
        await wrote(store, [{ id, tick: 12, log: rows.slice(2), keyframe, seats }]);
        const again = 'memory' in target ? store : await openStore(target);
        expect(await again.drillRuns.runningAs('KTMRB')).toMatchObject({
          id,
          crew: 'B shift',
          evolution: 'boost',
          seed: 4_294_967_295,
          tick: 12,
          scene,
          seats,
          keyframe,
        });
        expect(await again.drillRuns.log(id)).toEqual(rows);
        if (again !== store) await again.close();
      }),
    );

    it(
      'have their code to themselves while they run, and a result when they have ended',
      withStore(fresh, async (store) => {
        const { id } = await added(store, drill('KTMRB'));
        expect(await store.drillRuns.add(drill('KTMRB'))).toBeUndefined();
        const other = await added(store, drill('BCDFG', { crew: 'A shift' }));
        expect((await store.drillRuns.running()).map((one) => one.id)).toEqual([id, other.id]);
        const ended = { at: new Date().toISOString(), result: [{ key: 'order', met: true }] };
        await wrote(store, [{ id, tick: 40, log: [], ended }]);
        expect((await store.drillRuns.running()).map((one) => one.id)).toEqual([other.id]);
        expect(await store.drillRuns.runningAs('KTMRB')).toBeUndefined();
        const later = await added(store, drill('KTMRB'));
        expect(later.id).not.toBe(id);
        expect(await store.drillRuns.get(id)).toMatchObject({
          endedAt: ended.at,
          result: ended.result,
          tick: 40,
        });
        expect(await store.drillRuns.get('nothing')).toBeUndefined();

        const ids = async (query: object) =>
          (await store.drillRuns.list(query)).map((one) => one.id);
        expect(await ids({})).toEqual([later.id, other.id, id]);
        expect(await ids({ limit: 1 })).toEqual([later.id]);
        expect(await ids({ before: other.id })).toEqual([id]);
        expect(await ids({ crew: 'A shift' })).toEqual([other.id]);
        // By a part, in any case; what a search takes for a sign stands for itself.
        expect(await ids({ crew: 'a SH' })).toEqual([other.id]);
        expect(await ids({ crew: '%' })).toEqual([]);
        expect(await ids({ crew: 'A_shift' })).toEqual([]);
        expect(await ids({ crew: "' or 1=1 --" })).toEqual([]);
      }),
    );

    it(
      'are written together or not at all, and by one writer each',
      withStore(fresh, async (store) => {
        const one = await added(store, drill('KTMRB'));
        const two = await added(store, drill('BCDFG'));
        await wrote(store, [
          { id: one.id, tick: 1, log: [row(0)] },
          { id: two.id, tick: 2, log: Array.from({ length: 1200 }, (_, seq) => row(seq)) },
        ]);
        expect(await store.drillRuns.log(two.id)).toHaveLength(1200);
        // Entry 0 of the second is there already: another has written it.
        const error = await refusal(
          wrote(store, [
            { id: one.id, tick: 5, log: [row(1)] },
            { id: two.id, tick: 5, log: [row(0)] },
          ]),
        );
        expect(error).toBeInstanceOf(DrillTakenError);
        expect(await store.drillRuns.log(one.id)).toEqual([row(0)]);
        expect((await store.drillRuns.get(one.id))?.tick).toBe(1);
        // One that knows it as it was before writes nothing, though it adds nothing either.
        const { changedAt: since } = (await store.drillRuns.get(two.id))!;
        await wrote(store, [{ id: two.id, tick: 7, log: [] }]);
        const late = { id: two.id, since, changedAt: next(since), tick: 3, log: [] };
        expect(await refusal(store.drillRuns.write([late]))).toBeInstanceOf(DrillTakenError);
        expect((await store.drillRuns.get(two.id))?.tick).toBe(7);
        await store.drillRuns.remove(two.id);
        expect(await store.drillRuns.get(two.id)).toBeUndefined();
        expect(await store.drillRuns.log(two.id)).toEqual([]);
        expect(await store.drillRuns.log(one.id)).toHaveLength(1);
      }),
    );
  });
}
