/** The map on which an outline is drawn: told plain data, tells what was moved, added and removed. */
import type { GeoJSONSource, MapMouseEvent } from 'maplibre-gl';
import * as maplibre from 'maplibre-gl';
import type { District } from '../../district/district.ts';
import { type BaseMapTold, watchBaseMap } from '../../district/map/base-map.ts';
import type { MapColours } from '../../district/map/map-colours.ts';
import { IMAGE_RATIO, mapImages } from '../../district/map/map-images.ts';
import { collection } from '../../district/map/map-sources.ts';
import { mapStyle } from '../../district/map/map-style.ts';
import { middlesOf, type Outline, type PointAt, type Position, pointMoved } from './outline.ts';

export interface OutlineTells {
  onMoved(point: PointAt, to: Position): void;
  onAdded(before: PointAt, place: Position): void;
  onRemoved(point: PointAt): void;
  /** A point is held by focus; null when none is. */
  onHeld(point: PointAt | null): void;
  /** The map was pressed where there is no point. */
  onPressed(place: Position): void;
  /** More points are in view than can be told apart. */
  onCrowded(crowded: boolean): void;
  onBaseMap(told: BaseMapTold): void;
}

const OUTLINE = 'outline';
/** More handles than this in view cannot be told apart, nor pressed. */
const MOST_HANDLES = 150;
/** Between points nearer than this there is no room for another to be pressed. */
const LEAST_SPAN_PX = 40;
const STEP_PX = 4;
const BIG_STEP_PX = 24;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface Handle {
  marker: maplibre.Marker;
  element: HTMLElement;
}

export class OutlineMap {
  readonly #map: maplibre.Map;
  readonly #district: District;
  readonly #tells: OutlineTells;
  #colours: MapColours;
  #outline: Outline;
  #handles = new Map<string, Handle>();
  #dragging = false;

