import { useDeferredValue, useState } from 'react';
import { listRecords } from '../api/records.ts';
import { useLoaded } from '../api/use-loaded.ts';
import { useUnits } from '../editing/use-units.ts';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { Unreachable } from '../places/Unreachable.tsx';
import { supplyAddress } from './address.ts';

const SHOWN = 30;

/** Picks the building whose supply is to be chosen. */
export function FindBuilding() {
  const units = useUnits();
  const [asked, setAsked] = useState('');
  const wanted = useDeferredValue(asked.trim());
  const [loaded, retry] = useLoaded(`find:${wanted}`, (signal) =>
    listRecords('buildings', { search: wanted || undefined, limit: SHOWN }, signal),
  );
  return (
    <section className="find-building" aria-labelledby="find-building">
      <h2 className="panel-title" id="find-building">
        Which building?
      </h2>
      <p className="soft-text">
        Plugside lays out the ways to bring water to it with what is coming, works out each, and
        says which to choose and why.
      </p>
      <input
        type="search"
        className="find-input"
        aria-label="Find a building by name or address"
        placeholder="Name or address"
        value={asked}
        onChange={(event) => setAsked(event.target.value)}
      />
      {loaded.state === 'unreachable' && <Unreachable what="Choosing a supply" onRetry={retry} />}
      {loaded.state === 'failed' && <p role="alert">{loaded.reason}</p>}
      <p className="list-count" role="status">
        {loaded.state === 'ready' && countWords(loaded.value.total, wanted)}
      </p>
      {loaded.state === 'ready' && (
        <ul className="rows">
          {loaded.value.records.map(({ id, name, address, occupancy, neededGpm }) => (
            <li key={id}>
              <PlaceLink className="row" href={supplyAddress(id)}>
                <span className="row-text">
                  <span className="row-name">{name}</span>
                  <span className="row-told">
                    {[address, occupancy].filter(Boolean).join(' · ')}
                  </span>
                </span>
                <span className="row-figure figures">
                  {neededGpm === undefined ? '' : `needs ${units.text(neededGpm, 'flow')}`}
                </span>
              </PlaceLink>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function countWords(total: number, wanted: string): string {
  if (total === 0) {
    return wanted === ''
      ? 'No buildings on record yet: enter one, or bring in a list, under Records.'
      : 'Nothing by these words.';
  }
  const found = `${total.toLocaleString('en-US')} ${total === 1 ? 'building' : 'buildings'}`;
  return total > SHOWN ? `${found}; the first ${SHOWN} are shown` : found;
}
