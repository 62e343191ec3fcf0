import { isDatedAhead, pumpCurve } from '@plugside/fireground';
import { allRecords } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { todayIso } from '../../district/words.ts';
import { PumpTestGraph, PumpTestNumbers } from '../../field-tests/index.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { newPath, recordPath } from '../address.ts';
import { useChanged } from '../changed.ts';
import type { Values } from '../form/draft.ts';
import { Once } from '../Once.tsx';
import { useLast } from '../use-last.ts';

/** A rig's pump tests: its newest curve against its rating, and each test to open. */
export function RigTests({ rig }: { rig: Values }) {
  const id = rig.id as string;
  const changed = useChanged(({ times }) => times);
  const [loaded, retry] = useLoaded(`pump-tests:${id}:${changed}`, (signal) =>
    allRecords('pump-tests', { where: { rigId: id } }, signal),
  );
  const ratedGpm = rig.ratedGpm as number | undefined;
  return (
    <section className="related-part" aria-label="Pump tests">
      <div className="related-head">
        <h3>Pump tests</h3>
        <PlaceLink className="plain-button link-button" href={newPath('pump-tests', { rigId: id })}>
          Add a pump test
        </PlaceLink>
      </div>
      <Once loaded={useLast(loaded)} retry={retry} what="The pump tests">
        {(tests) => {
          if (tests.length === 0) {
            return (
              <p className="soft-text">
                Not tested yet. Until then plans take its rating
                {ratedGpm === undefined && ', which is not on record either'}.
              </p>
            );
          }
          const today = todayIso();
          const curve = pumpCurve(tests, ratedGpm, { today });
          return (
            <>
              <PumpTestGraph
                curve={curve}
                ratedGpm={ratedGpm}
                earlier={tests.filter(
                  ({ id: one, testedOn }) =>
                    one !== curve.test?.id && !isDatedAhead(testedOn, today),
                )}
              />
              <PumpTestNumbers curve={curve} />
              <p className="test-links">
                <span className="soft-text">Open the test of</span>
                {[...tests]
                  .sort((a, b) => b.testedOn.localeCompare(a.testedOn))
                  .map((test) => (
                    <PlaceLink
                      key={test.id}
                      className="text-link"
                      href={recordPath('pump-tests', test.id)}
                    >
                      {test.testedOn}
                      {isDatedAhead(test.testedOn, today) && ', ahead of today'}
                    </PlaceLink>
                  ))}
              </p>
            </>
          );
        }}
      </Once>
    </section>
  );
}
