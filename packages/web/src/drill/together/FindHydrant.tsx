import { useDeferredValue, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { type HydrantProperties, type MapLayers, mapLayer } from '../../api/district.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { findPlaces } from '../../district/list/find-places.ts';
import { HydrantMark } from '../../district/list/HydrantMark.tsx';
import { classWords } from '../../district/words.ts';
import { useUnits } from '../../editing/use-units.ts';
// Rows are drawn as on the district's list.
import '../../district/district.css';

const AT_ONCE = 8;

/** Finds a hydrant by its words, those that can be drilled on first. */
export function FindHydrant({ onPick }: { onPick(id: string): void }) {
  const [loaded, retry] = useLoaded('drill-hydrants', (signal) => mapLayer('hydrants', signal));
  if (loaded.state === 'loading') return <p role="status">Reading the hydrants…</p>;
  if (loaded.state !== 'ready') {
    return (
      <p className="tone-warning" role="alert">
        The hydrants could not be read.{' '}
        <Button className="plain-button" onPress={retry}>
          Try again
        </Button>
      </p>
    );
  }
  return <Found features={loaded.value} onPick={onPick} />;
}

type Found = HydrantProperties & { longitude: number; latitude: number };

function Found(props: { features: readonly MapLayers['hydrants'][]; onPick(id: string): void }) {
  const { features, onPick } = props;
  const units = useUnits();
  const [asked, setAsked] = useState('');
  const [most, setMost] = useState(AT_ONCE);
  const wanted = useDeferredValue(asked);
  const rows = useMemo(() => found(features, wanted), [features, wanted]);
  return (
    <div className="find-hydrant">
      <input
        type="search"
        className="find-input"
        aria-label="Find a hydrant by its name, class or state"
        placeholder="Name, class or state"
        value={asked}
        onChange={(event) => {
          setAsked(event.target.value);
          setMost(AT_ONCE);
        }}
      />
      <p className="list-count" role="status">
        {rows.length > 0 &&
          `${rows.length.toLocaleString('en-US')} ${rows.length === 1 ? 'hydrant' : 'hydrants'}${rows.length > 1 ? ', those to drill on first' : ''}`}
        {rows.length === 0 &&
          (features.length > 0
            ? 'Nothing by these words.'
            : 'No hydrants on record yet: enter them, or bring in a list, under Records.')}
      </p>
      <ul className="rows">
        {rows.slice(0, most).map((hydrant) => (
          <li key={hydrant.id}>
            <Button className="row" onPress={() => onPick(hydrant.id)}>
              <HydrantMark of={hydrant} />
              <span className="row-text">
                <span className="row-name">{hydrant.name}</span>
                <span className="row-told">{toldOf(hydrant)}</span>
              </span>
              {hydrant.q20Gpm !== null && (
                <span className="row-figure figures">{units.text(hydrant.q20Gpm, 'flow')}</span>
              )}
            </Button>
          </li>
        ))}
      </ul>
      {rows.length > most && (
        <Button className="plain-button" onPress={() => setMost(most * 3)}>
          More hydrants
        </Button>
      )}
    </div>
  );
}

const canBeDrilled = ({ q20Gpm, steamerIn, status }: HydrantProperties) =>
  q20Gpm !== null && steamerIn !== null && status === 'in service';

function found(features: readonly MapLayers['hydrants'][], asked: string): Found[] {
  const placed = features.map(({ geometry, properties }): Found => {
    const [longitude, latitude] = geometry.coordinates;
    return { ...properties, longitude, latitude };
  });
  const words = (one: Found) => `${one.name} ${one.status} class ${one.class ?? ''} ${toldOf(one)}`;
  const places = findPlaces(placed, asked, words, null).map(({ place }) => place);
  return [...places.filter(canBeDrilled), ...places.filter((one) => !canBeDrilled(one))];
}

function toldOf({ status, statusReason, class: rated, steamerIn }: HydrantProperties): string {
  return [
    ...(status === 'out of service'
      ? [`out of service${statusReason ? `: ${statusReason}` : ''}`]
      : []),
    classWords(rated),
    ...(steamerIn === null ? ['no large outlet'] : []),
  ].join(' · ');
}
