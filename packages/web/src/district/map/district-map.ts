/** The map itself: told plain data, tells what was picked and dragged. Nothing else touches it. */

import type { UnitSystem } from '@plugside/fireground';
import type { Place, Route } from '@plugside/records/streets';
import type { GeoJSONSource, LngLat, MapMouseEvent, MapTouchEvent } from 'maplibre-gl';
import * as maplibre from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url';
import type { District } from '../district.ts';
import type { PickKind } from '../selection.ts';
import { type BaseMapTold, watchBaseMap } from './base-map.ts';
import type { MapColours } from './map-colours.ts';
import { IMAGE_RATIO, mapImages } from './map-images.ts';
import { collection, SOURCE } from './map-sources.ts';
import { mapStyle } from './map-style.ts';
import { boxAround, pickedAt, REACH_PX } from './picking.ts';
import { RouteHandles } from './route-handles.ts';
import { middleOf } from './route-middle.ts';

maplibre.setWorkerUrl(workerUrl);

/** What the map shows besides the district. */
export interface MapShown {
  building: string | null;
  hydrant: string | null;
  /** Hydrants within reach of the building. */
  near: readonly string[];
  route: Route | null;
  /** Its length in the reader's units. */
  routeText: string;
  /** Of the scale bar. */
  units: UnitSystem;
  via: readonly Place[];
}

export interface MapTells {
  onPick(kind: PickKind, id: string): void;
  /** A place put among those that the hose goes by. */
  onViaAdded(index: number, place: Place): void;
  onViaMoved(index: number, place: Place): void;
  onViaRemoved(index: number): void;
  /** A drag has ended: the next is another step. */
  onStepEnd(): void;
  /** Where the map looks, for sorting what is near. */
  onLook(place: Place): void;
  onBaseMap(told: BaseMapTold): void;
  /** Everything stands on the map for the first time. */
  onDrawn(): void;
}

const SCALE_UNIT = { us: 'imperial', si: 'metric' } as const;

/** The route's grip is 26 px wide; a finger gets as much as on any mark. */
const FINGER_GRIP_MORE_PX = REACH_PX.finger - 13;
/** Around places brought into view [px], on a map with room for it. */
const VIEW_PADDING_PX = 70;
const EMPTY: MapShown = {
  building: null,
  hydrant: null,
  near: [],
  route: null,
  routeText: '',
  units: 'us',
  via: [],
};

/** False where the browser has no WebGL 2 for it. */
export function canDrawMap(): boolean {
  try {
    return document.createElement('canvas').getContext('webgl2') !== null;
  } catch {
    return false;
  }
}

export class DistrictMap {
  readonly #map: maplibre.Map;
  readonly #district: District;
  readonly #tells: MapTells;
  readonly #handles: RouteHandles;
  readonly #scale = new maplibre.ScaleControl({ unit: SCALE_UNIT.us, maxWidth: 120 });
  #colours: MapColours;
  #shown: MapShown = EMPTY;
  #ready = false;
  /** The last press was a finger's. */
  #finger = false;

