import type { Place } from '@plugside/records/streets';
import { useEffect, useRef, useState } from 'react';
import type { District } from '../district.ts';
import type { BaseMapTold } from './base-map.ts';
import { canDrawMap, DistrictMap, type MapShown, type MapTells } from './district-map.ts';
import { mapColours } from './map-colours.ts';
import 'maplibre-gl/dist/maplibre-gl.css';
import './map.css';

interface MapViewProps {
  district: District;
  shown: MapShown;
  tells: Omit<MapTells, 'onBaseMap' | 'onDrawn'>;
  /** A new list brings these places into view. */
  lookAt: readonly Place[] | null;
}

/** So many hydrants take a while to be drawn. */
const WORTH_TELLING = 5000;

/** The map, kept up with what is picked and with the theme; a sentence where it cannot be drawn. */
export function MapView({ district, shown, tells, lookAt }: MapViewProps) {
  const box = useRef<HTMLDivElement>(null);
  const map = useRef<DistrictMap | null>(null);
  const [base, setBase] = useState<BaseMapTold | null>(null);
  const [drawn, setDrawn] = useState(false);
  const [drawable, setDrawable] = useState(canDrawMap);
  const told = useRef(tells);
  told.current = tells;
  const first = useRef({ shown, lookAt });
  first.current = { shown, lookAt };

  useEffect(() => {
    if (!box.current || !drawable) return;
    let made: DistrictMap;
    try {
      made = new DistrictMap(box.current, district, mapColours(), {
        onPick: (kind, id) => told.current.onPick(kind, id),
        onViaAdded: (index, place) => told.current.onViaAdded(index, place),
        onViaMoved: (index, place) => told.current.onViaMoved(index, place),
        onViaRemoved: (index) => told.current.onViaRemoved(index),
        onStepEnd: () => told.current.onStepEnd(),
        onLook: (place) => told.current.onLook(place),
        onBaseMap: setBase,
        onDrawn: () => setDrawn(true),
      });
    } catch {
      setDrawable(false);
      return;
    }
    map.current = made;
    made.show(first.current.shown);
    if (first.current.lookAt) made.lookAt(first.current.lookAt);
    const themed = new MutationObserver(() => made.setColours(mapColours()));
    themed.observe(document.documentElement, { attributeFilter: ['data-theme'] });
    return () => {
      themed.disconnect();
      map.current = null;
      made.end();
    };
  }, [district, drawable]);

  useEffect(() => map.current?.show(shown), [shown]);
  useEffect(() => {
    if (lookAt) map.current?.lookAt(lookAt);
  }, [lookAt]);

  if (!drawable) {
    return (
      <p className="map-missing" role="status">
        This browser cannot draw the map (it has no WebGL 2). The list does all that the map does.
      </p>
    );
  }
  const { problem } = district.base;
  return (
    <>
      <div ref={box} className="map-box" />
      {!drawn && district.hydrants.length >= WORTH_TELLING && (
        <p className="map-notice" role="status">
          Drawing {district.hydrants.length.toLocaleString('en-US')} hydrants…
        </p>
      )}
      {(problem || base?.failed) && (
        <p className="map-notice" role="status">
          {problem ?? 'The base map does not come; your own streets are shown without it.'}
        </p>
      )}
      {base && !base.failed && base.credit !== '' && <p className="map-credit">{base.credit}</p>}
    </>
  );
}
