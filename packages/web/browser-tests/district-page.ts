/** The district in the browser, and what the API says of it, for tests. */
import type { BrowserContextOptions, Page } from 'playwright-core';
import { inject } from 'vitest';
import { type OpenedApp, openApp } from './open-app.ts';

export interface Place {
  id: string;
  name: string;
  longitude: number;
  latitude: number;
  elevationFt: number | null;
}

export async function fromApi<T>(path: string): Promise<T> {
  const answer = await fetch(`${inject('appUrl')}api${path}`);
  if (!answer.ok) throw new Error(await answer.text());
  return (await answer.json()) as T;
}

interface Layer {
  features: {
    geometry: { type: string; coordinates: [number, number] };
    properties: Place & Record<string, unknown>;
  }[];
}

/** Every place of a layer; a building's place is its point inside. */
export async function placesOf(
  layer: 'hydrants' | 'buildings' | 'stations' | 'water-sources',
): Promise<(Place & Record<string, unknown>)[]> {
  const { features } = await fromApi<Layer>(`/map/${layer}`);
  return features.map(({ geometry, properties }) => {
    const [longitude, latitude] =
      geometry.type === 'Point'
        ? geometry.coordinates
        : [properties.longitude, properties.latitude];
    return { ...properties, longitude, latitude };
  });
}

/** Mean radius of the Earth, 6,371.0088 km ("Geodetic Reference System 1980", H. Moritz, 2000), in feet of 0.3048 m. */
const EARTH_FT = 6_371_008.8 / 0.3048;

/** Great-circle distance ("Virtues of the Haversine", R. W. Sinnott, Sky and Telescope 68, 1984) [ft]; within 0.6 % of the ellipsoid's. */
export function haversineFt(
  a: { longitude: number; latitude: number },
  b: { longitude: number; latitude: number },
): number {
  const radians = Math.PI / 180;
  const dLatitude = (b.latitude - a.latitude) * radians;
  const dLongitude = (b.longitude - a.longitude) * radians;
  const half =
    Math.sin(dLatitude / 2) ** 2 +
    Math.cos(a.latitude * radians) * Math.cos(b.latitude * radians) * Math.sin(dLongitude / 2) ** 2;
  return 2 * EARTH_FT * Math.asin(Math.sqrt(half));
}

/** Opens the district at an address within it, and waits until its map is drawn. */
export async function openDistrict(
  options: BrowserContextOptions & { search?: string; appUrl?: string } = {},
): Promise<OpenedApp> {
  const { search = '', appUrl = inject('appUrl'), ...context } = options;
  const app = await openApp(context);
  await app.page.goto(`${appUrl}district${search}`);
  await app.page.locator('[data-drawn]').waitFor();
  return app;
}

/** The number in a text such as "1,045 ft". */
export function numberIn(text: string | null): number {
  return Number(/[\d,.]+/.exec(text ?? '')?.[0].replaceAll(',', ''));
}

/** Street under the lay, in the panel. */
export const layLength = (page: Page) =>
  page.locator('.lay-numbers dd').first().textContent().then(numberIn);

/** Hose laid over it, in the panel. */
export const hoseLaid = (page: Page) =>
  page.locator('.lay-numbers dd').nth(2).textContent().then(numberIn);

/** Most places told of a colour, spread evenly over all of them. */
const MOST_PLACES = 500;

interface Shown {
  /** Pixels that have the colour, and whose neighbours have it. */
  count: number;
  /** Some of them in the page's own pixels, row by row. */
  places: { x: number; y: number }[];
}

/** What the map shows of a colour, with neighbours of the same colour. */
export async function shownOf(
  page: Page,
  [red, green, blue]: readonly [number, number, number],
): Promise<Shown> {
  const box = await page.locator('.map-place').boundingBox();
  if (!box) throw new Error('The map is not shown.');
  const picture = await page.screenshot({ clip: box });
  const { count, places } = await page.evaluate(
    async ([data, r, g, b, most]) => {
      const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const { width, height } = bitmap;
      const pen = new OffscreenCanvas(width, height).getContext('2d')!;
      pen.drawImage(bitmap, 0, 0);
      const { data: pixels } = pen.getImageData(0, 0, width, height);
      const is = (i: number) =>
        pixels[4 * i] === r && pixels[4 * i + 1] === g && pixels[4 * i + 2] === b;
      const found: { x: number; y: number }[] = [];
      for (let y = 1; y < height - 1; y += 1) {
        for (let x = 1; x < width - 1; x += 1) {
          const i = y * width + x;
          if (!is(i) || !is(i - 1) || !is(i + 1) || !is(i - width) || !is(i + width)) continue;
          found.push({ x, y });
        }
      }
      const step = Math.max(1, Math.ceil(found.length / most));
      return { count: found.length, places: found.filter((_, i) => i % step === 0) };
    },
    [picture.toString('base64'), red, green, blue, MOST_PLACES] as const,
  );
  return { count, places: places.map(({ x, y }) => ({ x: x + box.x, y: y + box.y })) };
}

/** `--water` by day: the lay's colour. */
const WATER = [0x0a, 0x6c, 0x86] as const;

/** A point in the middle of the drawn lay. */
export async function pointOnLay(page: Page): Promise<{ x: number; y: number }> {
  const { places } = await shownOf(page, WATER);
  const middle = places[Math.floor(places.length / 2)];
  if (!middle) throw new Error('No lay is drawn.');
  return middle;
}

type Finger = readonly [x: number, y: number];

/** Fingers on the screen, as the browser's own protocol has them. */
export async function fingers(page: Page) {
  const protocol = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: readonly Finger[]) =>
    protocol.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: at.map(([x, y], id) => ({ x, y, id })),
    });
  const steps = 6;
  return {
    tap: async (at: Finger) => {
      await touch('touchStart', [at]);
      await touch('touchEnd', []);
    },
    /** Moves one finger or more from where they are put down to where they are lifted. */
    move: async (from: readonly Finger[], to: readonly Finger[]) => {
      await touch('touchStart', from);
      for (let step = 1; step <= steps; step += 1) {
        const at = from.map(([x, y], i): Finger => {
          const [toX, toY] = to[i]!;
          return [x + ((toX - x) * step) / steps, y + ((toY - y) * step) / steps];
        });
        await touch('touchMove', at);
        await page.waitForTimeout(20);
      }
      await touch('touchEnd', []);
    },
  };
}
