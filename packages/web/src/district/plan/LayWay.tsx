import type { Place, Route } from '@plugside/records/streets';
import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../../editing/Choice.tsx';
import type { District } from '../district.ts';
import { useLayDraft, withoutVia, withVia } from './lay-store.ts';
import { bestIndex, nearestOn, streetNameAt } from './via-places.ts';

interface LayWayProps {
  district: District;
  route: Route;
  hydrant: Place;
  building: Place;
}

const PICK_A_STREET = '';

/** Where the hose goes: dragged on the map, or named here street by street. */
export function LayWay({ district, route, hydrant, building }: LayWayProps) {
  const { via } = useLayDraft((state) => state.history.present);
  const change = useLayDraft((state) => state.change);
  const names = useMemo(
    () =>
      [...new Set(district.streets.map(({ properties }) => properties.name))]
        .filter(Boolean)
        .sort(),
    [district],
  );
  const goBy = (name: string) => {
    const place = nearestOn(district.streets, name, route.path);
    if (!place) return;
    const index = bestIndex([hydrant, ...via, building], place);
    change(`Go by ${name}`, { via: withVia(via, index, place) });
  };
  return (
    <>
      <h3 className="section-name">Way</h3>
      <p className="lay-way-how">
        {via.length === 0
          ? 'The shortest along the streets. Drag it on the map to lay another way, or:'
          : 'From the hydrant by these points to the building:'}
      </p>
      {via.length > 0 && (
        <ol className="lay-via">
          {via.map((place, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is known by its order alone
            <li key={index}>
              <span>
                {index + 1}. {streetNameAt(district.streets, place)}
              </span>
              <Button
                className="quiet-button"
                aria-label={`Take away point ${index + 1}`}
                onPress={() => change('Take a point away', { via: withoutVia(via, index) })}
              >
                Take away
              </Button>
            </li>
          ))}
        </ol>
      )}
      <Choice
        label="Go by a street"
        value={PICK_A_STREET}
        options={[
          { value: PICK_A_STREET, text: 'Go by a street…' },
          ...names.map((name) => ({ value: name, text: name })),
        ]}
        onChange={goBy}
      />
    </>
  );
}
