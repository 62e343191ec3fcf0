import { flowTestResult, isDatedAhead } from '@plugside/fireground';
import type { Stored } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import { inTurns } from './in-turns.ts';

type FlowTest = Stored<'flow-tests'>;

/**
 * The flow test that plans take for each hydrant, by the hydrant's id: the one that its record
 * names where it can be used, else the newest that can (of one day's the one that drew the main
 * down most). Where none can be used the newest stands, so that what is wrong with it is told.
 */
export async function planTests(
  store: RecordStore,
  hydrants: readonly Stored<'hydrants'>[],
): Promise<Map<string, FlowTest>> {
  const named = new Map(hydrants.map(({ id, planTestId }) => [id, planTestId]));
  const chosen = new Map<string, Ranked>();
  for await (const test of inTurns(store.all('flow-tests'))) {
    const ranked = rank(test, named.get(test.hydrantId));
    const before = chosen.get(test.hydrantId);
    if (!before || comesBefore(ranked, before)) chosen.set(test.hydrantId, ranked);
  }
  return new Map([...chosen].map(([hydrantId, { test }]) => [hydrantId, test]));
}

/** The same choice for one hydrant. */
export async function planTest(
  store: RecordStore,
  { id, planTestId }: Stored<'hydrants'>,
): Promise<FlowTest | undefined> {
  let first: Ranked | undefined;
  for await (const test of store.all('flow-tests', { hydrantId: id })) {
    const ranked = rank(test, planTestId);
    if (!first || comesBefore(ranked, first)) first = ranked;
  }
  return first?.test;
}

/** Flow tests dated ahead of today, which plans leave aside, by their hydrant's id. */
export async function flowTestsAhead(
  store: RecordStore,
  hydrantId?: string,
): Promise<Map<string, FlowTest[]>> {
  const found = new Map<string, FlowTest[]>();
  const tests = store.all('flow-tests', hydrantId === undefined ? {} : { hydrantId });
  for await (const test of inTurns(tests)) {
    if (!isDatedAhead(test.testedOn)) continue;
    const before = found.get(test.hydrantId);
    if (before) before.push(test);
    else found.set(test.hydrantId, [test]);
  }
  return found;
}

interface Ranked {
  test: FlowTest;
  isUsable: boolean;
  isNamed: boolean;
}

const rank = (test: FlowTest, planTestId: string | undefined): Ranked => {
  const isUsable = flowTestResult(test).curve !== null;
  return { test, isUsable, isNamed: isUsable && test.id === planTestId };
};

function comesBefore(a: Ranked, b: Ranked): boolean {
  if (a.isNamed !== b.isNamed) return a.isNamed;
  if (a.isUsable !== b.isUsable) return a.isUsable;
  if (a.test.testedOn !== b.test.testedOn) return a.test.testedOn > b.test.testedOn;
  if (a.test.residualPsi !== b.test.residualPsi) return a.test.residualPsi < b.test.residualPsi;
  return a.test.id > b.test.id;
}
