/** What is picked, with its records fetched. */
import type { ReactNode } from 'react';
import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { hydrantSupply } from '../api/district.ts';
import { allRecords, getRecord } from '../api/records.ts';
import { type Loaded, useLoaded } from '../api/use-loaded.ts';
import { newRoomFor } from '../drill/together/address.ts';
import { useUnits } from '../editing/use-units.ts';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { supplyAddress } from '../supply/address.ts';
import type { District, MapHydrant } from './district.ts';
import { BuildingFacts } from './list/BuildingFacts.tsx';
import { findPlaces } from './list/find-places.ts';
import { HydrantFacts } from './list/HydrantFacts.tsx';
import { NearHydrants } from './list/NearHydrants.tsx';
import { StationFacts } from './list/StationFacts.tsx';
import { WaterFacts } from './list/WaterFacts.tsx';
import { LayPanel } from './plan/LayPanel.tsx';
import { fetchPlanningRecords } from './plan/planning-records.ts';
import type { FoundRoute } from './plan/use-route.ts';
import { addressOf } from './selection.ts';
import type { NearHydrant } from './streets/messages.ts';

interface BuildingPanelProps {
  id: string;
  hydrants: ReadonlyMap<string, MapHydrant>;
  near: readonly NearHydrant[] | null;
  onMore: (() => void) | null;
}

export function BuildingPanel({ id, hydrants, near, onMore }: BuildingPanelProps) {
  const [loaded, retry] = useLoaded(id, (signal) => getRecord('buildings', id, signal));
  return (
    <Once loaded={loaded} retry={retry} what="The building">
      {(building) => (
        <>
          <BuildingFacts building={building} />
          <p className="panel-part link-row">
            <PlaceLink className="supply-link" href={supplyAddress(id)}>
              Ways to supply it, and which to choose ›
            </PlaceLink>
            <PlaceLink className="record-way" href={newRoomFor({ building: id })}>
              Drill it
            </PlaceLink>
          </p>
          {near === null ? (
            <p role="status">Measuring along the streets…</p>
          ) : (
            <NearHydrants near={near} hydrants={hydrants} building={building} onMore={onMore} />
          )}
        </>
      )}
    </Once>
  );
}

interface LayForProps {
  buildingId: string;
  hydrantId: string;
  district: District;
  found: FoundRoute | null;
  problem: string | null;
}

export function LayFor({ buildingId, hydrantId, district, found, problem }: LayForProps) {
  const [loaded, retry] = useLoaded(`${buildingId}:${hydrantId}`, async (signal) => {
    const [building, hydrant, supply, records] = await Promise.all([
      getRecord('buildings', buildingId, signal),
      getRecord('hydrants', hydrantId, signal),
      hydrantSupply(hydrantId, signal),
      fetchPlanningRecords(signal),
    ]);
    return { building, hydrant, supply, records };
  });
  return (
    <Once loaded={loaded} retry={retry} what="The lay">
      {(given) =>
        problem ? (
          <p role="alert">{problem}</p>
        ) : found ? (
          <LayPanel {...given} district={district} found={found} />
        ) : (
          <p role="status">Measuring along the streets…</p>
        )
      }
    </Once>
  );
}

interface HydrantPanelProps {
  id: string;
  hydrants: ReadonlyMap<string, MapHydrant>;
  district: District;
}

const BUILDINGS_SHOWN = 8;

export function HydrantPanel({ id, hydrants, district }: HydrantPanelProps) {
  const units = useUnits();
  const hydrant = hydrants.get(id);
  const [loaded, retry] = useLoaded(id, (signal) => getRecord('hydrants', id, signal));
  const near = useMemo(
    () =>
      hydrant
        ? findPlaces(district.buildings, '', () => '', hydrant).slice(0, BUILDINGS_SHOWN)
        : [],
    [district, hydrant],
  );
  return (
    <Once loaded={loaded} retry={retry} what="The hydrant">
      {(record) => (
        <>
          {hydrant && <HydrantFacts record={record} hydrant={hydrant} />}
          <section className="panel-part" aria-labelledby="near-buildings">
            <h3 className="section-name" id="near-buildings">
              Lay to a building, nearest first
            </h3>
            <ul className="rows">
              {near.map(({ place, awayFt }) => (
                <li key={place.id}>
                  <PlaceLink className="row" href={addressOf({ building: place.id, hydrant: id })}>
                    <span className="row-text">
                      <span className="row-name">{place.name}</span>
                      {place.address && <span className="row-told">{place.address}</span>}
                    </span>
                    <span className="row-figure figures">
                      {awayFt === null ? '' : `${units.text(awayFt, 'length')} off`}
                    </span>
                  </PlaceLink>
                </li>
              ))}
            </ul>
          </section>
        </>
      )}
    </Once>
  );
}

export function StationPanel({ id }: { id: string }) {
  const [loaded, retry] = useLoaded(`station:${id}`, async (signal) => {
    const [station, rigs] = await Promise.all([
      getRecord('stations', id, signal),
      allRecords('rigs', { where: { stationId: id } }, signal),
    ]);
    return { station, rigs };
  });
  return (
    <Once loaded={loaded} retry={retry} what="The station">
      {(given) => <StationFacts {...given} />}
    </Once>
  );
}

export function WaterPanel({ id }: { id: string }) {
  const [loaded, retry] = useLoaded(`water:${id}`, (signal) =>
    getRecord('water-sources', id, signal),
  );
  return (
    <Once loaded={loaded} retry={retry} what="The water source">
      {(source) => <WaterFacts source={source} />}
    </Once>
  );
}

/** Shows what was fetched, or why it was not. */
function Once<T>({
  loaded,
  retry,
  what,
  children,
}: {
  loaded: Loaded<T>;
  retry(): void;
  what: string;
  children(value: T): ReactNode;
}) {
  if (loaded.state === 'ready') return children(loaded.value);
  if (loaded.state === 'loading') return <p role="status">Reading…</p>;
  return (
    <div role="alert" className="panel-part">
      <p>
        {what} could not be read.{' '}
        {loaded.state === 'failed' ? loaded.reason : 'The server does not answer.'}
      </p>
      <Button className="plain-button" onPress={retry}>
        Try again
      </Button>
    </div>
  );
}
