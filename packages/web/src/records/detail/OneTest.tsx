import { flowTestHistory, pumpCurve } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import { useMemo } from 'react';
import { allRecords, getRecord } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { todayIso } from '../../district/words.ts';
import {
  aheadFindings,
  Findings,
  FlowTestGraph,
  FlowTestNumbers,
  PumpTestGraph,
  PumpTestNumbers,
} from '../../field-tests/index.ts';
import type { Values } from '../form/draft.ts';
import { Once } from '../Once.tsx';

/** A flow test's own curve, the hydrant's others behind it. */
export function FlowTestOf({ test }: { test: Values }) {
  const hydrantId = test.hydrantId as string;
  const [loaded, retry] = useLoaded(`tests:${hydrantId}:${test.version}`, (signal) =>
    allRecords('flow-tests', { where: { hydrantId } }, signal),
  );
  return (
    <section className="related-part" aria-label="What the test says">
      <Once loaded={loaded} retry={retry} what="The hydrant’s tests">
        {(tests) => <FlowCurve tests={tests} id={test.id as string} />}
      </Once>
    </section>
  );
}

function FlowCurve({ tests, id }: { tests: readonly Stored<'flow-tests'>[]; id: string }) {
  const today = todayIso();
  const history = useMemo(() => flowTestHistory(tests, { today }), [tests, today]);
  const main = history.tests.find(({ test }) => test.id === id) ?? null;
  return (
    <>
      <FlowTestGraph tests={history.tests} main={main} />
      {main && <FlowTestNumbers result={main.result} />}
    </>
  );
}

/** A pump test's own curve against the rig's rating, the rig's others behind it. */
export function PumpTestOf({ test }: { test: Values }) {
  const rigId = test.rigId as string;
  const [loaded, retry] = useLoaded(`rig:${rigId}:${test.version}`, async (signal) => {
    const [rig, tests] = await Promise.all([
      getRecord('rigs', rigId, signal),
      allRecords('pump-tests', { where: { rigId } }, signal),
    ]);
    return { rig, tests };
  });
  return (
    <section className="related-part" aria-label="What the test says">
      <Once loaded={loaded} retry={retry} what="The rig’s tests">
        {({ rig, tests }) => {
          const testedOn = test.testedOn as string;
          // One that cannot have been made yet is read by itself: plans take none of it.
          const ahead = aheadFindings(testedOn, todayIso());
          const curve = pumpCurve(
            ahead.length > 0 ? tests.filter(({ id }) => id === test.id) : tests,
            rig.ratedGpm,
            { chosenId: test.id as string, ...(ahead.length > 0 && { today: testedOn }) },
          );
          return (
            <>
              <Findings findings={ahead} />
              <PumpTestGraph
                curve={curve}
                ratedGpm={rig.ratedGpm}
                earlier={tests.filter(({ id }) => id !== test.id)}
              />
              <PumpTestNumbers curve={curve} />
            </>
          );
        }}
      </Once>
    </section>
  );
}
