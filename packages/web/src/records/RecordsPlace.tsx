import { kindLabels } from '@plugside/records/model';
import { useEffect, useRef } from 'react';
import { getDistrict } from '../api/district.ts';
import { useLoaded } from '../api/use-loaded.ts';
import { PlaceHeader } from '../places/PlaceHeader.tsx';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { usePathname } from '../places/place.ts';
import { Unreachable } from '../places/Unreachable.tsx';
import { type RecordsAddress, recordsAddress } from './address.ts';
import { arrive } from './arrival.ts';
import { useChanged } from './changed.ts';
import { RecordPage } from './detail/RecordPage.tsx';
import { EditPage } from './form/EditPage.tsx';
import { NewPage } from './form/NewPage.tsx';
import { KindChooser, KindList } from './KindList.tsx';
import { RecordList } from './list/RecordList.tsx';
import { StartPage } from './start/StartPage.tsx';
import './records.css';

/** What the department keeps: every kind of record, to be found, read, written and taken along. */
export function RecordsPlace() {
  const address = recordsAddress(usePathname());
  const changed = useChanged(({ times }) => times);
  const [loaded, retry] = useLoaded(`district:${changed}`, getDistrict);
  const kept = useRef<Awaited<ReturnType<typeof getDistrict>> | null>(null);
  if (loaded.state === 'ready') kept.current = loaded.value;
  const district = kept.current;
  const inside = useFocusOnArrival(keyOf(address));
  const kind = 'kind' in address ? address.kind : null;
  return (
    <div className="page records-page">
      <PlaceHeader title={district?.name ?? 'Records'} invented={district?.invented ?? false} />
      {loaded.state === 'unreachable' ? (
        <main>
          <Unreachable what="This place" onRetry={retry} />
        </main>
      ) : (
        <div className="records">
          <KindList here={kind} counts={district?.counts ?? null} />
          <main className="records-main" ref={inside} tabIndex={-1}>
            <KindChooser here={kind} counts={district?.counts ?? null} />
            {address.at === 'start' && (
              <StartPage
                district={district}
                failed={loaded.state === 'failed' ? loaded.reason : null}
              />
            )}
            {address.at === 'list' && <RecordList key={address.kind} kind={address.kind} />}
            {address.at === 'new' && <NewPage key={address.kind} kind={address.kind} />}
            {address.at === 'record' && <RecordPage key={address.id} {...address} />}
            {address.at === 'edit' && <EditPage key={address.id} {...address} />}
            {address.at === 'nowhere' && <Nowhere asked={address.asked} />}
          </main>
        </div>
      )}
    </div>
  );
}

function keyOf(address: RecordsAddress): string {
  return Object.values(address).join(':');
}

/** A new page is read from its top, by eye and by screen reader; the first one is left alone. */
function useFocusOnArrival(key: string) {
  const inside = useRef<HTMLElement>(null);
  const before = useRef(key);
  const { back } = arrive();
  useEffect(() => {
    if (before.current === key) return;
    before.current = key;
    if (!back) window.scrollTo({ top: 0 });
    inside.current?.focus({ preventScroll: true });
  }, [key, back]);
  return inside;
}

function Nowhere({ asked }: { asked: string }) {
  return (
    <div className="records-empty">
      <p>
        <b>Nothing is kept at {asked}.</b> Records are {kindLabels.hydrants[1]},{' '}
        {kindLabels['flow-tests'][1]}, {kindLabels.rigs[1]} and what else the list names.
      </p>
      <p>
        <PlaceLink href="/records">To the start of the records</PlaceLink>
      </p>
    </div>
  );
}
