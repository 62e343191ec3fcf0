import { flowTestHistory } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import { useId, useMemo, useState } from 'react';
import { Radio, RadioGroup } from 'react-aria-components';
import { reasonOf } from '../../api/reason.ts';
import { allRecords } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { todayIso } from '../../district/words.ts';
import { useUnits } from '../../editing/use-units.ts';
import { FlowTestHistory } from '../../field-tests/index.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { newPath, recordPath } from '../address.ts';
import { useChanged } from '../changed.ts';
import type { Values } from '../form/draft.ts';
import { Once } from '../Once.tsx';
import { useSave } from '../save/use-save.tsx';
import { useLast } from '../use-last.ts';

/** A hydrant's flow tests: the curve that plans use, the trend, and which test that is to be. */
export function HydrantTests({ hydrant }: { hydrant: Values }) {
  const id = hydrant.id as string;
  const changed = useChanged(({ times }) => times);
  const [loaded, retry] = useLoaded(`tests:${id}:${changed}`, (signal) =>
    allRecords('flow-tests', { where: { hydrantId: id } }, signal),
  );
  const chosenId = hydrant.planTestId as string | undefined;
  return (
    <section className="related-part" aria-label="Flow tests">
      <div className="related-head">
        <h3>Flow tests</h3>
        <PlaceLink
          className="plain-button link-button"
          href={newPath('flow-tests', { hydrantId: id })}
        >
          Add a flow test
        </PlaceLink>
      </div>
      <Once loaded={useLast(loaded)} retry={retry} what="The flow tests">
        {(tests) =>
          tests.length === 0 ? (
            <p className="soft-text">
              Not tested yet. A flow test gives this hydrant its curve, its class and its place in
              plans.
            </p>
          ) : (
            <>
              <FlowTestHistory
                tests={tests}
                {...(chosenId !== undefined && { chosenId })}
                today={todayIso()}
              />
              <PlanTest hydrant={hydrant} tests={tests} />
            </>
          )
        }
      </Once>
    </section>
  );
}

const NEWEST = 'newest';

/** Which test plans use: the newest, or one that is chosen. */
function PlanTest({ hydrant, tests }: { hydrant: Values; tests: readonly Stored<'flow-tests'>[] }) {
  const units = useUnits();
  const heading = useId();
  const [failed, setFailed] = useState<string | null>(null);
  const { save, dialog } = useSave('hydrants', hydrant, () => setFailed(null));
  const today = todayIso();
  const history = useMemo(() => flowTestHistory(tests, { today }), [tests, today]);
  const chosen = (hydrant.planTestId as string | undefined) ?? NEWEST;
  const choose = async (id: string) => {
    try {
      await save({ planTestId: id === NEWEST ? null : id });
    } catch (error) {
      setFailed(reasonOf(error));
    }
  };
  return (
    <div className="plan-test">
      <h3 id={heading}>Test that plans use</h3>
      <RadioGroup
        className="plan-test-choices"
        aria-labelledby={heading}
        value={chosen}
        onChange={(id) => void choose(id)}
      >
        <Radio value={NEWEST} className="plan-test-choice">
          <span className="radio-ring" aria-hidden="true" />
          <span>Always the newest that can be used</span>
        </Radio>
        {[...history.tests].reverse().map(({ test, result }) => (
          <div key={test.id} className="plan-test-row">
            <Radio value={test.id} className="plan-test-choice">
              <span className="radio-ring" aria-hidden="true" />
              <span>
                {test.testedOn}
                {result.q20Gpm !== null && (
                  <span className="soft-text">
                    {' '}
                    {units.text(result.q20Gpm, 'flow')} at {units.text(20, 'pressure')}
                  </span>
                )}
                {result.curve === null && <span className="caution-word"> cannot be used</span>}
                {result.retestOn !== null && (
                  <span className={result.retestOn <= today ? 'caution-word' : 'soft-text'}>
                    {' '}
                    {result.retestOn <= today ? 'was due again' : 'due again'} {result.retestOn}
                  </span>
                )}
              </span>
            </Radio>
            <PlaceLink className="text-link" href={recordPath('flow-tests', test.id)}>
              Open<span className="hidden-text"> the test of {test.testedOn}</span>
            </PlaceLink>
          </div>
        ))}
      </RadioGroup>
      <p role="alert" className="form-missing">
        {failed && `Not saved. ${failed}`}
      </p>
      {dialog}
    </div>
  );
}
