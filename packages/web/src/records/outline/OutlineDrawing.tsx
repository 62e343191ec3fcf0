import { useEffect, useRef, useState } from 'react';
import { Button, ToggleButton } from 'react-aria-components';
import { useLoaded } from '../../api/use-loaded.ts';
import { type District, fetchDistrict } from '../../district/district.ts';
import type { BaseMapTold } from '../../district/map/base-map.ts';
import { canDrawMap } from '../../district/map/district-map.ts';
import { mapColours } from '../../district/map/map-colours.ts';
import { Once } from '../Once.tsx';
import {
  endOf,
  type Outline,
  type PointAt,
  type Position,
  pointAdded,
  pointMoved,
  pointRemoved,
} from './outline.ts';
import { OutlineMap } from './outline-map.ts';
import 'maplibre-gl/dist/maplibre-gl.css';

export interface OutlineDrawingProps {
  outline: Outline;
  /** Looked at where there is no outline yet. */
  near: Position | undefined;
  onChange(outline: Outline): void;
  /** Null where nothing is to be undone. */
  onUndo: (() => void) | null;
}

/** An outline to be drawn on the district's map. */
export function OutlineDrawing(props: OutlineDrawingProps) {
  const [loaded, retry] = useLoaded('outline-district', fetchDistrict);
  return (
    <Once loaded={loaded} retry={retry} what="The map">
      {(district) => <Drawing district={district} {...props} />}
    </Once>
  );
}

function Drawing({
  district,
  outline,
  near,
  onChange,
  onUndo,
}: OutlineDrawingProps & { district: District }) {
  const box = useRef<HTMLDivElement>(null);
  const map = useRef<OutlineMap | null>(null);
  const [drawable, setDrawable] = useState(canDrawMap);
  const [held, setHeld] = useState<PointAt | null>(null);
  const [base, setBase] = useState<BaseMapTold | null>(null);
  const [crowded, setCrowded] = useState(false);
  const [extending, setExtending] = useState(outline.lines.length === 0);
  const now = { outline, near, onChange, extending };
  const latest = useRef(now);
  latest.current = now;
  const place = (point: PointAt, to: Position) => {
    latest.current.onChange(pointAdded(latest.current.outline, point, to));
    // Once its handle stands on the map.
    requestAnimationFrame(() => map.current?.hold(point));
  };
  const remove = (point: PointAt) => {
    const { outline: before } = latest.current;
    latest.current.onChange(pointRemoved(before, point));
    // The point that now stands in its place, else the one before it.
    const last = (before.lines[point.line]?.length ?? 0) - 2;
    const next = { line: point.line, at: Math.max(0, Math.min(point.at, last)) };
    requestAnimationFrame(() => map.current?.hold(next));
  };
  const removed = useRef(remove);
  removed.current = remove;
  const placed = useRef(place);
  placed.current = place;

  useEffect(() => {
    if (!box.current || !drawable) return;
    const { current } = latest;
    let made: OutlineMap;
    try {
      made = new OutlineMap(box.current, district, mapColours(), current.outline, current.near, {
        onMoved: (point, to) =>
          latest.current.onChange(pointMoved(latest.current.outline, point, to)),
        onAdded: (before, at) => placed.current(before, at),
        onRemoved: (point) => removed.current(point),
        onHeld: setHeld,
        onPressed: (at) => {
          if (latest.current.extending) placed.current(endOf(latest.current.outline), at);
        },
        onCrowded: setCrowded,
        onBaseMap: setBase,
      });
    } catch {
      setDrawable(false);
      return;
    }
    map.current = made;
    const themed = new MutationObserver(() => made.setColours(mapColours()));
    themed.observe(document.documentElement, { attributeFilter: ['data-theme'] });
    return () => {
      themed.disconnect();
      map.current = null;
      made.end();
    };
  }, [district, drawable]);
  useEffect(() => map.current?.show(outline), [outline]);

  if (!drawable) {
    return (
      <p className="soft-text" role="status">
        This browser cannot draw the map (it has no WebGL 2). The list of points does all that the
        map does.
      </p>
    );
  }
  const isThere = held !== null && outline.lines[held.line]?.[held.at] !== undefined;
  return (
    <>
      <div className="outline-place">
        <div ref={box} className="outline-map" />
        {base && !base.failed && base.credit !== '' && (
          <p className="outline-credit">{base.credit}</p>
        )}
      </div>
      <div className="outline-actions">
        <ToggleButton className="plain-button" isSelected={extending} onChange={setExtending}>
          Add points at the end by pressing the map
        </ToggleButton>
        <Button className="plain-button" isDisabled={!isThere} onPress={() => held && remove(held)}>
          {isThere && held ? `Remove point ${held.at + 1}` : 'Remove a point'}
        </Button>
        <Button className="plain-button" isDisabled={onUndo === null} onPress={() => onUndo?.()}>
          Undo
        </Button>
      </div>
      <p className="soft-text" role="status">
        {crowded
          ? 'Too many points are in view to be told apart: zoom in.'
          : 'Drag a point, or press a small one between two to add one there. By keyboard: Tab to a point, arrow keys move it, Delete takes it away.'}
      </p>
    </>
  );
}
