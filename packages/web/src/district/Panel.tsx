import type { Place } from '@plugside/records/streets';
import { useEffect, useRef } from 'react';
import { PlaceLink } from '../places/PlaceLink.tsx';
import type { District, MapHydrant } from './district.ts';
import { PlaceList } from './list/PlaceList.tsx';
import { BuildingPanel, HydrantPanel, LayFor, StationPanel, WaterPanel } from './picked.tsx';
import type { FoundRoute } from './plan/use-route.ts';
import { addressOf, useSelection } from './selection.ts';
import type { NearHydrant } from './streets/messages.ts';

export interface PanelProps {
  district: District;
  hydrants: ReadonlyMap<string, MapHydrant>;
  /** Where the map looks. */
  from: Place | null;
  /** Null while they are being found. */
  near: readonly NearHydrant[] | null;
  found: FoundRoute | null;
  problem: string | null;
  onMore: (() => void) | null;
}

/** Beside the map: everything that it shows and does, in words. */
export function Panel(props: PanelProps) {
  const { district, hydrants, near, found, problem, onMore } = props;
  const { building, hydrant, station, water } = useSelection();
  const key = [building, hydrant, station, water].join(':');
  const panel = useFocusOnChange(key);
  const builtName = district.buildings.find(({ id }) => id === building)?.name;
  const nothing = !building && !hydrant && !station && !water;
  return (
    <div ref={panel} className="panel-inside" tabIndex={-1}>
      {!nothing && (
        <nav aria-label="Back" className="trail">
          <ul>
            <li>
              <PlaceLink href="/district">‹ All places</PlaceLink>
            </li>
            {building && hydrant && (
              <li>
                <PlaceLink href={addressOf({ building })}>‹ {builtName ?? 'Building'}</PlaceLink>
              </li>
            )}
          </ul>
        </nav>
      )}
      {nothing && <PlaceList district={district} from={props.from} />}
      {building && !hydrant && (
        <BuildingPanel id={building} hydrants={hydrants} near={near} onMore={onMore} />
      )}
      {building && hydrant && (
        <LayFor
          buildingId={building}
          hydrantId={hydrant}
          district={district}
          found={found}
          problem={problem}
        />
      )}
      {!building && hydrant && (
        <HydrantPanel id={hydrant} hydrants={hydrants} district={district} />
      )}
      {station && <StationPanel id={station} />}
      {water && <WaterPanel id={water} />}
    </div>
  );
}

/** A new pick is read from its top, by eye and by screen reader; the first page is left alone. */
function useFocusOnChange(key: string) {
  const panel = useRef<HTMLDivElement>(null);
  const before = useRef(key);
  useEffect(() => {
    if (before.current === key) return;
    before.current = key;
    panel.current?.parentElement?.scrollTo({ top: 0 });
    panel.current?.focus({ preventScroll: true });
  }, [key]);
  return panel;
}