  constructor(container: HTMLElement, district: District, colours: MapColours, tells: MapTells) {
    this.#district = district;
    this.#colours = colours;
    this.#tells = tells;
    this.#map = new maplibre.Map({
      container,
      style: mapStyle(district, colours),
      ...(district.summary.bounds && { bounds: [...district.summary.bounds] }),
      fitBoundsOptions: { padding: 28 },
      attributionControl: false,
      dragRotate: false,
      pitchWithRotate: false,
      maxZoom: 20,
      locale: { 'Map.Title': 'Map of the district' },
      fadeDuration: 0,
    });
    const { baseMap } = district.base;
    if (baseMap) watchBaseMap(this.#map, baseMap, (told) => tells.onBaseMap(told));
    this.#map.touchZoomRotate.disableRotation();
    this.#map.addControl(new maplibre.NavigationControl({ showCompass: false }), 'top-right');
    this.#map.addControl(this.#scale, 'bottom-left');
    this.#handles = new RouteHandles(this.#map, tells);
    const feel = ({ pointerType }: PointerEvent) => {
      this.#finger = pointerType !== 'mouse';
    };
    container.addEventListener('pointerdown', feel, { capture: true });
    this.#map.on('style.load', () => this.#begin());
    this.#map.on('click', (event) => this.#clicked(event));
    this.#map.on('mousemove', (event) => this.#pointed(event));
    this.#map.on('mousedown', (event) => this.#gripped(event));
    this.#map.on('touchstart', (event) => this.#gripped(event));
    this.#map.on('moveend', () => this.#looked());
  }

  /** In the theme that the page now has. */
  setColours(colours: MapColours): void {
    if (colours === this.#colours) return;
    this.#colours = colours;
    this.#ready = false;
    this.#map.setStyle(mapStyle(this.#district, colours), { diff: false });
  }

  show(shown: MapShown): void {
    const before = this.#shown;
    this.#shown = shown;
    if (before.units !== shown.units) this.#scale.setUnit(SCALE_UNIT[shown.units]);
    if (!this.#ready) return;
    if (
      before.building !== shown.building ||
      before.hydrant !== shown.hydrant ||
      before.near !== shown.near
    ) {
      this.#mark();
    }
    if (before.route !== shown.route || before.routeText !== shown.routeText) this.#drawRoute();
    this.#handles.show(shown.route ? shown.via : []);
  }

  /** Brings places into view, moving no more than it must. */
  lookAt(places: readonly Place[]): void {
    if (places.length === 0) return;
    const bounds = new maplibre.LngLatBounds();
    for (const { longitude, latitude } of places) bounds.extend([longitude, latitude]);
    const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    const { clientWidth, clientHeight } = this.#map.getContainer();
    const padding = Math.min(VIEW_PADDING_PX, 0.15 * Math.min(clientWidth, clientHeight));
    this.#map.fitBounds(bounds, { padding, maxZoom: 17, duration: still ? 0 : 500 });
  }

  resize(): void {
    this.#map.resize();
  }

  end(): void {
    this.#map.remove();
  }

  #begin(): void {
    for (const [name, image] of Object.entries(mapImages(this.#colours))) {
      if (!this.#map.hasImage(name)) this.#map.addImage(name, image, { pixelRatio: IMAGE_RATIO });
      else this.#map.updateImage(name, image);
    }
    this.#ready = true;
    this.#mark();
    this.#drawRoute();
    this.#handles.show(this.#shown.route ? this.#shown.via : []);
    this.#looked();
    // Told to the page as well, for whoever waits until the map can be seen.
    this.#map.once('idle', () => {
      this.#map.getContainer().dataset.drawn = 'true';
      this.#tells.onDrawn();
    });
  }

  #mark(): void {
    const { building, hydrant, near } = this.#shown;
    this.#map.removeFeatureState({ source: SOURCE.buildings });
    this.#map.removeFeatureState({ source: SOURCE.hydrants });
    if (building)
      this.#map.setFeatureState({ source: SOURCE.buildings, id: building }, { picked: true });
    for (const id of near)
      this.#map.setFeatureState({ source: SOURCE.hydrants, id }, { near: true });
    if (hydrant)
      this.#map.setFeatureState({ source: SOURCE.hydrants, id: hydrant }, { picked: true });
  }

  #drawRoute(): void {
    const { route, routeText } = this.#shown;
    const legs = (route?.legs ?? []).map((leg, index) => ({
      type: 'Feature',
      geometry: { type: 'LineString', coordinates: leg.path },
      properties: { index },
    }));
    const source = this.#map.getSource<GeoJSONSource>(SOURCE.route);
    // At one place and level: along a line it would turn with each corner, and stand in every tile.
    const whole = route && {
      type: 'Feature',
      geometry: { type: 'Point', coordinates: middleOf(route.path) },
      properties: { text: routeText },
    };
    void source?.setData(collection(whole ? [...legs, whole] : legs));
  }

  #clicked(event: MapMouseEvent): void {
    if (!this.#ready || this.#handles.dragging) return;
    const [group] = this.#map.queryRenderedFeatures(boxAround(event.point, this.#reachPx() / 2), {
      layers: ['hydrant-group'],
    });
    if (group) {
      this.#map.easeTo({ center: event.lngLat, zoom: this.#map.getZoom() + 2 });
      return;
    }
    const found = pickedAt(this.#map, event.point, this.#reachPx());
    if (found) this.#tells.onPick(found.kind, found.id);
  }

  #pointed(event: MapMouseEvent): void {
    if (!this.#ready || this.#handles.dragging) return;
    const grip = this.#gripAt(event.point) !== null;
    const found = grip || pickedAt(this.#map, event.point, REACH_PX.pointer) !== null;
    this.#map.getCanvas().style.cursor = grip ? 'grab' : found ? 'pointer' : '';
  }

  /** The leg of the route under a point; null where there is none. */
  #gripAt(point: { x: number; y: number }): number | null {
    if (!this.#shown.route) return null;
    const more = this.#finger ? FINGER_GRIP_MORE_PX : 0;
    const [leg] = this.#map.queryRenderedFeatures(boxAround(point, more), {
      layers: ['route-grip'],
    });
    const index: unknown = leg?.properties.index;
    return typeof index === 'number' ? index : null;
  }

  #gripped(event: MapMouseEvent | MapTouchEvent): void {
    if (!this.#ready) return;
    if ('points' in event && event.points.length !== 1) return;
    const pressed = event.originalEvent;
    if ('button' in pressed && pressed.button !== 0) return;
    // A hydrant on the line is picked, not dragged.
    const under = pickedAt(this.#map, event.point, 0);
    if (under && under.kind !== 'building') return;
    const leg = this.#gripAt(event.point);
    if (leg === null) return;
    event.preventDefault();
    this.#handles.dragNew(leg, event.point);
  }

  #reachPx(): number {
    return this.#finger ? REACH_PX.finger : REACH_PX.pointer;
  }

  #looked(): void {
    const { lng, lat }: LngLat = this.#map.getCenter();
    this.#tells.onLook({ longitude: lng, latitude: lat });
  }
}
