import type { Place } from '@plugside/records/streets';
import { lazy, Suspense, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { useLoaded } from '../../api/use-loaded.ts';
import { type District, fetchDistrict } from '../../district/district.ts';
import { placeText } from '../../import/understood-words.ts';
import { useView } from '../../plan-store/view.ts';
import { Once } from '../Once.tsx';

/** The map comes with the first place that is picked. */
const MapView = lazy(async () => ({
  default: (await import('../../district/map/MapView.tsx')).MapView,
}));

interface PlacePickProps {
  /** Where the map begins; the whole district where left out. */
  near: Place | undefined;
  onTake(place: Place): void;
}

/** A record's place picked on the district's map: the map is moved under a cross. */
export function PlacePick(props: PlacePickProps) {
  const [open, setOpen] = useState(false);
  const [loaded, retry] = useLoaded(open ? 'pick-district' : 'pick-nothing', async (signal) =>
    open ? fetchDistrict(signal) : null,
  );
  return (
    <div className="place-pick">
      <Button className="plain-button" aria-expanded={open} onPress={() => setOpen(!open)}>
        {open ? 'Close the map' : 'Pick the place on the map'}
      </Button>
      {open && (
        <Once loaded={loaded} retry={retry} what="The map">
          {(district) => district && <Picking district={district} {...props} />}
        </Once>
      )}
    </div>
  );
}

const nothing = () => {};

function Picking({ district, near, onTake }: PlacePickProps & { district: District }) {
  const units = useView((view) => view.units);
  const [at, setAt] = useState<Place | null>(null);
  const [taken, setTaken] = useState<Place | null>(null);
  const [start] = useState(() => (near ? [near] : null));
  const shown = useMemo(
    () => ({
      building: null,
      hydrant: null,
      near: [],
      route: null,
      routeText: '',
      units,
      via: [],
    }),
    [units],
  );
  return (
    <>
      <p className="soft-text">
        Move the map, by finger, mouse or the arrow keys, until the cross is on the place.
      </p>
      <div className="map-place place-pick-map">
        <Suspense fallback={<p className="soft-text">Reading…</p>}>
          <MapView
            district={district}
            shown={shown}
            lookAt={start}
            tells={{
              onPick: nothing,
              onViaAdded: nothing,
              onViaMoved: nothing,
              onViaRemoved: nothing,
              onStepEnd: nothing,
              onLook: setAt,
            }}
          />
        </Suspense>
        <span className="place-pick-cross" aria-hidden="true" />
      </div>
      <p className="place-pick-told">
        <Button
          className="plain-button"
          isDisabled={at === null}
          onPress={() => {
            if (!at) return;
            setTaken(at);
            onTake({ longitude: rounded(at.longitude), latitude: rounded(at.latitude) });
          }}
        >
          Take this place
        </Button>{' '}
        {at && <span className="soft-text figures">{placeText(at.longitude, at.latitude)}</span>}{' '}
        <span role="status">{at && taken === at && 'Taken into the fields above.'}</span>
      </p>
    </>
  );
}

/** Six digits are a tenth of a metre: no map is picked more finely. */
const rounded = (degrees: number): number => Math.round(degrees * 1e6) / 1e6;