  /** @param near looked at where there is no outline yet */
  constructor(
    container: HTMLElement,
    district: District,
    colours: MapColours,
    outline: Outline,
    near: Position | undefined,
    tells: OutlineTells,
  ) {
    this.#district = district;
    this.#colours = colours;
    this.#outline = outline;
    this.#tells = tells;
    const { bounds } = district.summary;
    this.#map = new maplibre.Map({
      container,
      style: mapStyle(district, colours),
      ...(bounds && { bounds: [...bounds] }),
      attributionControl: false,
      dragRotate: false,
      pitchWithRotate: false,
      maxZoom: 21,
      locale: { 'Map.Title': 'Map to draw the outline on' },
      fadeDuration: 0,
      // A page that is scrolled must not be caught by the map.
      cooperativeGestures: true,
    });
    const { baseMap } = district.base;
    if (baseMap) watchBaseMap(this.#map, baseMap, (told) => tells.onBaseMap(told));
    this.#map.touchZoomRotate.disableRotation();
    this.#map.addControl(new maplibre.NavigationControl({ showCompass: false }), 'top-right');
    this.#look(near);
    this.#map.on('style.load', () => this.#begin());
    this.#map.on('moveend', () => this.#setHandles());
    this.#map.on('click', (event) => this.#clicked(event));
  }

  setColours(colours: MapColours): void {
    if (colours === this.#colours) return;
    this.#colours = colours;
    this.#map.setStyle(mapStyle(this.#district, colours), { diff: false });
  }

  show(outline: Outline): void {
    this.#outline = outline;
    this.#draw(outline);
    this.#setHandles();
  }

  /** Puts the focus on a point, where it is in view. */
  hold(point: PointAt): void {
    this.#handles.get(nameOf('point', point))?.element.focus();
  }

  end(): void {
    this.#map.remove();
  }

  #look(near: Position | undefined): void {
    const points = this.#outline.lines.flat();
    if (points.length === 0) {
      if (near) this.#map.jumpTo({ center: [...near], zoom: 18 });
      return;
    }
    const bounds = new maplibre.LngLatBounds();
    for (const [longitude, latitude] of points) bounds.extend([longitude, latitude]);
    this.#map.fitBounds(bounds, { padding: 48, maxZoom: 19, duration: 0 });
  }

  #begin(): void {
    for (const [name, image] of Object.entries(mapImages(this.#colours))) {
      if (!this.#map.hasImage(name)) this.#map.addImage(name, image, { pixelRatio: IMAGE_RATIO });
    }
    this.#map.addSource(OUTLINE, { type: 'geojson', data: collection([]) });
    this.#map.addLayer({
      id: 'outline-inside',
      type: 'fill',
      source: OUTLINE,
      filter: ['==', ['geometry-type'], 'Polygon'],
      paint: { 'fill-color': this.#colours.water, 'fill-opacity': 0.2 },
    });
    this.#map.addLayer({
      id: 'outline-line',
      type: 'line',
      source: OUTLINE,
      layout: { 'line-cap': 'round', 'line-join': 'round' },
      paint: { 'line-color': this.#colours.water, 'line-width': 3 },
    });
    this.show(this.#outline);
    this.#map.once('idle', () => {
      this.#map.getContainer().dataset.drawn = 'true';
    });
  }

  #draw({ lines, closed }: Outline): void {
    const isArea = closed && lines.every((ring) => ring.length > 2) && lines.length > 0;
    const rings = lines.map((ring) => (ring[0] ? [...ring, ring[0]] : ring));
    const geometry = isArea
      ? { type: 'Polygon', coordinates: rings }
      : { type: 'MultiLineString', coordinates: lines.filter((line) => line.length > 1) };
    const feature = { type: 'Feature', geometry, properties: {} };
    void this.#map.getSource<GeoJSONSource>(OUTLINE)?.setData(collection([feature]));
  }

  /** Handles for what is in view; those that stay keep their focus. */
  #setHandles(): void {
    const bounds = this.#map.getBounds();
    const inView = (place: Position) => bounds.contains([place[0], place[1]]);
    const points = this.#outline.lines.flatMap((places, line) =>
      places.flatMap((place, at) => (inView(place) ? [{ point: { line, at }, place }] : [])),
    );
    const crowded = points.length > MOST_HANDLES;
    this.#tells.onCrowded(crowded);
    const wanted = new Map<string, () => void>();
    if (!crowded) {
      for (const { before, place, ends } of middlesOf(this.#outline)) {
        if (!inView(place) || this.#spanPx(...ends) < LEAST_SPAN_PX) continue;
        const name = nameOf('middle', before);
        wanted.set(name, () => this.#put(name, place, () => this.#middle(before)));
      }
      for (const { point, place } of points) {
        const name = nameOf('point', point);
        wanted.set(name, () => this.#put(name, place, () => this.#point(point)));
      }
    }
    for (const [name, { marker }] of this.#handles) {
      if (wanted.has(name)) continue;
      marker.remove();
      this.#handles.delete(name);
    }
    for (const put of wanted.values()) put();
  }

  #spanPx(from: Position, to: Position): number {
    const [a, b] = [from, to].map(([longitude, latitude]) =>
      this.#map.project([longitude, latitude]),
    );
    return a && b ? Math.hypot(b.x - a.x, b.y - a.y) : 0;
  }

  #put(name: string, [longitude, latitude]: Position, make: () => Handle): void {
    const known = this.#handles.get(name);
    if (known) {
      known.marker.setLngLat([longitude, latitude]);
      return;
    }
    const handle = make();
    handle.marker.setLngLat([longitude, latitude]).addTo(this.#map);
    this.#handles.set(name, handle);
  }

  #point(point: PointAt): Handle {
    const element = handleElement(
      'outline-point',
      `Point ${this.#wordsOf(point)}: arrow keys move it, Delete takes it away`,
    );
    const marker = new maplibre.Marker({ element, draggable: true });
    const at = (): Position => {
      const { lng, lat } = marker.getLngLat();
      return [lng, lat];
    };
    marker.on('dragstart', () => {
      this.#dragging = true;
    });
    marker.on('drag', () => this.#draw(pointMoved(this.#outline, point, at())));
    marker.on('dragend', () => {
      this.#tells.onMoved(point, at());
      // The click that ends a drag presses nothing.
      setTimeout(() => {
        this.#dragging = false;
      });
    });
    element.addEventListener('focus', () => this.#tells.onHeld(point));
    element.addEventListener('click', (event) => {
      event.stopPropagation();
      element.focus();
    });
    element.addEventListener('keydown', (event) => {
      if (event.key === 'Delete' || event.key === 'Backspace') {
        event.preventDefault();
        this.#tells.onRemoved(point);
        return;
      }
      const arrow = ARROWS[event.key];
      if (!arrow) return;
      event.preventDefault();
      event.stopPropagation();
      const by = event.shiftKey ? BIG_STEP_PX : STEP_PX;
      const { x, y } = this.#map.project(marker.getLngLat());
      const { lng, lat } = this.#map.unproject([x + arrow[0] * by, y + arrow[1] * by]);
      this.#tells.onMoved(point, [lng, lat]);
    });
    return { marker, element };
  }

  #middle(before: PointAt): Handle {
    const element = handleElement('outline-middle', `Add a point before ${this.#wordsOf(before)}`);
    const marker = new maplibre.Marker({ element });
    element.addEventListener('click', (event) => {
      event.stopPropagation();
      const { lng, lat } = marker.getLngLat();
      this.#tells.onAdded(before, [lng, lat]);
    });
    return { marker, element };
  }

  #wordsOf({ line, at }: PointAt): string {
    return this.#outline.lines.length > 1 ? `${at + 1} of ring ${line + 1}` : String(at + 1);
  }

  #clicked({ lngLat: { lng, lat } }: MapMouseEvent): void {
    if (!this.#dragging) this.#tells.onPressed([lng, lat]);
  }
}

const nameOf = (is: 'point' | 'middle', { line, at }: PointAt) => `${is} ${line} ${at}`;

function handleElement(className: string, label: string): HTMLElement {
  const element = document.createElement('button');
  element.type = 'button';
  element.className = className;
  element.setAttribute('aria-label', label);
  return element;
}
