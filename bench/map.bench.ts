/** The district's map in Chromium: 20,000 hydrants beside the demo district, the same gestures on both. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fillDemo, openStore } from '@plugside/records';
import type { Browser } from 'playwright-core';
import { clickUntil, framesDuring, openBrowser, openPage, printCompared } from './browser.ts';
import { fillLargeDistrict } from './large-district.ts';
import { copyApp, type Served, serveDatabase } from './served.ts';

const TURNS = 2;

interface Times {
  drawn: number[];
  pan: number[];
  zoom: number[];
  tap: number[];
  near: number[];
}

interface Feature {
  geometry: { type: string; coordinates: [number, number] };
  properties: { id: string; name: string; longitude: number; latitude: number };
}

interface Place {
  id: string;
  name: string;
  longitude: number;
  latitude: number;
}

async function placesOf({ url }: Served, layer: 'hydrants' | 'buildings'): Promise<Place[]> {
  const answer = await fetch(`${url}api/map/${layer}`);
  const { features } = (await answer.json()) as { features: Feature[] };
  return features.map(({ geometry, properties }) => {
    const isPoint = geometry.type === 'Point';
    const [longitude, latitude] = isPoint
      ? geometry.coordinates
      : [properties.longitude, properties.latitude];
    return { id: properties.id, name: properties.name, longitude, latitude };
  });
}

/** A map with one place picked shows it in the middle at this zoom, in tiles of 512 px. */
const PICKED_ZOOM = 17;
const WORLD_PX = 512 * 2 ** PICKED_ZOOM;

/** Where a place is from the middle of such a map [px] (Web Mercator). */
function offsetPx(from: Place, to: Place): { x: number; y: number } {
  const northing = ({ latitude }: Place) =>
    Math.log(Math.tan(Math.PI / 4 + (latitude * Math.PI) / 360)) / (2 * Math.PI);
  return {
    x: ((to.longitude - from.longitude) / 360) * WORLD_PX,
    y: (northing(from) - northing(to)) * WORLD_PX,
  };
}

/** A hydrant, and another and a building that can be clicked on the map around it, clear of all else. */
function findScene(hydrants: readonly Place[], buildings: readonly Place[]) {
  const near = (from: Place, places: readonly Place[]) =>
    places
      .map((place) => ({ place, at: offsetPx(from, place) }))
      .filter(({ at }) => Math.abs(at.x) < 300 && Math.abs(at.y) < 250);
  const middle = Math.floor(hydrants.length / 2);
  for (const hydrant of [...hydrants.slice(middle), ...hydrants.slice(0, middle)]) {
    const others = near(hydrant, hydrants);
    const isClear = (at: { x: number; y: number }, self: Place) =>
      others.every(
        (one) => one.place.id === self.id || Math.hypot(one.at.x - at.x, one.at.y - at.y) > 40,
      );
    const other = others.find(
      ({ place, at }) =>
        place.id !== hydrant.id && Math.hypot(at.x, at.y) > 80 && isClear(at, place),
    );
    const building = near(hydrant, buildings).find(({ place, at }) => isClear(at, place));
    if (other && building) return { hydrant, other, building };
  }
  throw new Error('No hydrant has another and a building in view.');
}

async function timeDistrict(browser: Browser, served: Served): Promise<Times> {
  const [hydrants, buildings] = await Promise.all([
    placesOf(served, 'hydrants'),
    placesOf(served, 'buildings'),
  ]);
  const { hydrant, other, building } = findScene(hydrants, buildings);
  const times: Times = { drawn: [], pan: [], zoom: [], tap: [], near: [] };
  for (let turn = 0; turn < TURNS; turn += 1) {
    const page = await openPage(browser);
    const open = async (search: string) => {
      const from = performance.now();
      await page.goto(`${served.url}district${search}`);
      await page.locator('[data-drawn]').waitFor({ timeout: 60_000 });
      return (performance.now() - from) / 1000;
    };
    times.drawn.push(await open(''));
    const box = await page.locator('.map-box').boundingBox();
    if (!box) throw new Error('The map is not shown.');
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };

    // The whole district in view, then closer: where there is most and where people work.
    times.zoom.push(
      ...(await framesDuring(page, async () => {
        await page.mouse.move(middle.x, middle.y);
        for (let step = 0; step < 24; step += 1) {
          await page.mouse.wheel(0, step < 12 ? -120 : 120);
          await page.waitForTimeout(60);
        }
        await page.waitForTimeout(300);
      })),
    );
    times.pan.push(
      ...(await framesDuring(page, async () => {
        await page.mouse.move(middle.x + 200, middle.y);
        await page.mouse.down();
        for (let step = 0; step < 60; step += 1) {
          await page.mouse.move(middle.x + 200 - step * 7, middle.y + 60 * Math.sin(step / 8));
          await page.waitForTimeout(10);
        }
        await page.mouse.up();
        await page.waitForTimeout(300);
      })),
    );

    await open(`?hydrant=${hydrant.id}`);
    await page.waitForTimeout(800);
    const at = ({ x, y }: { x: number; y: number }) => ({ x: middle.x + x, y: middle.y + y });
    times.tap.push(await clickUntil(page, at(other.at), '.panel', other.place.name));
    await open(`?hydrant=${hydrant.id}`);
    await page.waitForTimeout(800);
    times.near.push(await clickUntil(page, at(building.at), '.panel ol.rows .row-figure', ' '));
    await page.context().close();
  }
  return times;
}

const folder = mkdtempSync(join(tmpdir(), 'plugside-bench-'));
const [demo, large] = [join(folder, 'demo.db'), join(folder, 'large.db')];
const app = join(folder, 'app');
copyApp(app);
const store = await openStore({ file: demo });
await fillDemo(store);
await store.close();
await fillLargeDistrict(large);

const browser = await openBrowser();
const servers: Served[] = [];
try {
  const times: Times[] = [];
  for (const file of [demo, large]) {
    const served = await serveDatabase(file, app);
    servers.push(served);
    times.push(await timeDistrict(browser, served));
  }
  const [small, big] = times as [Times, Times];
  const row = (what: string, key: keyof Times) => ({
    what,
    reference: small[key],
    measured: big[key],
  });
  printCompared(
    'The map in Chromium, drawn without a graphics card',
    ['demo', '20,000 hydrants'],
    [
      row('from the address to the map drawn', 'drawn'),
      row('frame while zooming', 'zoom'),
      row('frame while panning', 'pan'),
      row('from a tap on a hydrant to its facts', 'tap'),
      row('from a building picked to its hydrants', 'near'),
    ],
  );
} finally {
  await browser.close();
  for (const served of servers) await served.stop();
  rmSync(folder, { recursive: true });
}
