/** What is meant by a press on the map. */
import type * as maplibre from 'maplibre-gl';
import type { PickKind } from '../selection.ts';

interface Point {
  x: number;
  y: number;
}

export interface Picked {
  kind: PickKind;
  id: string;
}

/** Layers of marks, by what they stand for. */
const MARKS: Readonly<Record<string, PickKind>> = {
  station: 'station',
  'water-source': 'water',
  hydrant: 'hydrant',
  'building-point': 'building',
};

/** How far around a press a mark may be: half the width of a fingertip's target, or of a pointer's. */
export const REACH_PX = { finger: 22, pointer: 7 } as const;

/** On the mark itself. */
const ON_IT_PX = 2;

/**
 * The mark that is pressed: one right under the press, else the nearest within reach. A building
 * under the press is meant where its middle is nearer than any mark's.
 */
export function pickedAt(map: maplibre.Map, at: Point, reachPx: number): Picked | null {
  const onIt = nearestMark(map, at, ON_IT_PX);
  if (onIt) return onIt.picked;
  const near = nearestMark(map, at, reachPx);
  const building = buildingAt(map, at);
  if (!near || (building && building.farPx < near.farPx)) return building?.picked ?? null;
  return near.picked;
}

interface Near {
  picked: Picked;
  farPx: number;
}

function nearestMark(map: maplibre.Map, at: Point, reachPx: number): Near | null {
  let nearest: Near | null = null;
  const found = map.queryRenderedFeatures(boxAround(at, reachPx), { layers: Object.keys(MARKS) });
  for (const { layer, geometry, properties } of found) {
    const kind = MARKS[layer.id];
    const id: unknown = properties.id;
    if (!kind || typeof id !== 'string' || geometry.type !== 'Point') continue;
    const [longitude = 0, latitude = 0] = geometry.coordinates;
    const farPx = distancePx(map, at, longitude, latitude);
    if (!nearest || farPx < nearest.farPx) nearest = { picked: { kind, id }, farPx };
  }
  return nearest;
}

function buildingAt(map: maplibre.Map, { x, y }: Point): Near | null {
  const [found] = map.queryRenderedFeatures([x, y], { layers: ['building'] });
  const { id, longitude, latitude } = found?.properties ?? {};
  if (typeof id !== 'string') return null;
  const farPx = distancePx(map, { x, y }, Number(longitude), Number(latitude));
  return { picked: { kind: 'building', id }, farPx };
}

function distancePx(map: maplibre.Map, at: Point, longitude: number, latitude: number): number {
  const { x, y } = map.project([longitude, latitude]);
  return Math.hypot(x - at.x, y - at.y);
}

export function boxAround({ x, y }: Point, reachPx: number): [[number, number], [number, number]] {
  return [
    [x - reachPx, y - reachPx],
    [x + reachPx, y + reachPx],
  ];
}
