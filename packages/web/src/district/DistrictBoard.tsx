import { frontageOf, type Place } from '@plugside/records/streets';
import { useEffect, useMemo, useRef, useState } from 'react';
import { Switcher } from '../editing/Switcher.tsx';
import { useUnits } from '../editing/use-units.ts';
import type { District } from './district.ts';
import type { MapShown, MapTells } from './map/district-map.ts';
import { MapView } from './map/MapView.tsx';
import { Panel } from './Panel.tsx';
import { movedVia, useLayDraft, withoutVia, withVia } from './plan/lay-store.ts';
import { useRoute } from './plan/use-route.ts';
import { pick, useSelection } from './selection.ts';
import type { NearHydrant } from './streets/messages.ts';
import { type StreetService, startStreets } from './streets/street-service.ts';

const NONE: readonly NearHydrant[] = [];
const FIRST_COUNT = 8;

/** A narrow screen is shared by map and panel, or given to one of them. */
type Share = 'map' | 'both' | 'list';
const SHARES: readonly { value: Share; text: string }[] = [
  { value: 'map', text: 'Map' },
  { value: 'both', text: 'Both' },
  { value: 'list', text: 'List' },
];

/** List and map side by side, over the same picks. */
export function DistrictBoard({ district }: { district: District }) {
  const [streets, setStreets] = useState<StreetService | null>(null);
  useEffect(() => {
    const started = startStreets(district);
    setStreets(started);
    return () => started.end();
  }, [district]);
  return streets && <Board district={district} streets={streets} />;
}

function Board({ district, streets }: { district: District; streets: StreetService }) {
  const selection = useSelection();
  const units = useUnits();
  const [from, setFrom] = useState<Place | null>(null);
  const [count, setCount] = useState(FIRST_COUNT);
  const [share, setShare] = useState<Share>('both');
  const hydrants = useMemo(
    () => new Map(district.hydrants.map((one) => [one.id, one])),
    [district],
  );
  const building = useMemo(
    () => district.buildings.find(({ id }) => id === selection.building) ?? null,
    [district, selection.building],
  );
  const hydrant = (selection.hydrant && hydrants.get(selection.hydrant)) || null;
  const draft = useLayDraft((state) => state.history.present);
  const begin = useLayDraft((state) => state.begin);
  const between = building && hydrant ? `${building.id}:${hydrant.id}` : '';
  useEffect(() => begin(between), [begin, between]);
  const begun = useLayDraft((state) => state.between) === between;

  const [near, setNear] = useState<readonly NearHydrant[] | null>(null);
  useEffect(() => {
    setNear(null);
    if (!building) return;
    let gone = false;
    const { longitude, latitude } = building;
    const place = { longitude, latitude };
    streets.ask({ ask: 'nearby', place, count, frontage: frontageOf(building) }).then(
      (found) => {
        if (!gone) setNear(found);
      },
      () => {
        if (!gone) setNear([]);
      },
    );
    return () => {
      gone = true;
    };
  }, [building, streets, count]);

  const points = useMemo(
    () =>
      building && hydrant && begun
        ? [
            ...[hydrant, ...draft.via].map(placeOf),
            { ...placeOf(building), frontage: frontageOf(building) },
          ]
        : null,
    [building, hydrant, draft.via, begun],
  );
  const { found, problem } = useRoute(streets, points);
  const nearIds = useMemo(() => (near ?? NONE).map(({ id }) => id), [near]);
  const shown: MapShown = useMemo(
    () => ({
      building: selection.building,
      hydrant: selection.hydrant,
      near: nearIds,
      route: points && found ? found.route : null,
      routeText: points && found ? `${units.text(found.route.lengthFt, 'length')} of street` : '',
      units: units.system,
      via: draft.via,
    }),
    [selection, nearIds, points, found, draft.via, units],
  );
  const tells: Omit<MapTells, 'onBaseMap' | 'onDrawn'> = {
    onPick: (kind, id) => {
      if (share === 'map') setShare('both');
      pick(kind, id);
    },
    onViaAdded: (index, place) => changeVia((via) => withVia(via, index, place)),
    onViaMoved: (index, place) => changeVia((via) => movedVia(via, index, place)),
    onViaRemoved: (index) => {
      const { history, change } = useLayDraft.getState();
      change('Take a point away', { via: withoutVia(history.present.via, index) });
    },
    onStepEnd: () => useLayDraft.getState().endStep(),
    onLook: setFrom,
  };
  const lookAt = useLookAt(district, selection, near);
  return (
    <div className="district-board" data-shown={share}>
      <Switcher<Share>
        label="On this screen"
        className="switcher share-switch"
        value={share}
        options={SHARES}
        onChange={setShare}
      />
      <div className="panel">
        <Panel
          district={district}
          hydrants={hydrants}
          from={from}
          near={near}
          found={points ? found : null}
          problem={problem}
          onMore={near && near.length >= count ? () => setCount(count * 2) : null}
        />
      </div>
      <section className="map-place" aria-label="Map">
        <MapView district={district} shown={shown} tells={tells} lookAt={lookAt} />
      </section>
    </div>
  );
}

function changeVia(edit: (via: readonly Place[]) => readonly Place[]): void {
  const { history, change } = useLayDraft.getState();
  change('Way of the lay', { via: edit(history.present.via) }, 'way');
}

const placeOf = ({ longitude, latitude }: Place): Place => ({ longitude, latitude });

/** What a new pick should bring into view: the building with its first hydrants, or the place alone. */
function useLookAt(
  district: District,
  { building, hydrant, station, water }: ReturnType<typeof useSelection>,
  near: readonly NearHydrant[] | null,
): readonly Place[] | null {
  const looked = useRef('');
  const [places, setPlaces] = useState<readonly Place[] | null>(null);
  useEffect(() => {
    const key = building ? `building:${building}` : (hydrant ?? station ?? water ?? '');
    if (key === looked.current) return;
    if (building && !near) return;
    looked.current = key;
    const byId = <P extends Place & { id: string }>(list: readonly P[], id: string | null) =>
      list.filter((one) => one.id === id);
    const first = (near ?? NONE).slice(0, 5).map(({ id }) => id);
    const wanted = building
      ? [
          ...byId(district.buildings, building),
          ...district.hydrants.filter(({ id }) => first.includes(id) || id === hydrant),
        ]
      : [
          ...byId(district.hydrants, hydrant),
          ...byId(district.stations, station),
          ...byId(district.waterSources, water),
        ];
    if (wanted.length > 0) setPlaces(wanted);
  }, [building, hydrant, station, water, near, district]);
  return places;
}
