import type { Place } from '@plugside/records/streets';
import { useDeferredValue, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { Switcher } from '../../editing/Switcher.tsx';
import { useUnits } from '../../editing/use-units.ts';
import type { District } from '../district.ts';
import { pick } from '../selection.ts';
import { classWords } from '../words.ts';
import { findPlaces } from './find-places.ts';
import { HydrantMark } from './HydrantMark.tsx';

type Shown = 'buildings' | 'hydrants' | 'other';

const AT_ONCE = 40;

/** Every place of the district by name, the nearest to where the map looks first. */
export function PlaceList({ district, from }: { district: District; from: Place | null }) {
  const [shown, setShown] = useState<Shown>('buildings');
  const [asked, setAsked] = useState('');
  const [most, setMost] = useState(AT_ONCE);
  const wanted = useDeferredValue(asked);
  const near = useDeferredValue(from);
  const rows = useRows(district, shown, wanted, near);
  return (
    <section className="panel-part" aria-label="Places of the district">
      <p className="panel-lead">Pick a building, here or on the map, to see what water it has.</p>
      <div className="find">
        <input
          type="search"
          className="find-input"
          aria-label="Find by name or address"
          placeholder="Name or address"
          value={asked}
          onChange={(event) => {
            setAsked(event.target.value);
            setMost(AT_ONCE);
          }}
        />
        <Switcher
          label="Which places"
          value={shown}
          options={[
            { value: 'buildings', text: 'Buildings' },
            { value: 'hydrants', text: 'Hydrants' },
            { value: 'other', text: 'Stations, water' },
          ]}
          onChange={(next) => {
            setShown(next);
            setMost(AT_ONCE);
          }}
        />
      </div>
      <p className="list-count" role="status">
        {rows.length === 0
          ? wanted.trim() === ''
            ? 'None on record yet: enter them, or bring in a list, under Records.'
            : 'Nothing by these words.'
          : `${rows.length.toLocaleString('en-US')} found, nearest to the middle of the map first`}
      </p>
      <ul className="rows">
        {rows.slice(0, most).map((row) => (
          <li key={row.id}>
            <Button className="row" onPress={() => pick(row.kind, row.id)}>
              {row.mark}
              <span className="row-text">
                <span className="row-name">{row.name}</span>
                {row.told !== '' && <span className="row-told">{row.told}</span>}
              </span>
              {row.figure && <span className="row-figure figures">{row.figure}</span>}
            </Button>
          </li>
        ))}
      </ul>
      {rows.length > most && (
        <Button className="plain-button" onPress={() => setMost(most + AT_ONCE)}>
          Show {Math.min(AT_ONCE, rows.length - most)} more
        </Button>
      )}
    </section>
  );
}

function useRows(district: District, shown: Shown, asked: string, from: Place | null) {
  const units = useUnits();
  return useMemo(() => {
    if (shown === 'buildings') {
      const words = ({ name, address, occupancy }: District['buildings'][number]) =>
        `${name} ${address ?? ''} ${occupancy ?? ''}`;
      return findPlaces(district.buildings, asked, words, from).map(({ place }) => ({
        kind: 'building' as const,
        id: place.id,
        name: place.name,
        told: [place.address, place.occupancy].filter(Boolean).join(' · '),
        figure: place.neededGpm === null ? null : `needs ${units.text(place.neededGpm, 'flow')}`,
        mark: null,
      }));
    }
    if (shown === 'hydrants') {
      const words = ({ name, status, class: rated }: District['hydrants'][number]) =>
        `${name} ${status} class ${rated ?? 'not tested'}`;
      return findPlaces(district.hydrants, asked, words, from).map(({ place }) => ({
        kind: 'hydrant' as const,
        id: place.id,
        name: place.name,
        told:
          place.status === 'out of service'
            ? `out of service${place.statusReason ? `: ${place.statusReason}` : ''}`
            : classWords(place.class),
        figure: place.q20Gpm === null ? null : units.text(place.q20Gpm, 'flow'),
        mark: <HydrantMark of={place} />,
      }));
    }
    const other = [
      ...district.stations.map((one) => ({ ...one, kind: 'station' as const, told: 'station' })),
      ...district.waterSources.map((one) => ({ ...one, kind: 'water' as const, told: one.kind })),
    ];
    return findPlaces(other, asked, ({ name, told }) => `${name} ${told}`, from).map(
      ({ place }) => ({
        kind: place.kind,
        id: place.id,
        name: place.name,
        told: place.told,
        figure: null,
        mark: null,
      }),
    );
  }, [district, shown, asked, from, units]);
}
