import { formatNumber, RETEST_YEARS } from '@plugside/fireground';
import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { mapLayer } from '../../api/district.ts';
import { allRecords } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { agoWords, todayIso } from '../../district/words.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { kindPath, newPath, recordPath } from '../address.ts';
import { useChanged } from '../changed.ts';
import { Once } from '../Once.tsx';
import { useLast } from '../use-last.ts';
import { type DueTest, hoseDue, hydrantsDue, rigsDue } from './due.ts';

/** Hydrants, pumps and hose whose test is due, the longest overdue first. */
export function TestsDue() {
  const changed = useChanged(({ times }) => times);
  const [loaded, retry] = useLoaded(`due:${changed}`, async (signal) => {
    const [hydrants, rigs, pumpTests, hose] = await Promise.all([
      mapLayer('hydrants', signal),
      allRecords('rigs', {}, signal),
      allRecords('pump-tests', {}, signal),
      allRecords('hose', {}, signal),
    ]);
    return { hydrants: hydrants.map(({ properties }) => properties), rigs, pumpTests, hose };
  });
  return (
    <section aria-labelledby="due-title">
      <h3 id="due-title">Tests due</h3>
      <Once loaded={useLast(loaded)} retry={retry} what="The tests">
        {({ hydrants, rigs, pumpTests, hose }) => (
          <div className="due-columns">
            <Due
              title="Hydrants"
              rule={`A flow test counts for ${RETEST_YEARS} years.`}
              done={
                hydrants.length > 0
                  ? 'Every hydrant has a test that still counts.'
                  : 'No hydrants on record yet.'
              }
              due={hydrantsDue(hydrants, todayIso())}
              add={({ id }) => newPath('flow-tests', { hydrantId: id })}
              open={({ id }) => recordPath('hydrants', id)}
            />
            <Due
              title="Pumps"
              rule="A pump is tested every year: common practice."
              done={
                rigs.some(({ ratedGpm }) => ratedGpm !== undefined)
                  ? 'Every pump has been tested within a year.'
                  : 'No rigs with a pump on record yet.'
              }
              due={rigsDue(rigs, pumpTests, todayIso())}
              add={({ id }) => newPath('pump-tests', { rigId: id })}
              open={({ id }) => recordPath('rigs', id)}
            />
            <Due
              title="Hose"
              rule="Each length has a service test every year: common practice."
              done={
                hose.length > 0
                  ? 'Every length in service passed its test within a year.'
                  : 'No lengths of hose on record yet.'
              }
              due={hoseDue(hose, rigs, todayIso()).map((one) => ({
                ...one,
                name: `${one.name}: ${formatNumber(one.count, 0)} ${one.count === 1 ? 'length' : 'lengths'}`,
              }))}
              open={({ id }) => (id === '' ? kindPath('hose') : recordPath('rigs', id))}
            />
          </div>
        )}
      </Once>
    </section>
  );
}

const SHOWN = 6;
const MORE = 30;

interface DueProps {
  title: string;
  rule: string;
  done: string;
  due: readonly DueTest[];
  /** Where a test is added; left out: each length has its own. */
  add?(one: DueTest): string;
  open(one: DueTest): string;
}

function Due({ title, rule, done, due, add, open }: DueProps) {
  const [shown, setShown] = useState(SHOWN);
  const today = todayIso();
  const untested = useMemo(() => due.filter(({ testedOn }) => testedOn === null).length, [due]);
  return (
    <div className="due">
      <h4>
        {title}
        {due.length > 0 && `: ${formatNumber(due.length, 0)}`}
        {untested > 0 && untested < due.length && (
          <span className="soft-text">, {formatNumber(untested, 0)} of them never tested</span>
        )}
      </h4>
      <p className="soft-text">{due.length === 0 ? done : rule}</p>
      <ul className="due-list">
        {due.slice(0, shown).map((one) => (
          <li key={one.id}>
            <PlaceLink className="due-name" href={open(one)}>
              {one.name}
            </PlaceLink>
            <span className="due-when">
              {one.testedOn === null ? (
                <span className="caution-word">never tested</span>
              ) : (
                `tested ${one.testedOn}, ${one.isVoid ? 'cannot be used' : agoWords(one.testedOn, today)}`
              )}
            </span>
            {add && (
              <PlaceLink className="text-link" href={add(one)}>
                Add a test<span className="hidden-text"> of {one.name}</span>
              </PlaceLink>
            )}
          </li>
        ))}
      </ul>
      {due.length > shown && (
        <Button className="plain-button" onPress={() => setShown(shown + MORE)}>
          Show more ({formatNumber(due.length - shown, 0)} left)
        </Button>
      )}
    </div>
  );
}
