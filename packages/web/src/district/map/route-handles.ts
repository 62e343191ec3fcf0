/** Handles on the route: places that the hose goes by, dragged with mouse, finger or arrow keys. */
import type { Place } from '@plugside/records/streets';
import * as maplibre from 'maplibre-gl';

export interface HandleTells {
  onViaAdded(index: number, place: Place): void;
  onViaMoved(index: number, place: Place): void;
  onViaRemoved(index: number): void;
  onStepEnd(): void;
}

const STEP_PX = 8;
const BIG_STEP_PX = 40;
/** Less than this is a press, not a drag. */
const DRAG_FROM_PX = 4;
/** A fingertip rolls by as much without meaning to move. */
const FINGER_DRAG_FROM_PX = 8;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

export class RouteHandles {
  readonly #map: maplibre.Map;
  readonly #tells: HandleTells;
  #markers: maplibre.Marker[] = [];
  #dragging = false;
  /** Ends the drag under way; nothing where there is none. */
  #stop = () => {};

  constructor(map: maplibre.Map, tells: HandleTells) {
    this.#map = map;
    this.#tells = tells;
  }

  get dragging(): boolean {
    return this.#dragging;
  }

  /** One handle for each place; those that stay keep their focus. */
  show(via: readonly Place[]): void {
    while (this.#markers.length > via.length) this.#markers.pop()?.remove();
    via.forEach(({ longitude, latitude }, index) => {
      const marker = this.#markers[index];
      if (marker) {
        marker.setLngLat([longitude, latitude]);
        return;
      }
      this.#markers.push(
        new maplibre.Marker({ element: this.#handle(index) })
          .setLngLat([longitude, latitude])
          .addTo(this.#map),
      );
    });
  }

  /** Takes hold of the route where it has no handle yet: moving makes one. */
  dragNew(leg: number, from: { x: number; y: number }): void {
    let made = false;
    this.#follow(from, (place) => {
      if (made) this.#tells.onViaMoved(leg, place);
      else this.#tells.onViaAdded(leg, place);
      made = true;
    });
  }

  #handle(index: number): HTMLElement {
    const handle = document.createElement('button');
    handle.type = 'button';
    handle.className = 'route-handle';
    handle.textContent = String(index + 1);
    handle.setAttribute(
      'aria-label',
      `Point ${index + 1} of the lay: arrow keys move it, Delete takes it away`,
    );
    handle.addEventListener('keydown', (event) => this.#keyed(event, index));
    handle.addEventListener('keyup', (event) => {
      if (ARROWS[event.key]) this.#tells.onStepEnd();
    });
    handle.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return;
      event.stopPropagation();
      this.#follow(this.#pointIn(event), (place) => this.#tells.onViaMoved(index, place));
    });
    // The map must not pan under it.
    for (const type of ['mousedown', 'touchstart'] as const) {
      handle.addEventListener(type, (event) => event.stopPropagation());
    }
    return handle;
  }

  #keyed(event: KeyboardEvent, index: number): void {
    if (event.key === 'Delete' || event.key === 'Backspace') {
      event.preventDefault();
      this.#tells.onViaRemoved(index);
      return;
    }
    const arrow = ARROWS[event.key];
    const marker = this.#markers[index];
    if (!arrow || !marker) return;
    event.preventDefault();
    event.stopPropagation();
    const by = event.shiftKey ? BIG_STEP_PX : STEP_PX;
    const { x, y } = this.#map.project(marker.getLngLat());
    this.#tells.onViaMoved(index, this.#placeAt({ x: x + arrow[0] * by, y: y + arrow[1] * by }));
  }

  /** Follows the pointer that has just been pressed until it is let go. */
  #follow(from: { x: number; y: number }, onMove: (place: Place) => void): void {
    this.#stop();
    this.#map.dragPan.disable();
    let moved = false;
    let pointer: number | null = null;
    const move = (event: PointerEvent) => {
      pointer ??= event.pointerId;
      if (event.pointerId !== pointer) return;
      const at = this.#pointIn(event);
      const least = event.pointerType === 'mouse' ? DRAG_FROM_PX : FINGER_DRAG_FROM_PX;
      if (!moved && Math.hypot(at.x - from.x, at.y - from.y) < least) return;
      moved = true;
      this.#dragging = true;
      this.#map.getCanvas().style.cursor = 'grabbing';
      onMove(this.#placeAt(at));
    };
    // A moving finger would else scroll the page, and its pointer be taken away.
    const hold = (event: TouchEvent) => event.preventDefault();
    const end = (event?: PointerEvent) => {
      if (event && pointer !== null && event.pointerId !== pointer) return;
      stop.abort();
      this.#stop = () => {};
      this.#map.dragPan.enable();
      this.#map.getCanvas().style.cursor = '';
      if (moved) this.#tells.onStepEnd();
      // The click that ends a drag picks nothing: it comes before the next task.
      setTimeout(() => {
        this.#dragging = false;
      });
    };
    this.#stop = () => end();
    const stop = new AbortController();
    const { signal } = stop;
    window.addEventListener('pointermove', move, { signal });
    window.addEventListener('pointerup', end, { signal });
    window.addEventListener('pointercancel', end, { signal });
    window.addEventListener('touchmove', hold, { signal, passive: false });
    // A second finger means to zoom: the drag ends where it is. The press itself is over by then.
    setTimeout(() => {
      if (signal.aborted) return;
      window.addEventListener('pointerdown', () => end(), { signal, capture: true });
    });
  }

  #pointIn({ clientX, clientY }: PointerEvent): { x: number; y: number } {
    const { left, top } = this.#map.getCanvas().getBoundingClientRect();
    return { x: clientX - left, y: clientY - top };
  }

  #placeAt({ x, y }: { x: number; y: number }): Place {
    const { lng, lat } = this.#map.unproject([x, y]);
    return { longitude: lng, latitude: lat };
  }
}
