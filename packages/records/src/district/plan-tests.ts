import type { Stored } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import { inTurns } from './in-turns.ts';

type FlowTest = Stored<'flow-tests'>;

/**
 * The flow test that plans take for each hydrant, by the hydrant's id: the one that its record
 * names, else the newest.
 */
export async function planTests(
  store: RecordStore,
  hydrants: readonly Stored<'hydrants'>[],
): Promise<Map<string, FlowTest>> {
  const named = new Map(hydrants.map(({ id, planTestId }) => [id, planTestId]));
  const chosen = new Map<string, FlowTest>();
  for await (const test of inTurns(store.all('flow-tests'))) {
    const { hydrantId } = test;
    const before = chosen.get(hydrantId);
    if (before && before.id === named.get(hydrantId)) continue;
    if (!before || test.id === named.get(hydrantId) || isNewer(test, before)) {
      chosen.set(hydrantId, test);
    }
  }
  return chosen;
}

/** The same choice for one hydrant. */
export async function planTest(
  store: RecordStore,
  { id, planTestId }: Stored<'hydrants'>,
): Promise<FlowTest | undefined> {
  const named = planTestId && (await store.get('flow-tests', planTestId));
  if (named) return named;
  let newest: FlowTest | undefined;
  for await (const test of store.all('flow-tests', { hydrantId: id })) {
    if (!newest || isNewer(test, newest)) newest = test;
  }
  return newest;
}

/** Of two on one day the one written later. */
function isNewer(test: FlowTest, than: FlowTest): boolean {
  return test.testedOn > than.testedOn || (test.testedOn === than.testedOn && test.id > than.id);
}
