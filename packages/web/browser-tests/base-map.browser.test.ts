import type { Page } from 'playwright-core';
import { afterEach, describe, expect, inject, it } from 'vitest';
import { fromApi, openDistrict, placesOf, shownOf } from './district-page.ts';
import { withBrowser } from './open-app.ts';

withBrowser();

/** Small: every pixel of the base map is drawn without a graphics card here. */
const viewport = { width: 760, height: 480 };

/** Of every test tile. */
const TILE = [200, 0, 200] as const;
const tilesShown = async (page: Page) => (await shownOf(page, TILE)).count;

async function nameBaseMap(value: object): Promise<void> {
  const answer = await fetch(`${inject('appUrl')}api/records/settings`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'base map', value }),
  });
  if (!answer.ok) throw new Error(await answer.text());
}

afterEach(async () => {
  const { records } = await fromApi<{ records: { id: string; version: number }[] }>(
    `/records/settings?name=${encodeURIComponent('base map')}`,
  );
  for (const { id, version } of records) {
    await fetch(`${inject('appUrl')}api/records/settings/${id}`, {
      method: 'DELETE',
      headers: { 'if-match': `"${version}"` },
    });
  }
});

const tilesUrl = () => `${inject('tilesUrl')}{z}/{x}/{y}.png`;

describe('a base map', () => {
  it('is not there, and nothing of it is asked for, until it is named', async () => {
    const { page, close } = await openDistrict({ viewport });
    expect(await tilesShown(page)).toBe(0);
    expect(await page.locator('.map-credit').count()).toBe(0);
    await close();
  });

  it('from another server is drawn under the streets, with its owner named, and nothing else of that server is asked for', async () => {
    await nameBaseMap({ url: tilesUrl(), attribution: 'Example survey' });
    const { page, errors, close } = await openDistrict({ viewport });
    await expect.poll(() => tilesShown(page), { timeout: 20_000 }).toBeGreaterThan(10_000);
    expect(await page.locator('.map-credit').textContent()).toBe('Example survey');
    expect(await page.locator('.map-notice').count()).toBe(0);
    // The streets lie over it.
    const [hydrant] = await placesOf('hydrants');
    await page.goto(`${inject('appUrl')}district?hydrant=${hydrant!.id}`);
    await page.locator('[data-drawn]').waitFor();
    const SHEET = [0xff, 0xfd, 0xf9] as const;
    await expect
      .poll(async () => (await shownOf(page, SHEET)).count, { timeout: 20_000 })
      .toBeGreaterThan(1000);
    expect(errors).toEqual([]);
    await close();
  });

  it('that does not come leaves the streets, and is said to be missing', async () => {
    await nameBaseMap({
      url: 'http://127.0.0.1:9/{z}/{x}/{y}.png',
      attribution: 'Nobody',
    });
    const [building] = await placesOf('buildings');
    const { page, close } = await openDistrict({ viewport, search: `?building=${building!.id}` });
    await page.getByText(/The base map does not come/).waitFor();
    expect(await page.locator('.map-credit').count()).toBe(0);
    await page.locator('li .row-figure').first().waitFor();
    const SHEET = [0xff, 0xfd, 0xf9] as const;
    expect((await shownOf(page, SHEET)).count).toBeGreaterThan(1000);
    await close();
  });

  it('that is named wrongly is told in words', async () => {
    await nameBaseMap({ url: 'http://127.0.0.1:9/tiles.png', attribution: 'Nobody' });
    const { page, close } = await openDistrict({ viewport });
    await page.getByText(/The setting "base map" is not understood: url/).waitFor();
    await close();
  });

  it('from a file of the server is drawn without another server, with its own words of whose it is', async () => {
    const appUrl = inject('tiledAppUrl');
    const asked: string[] = [];
    const { page, errors, close } = await openDistrict({ viewport, appUrl });
    page.on('request', (request) => asked.push(request.url()));
    await page.reload();
    await page.locator('[data-drawn]').waitFor();
    await expect.poll(() => tilesShown(page), { timeout: 20_000 }).toBeGreaterThan(10_000);
    await expect.poll(() => page.locator('.map-credit').textContent()).toBe('Test survey');
    expect(asked.filter((url) => !url.startsWith(appUrl) && !/^(data|blob):/.test(url))).toEqual(
      [],
    );
    expect(asked.some((url) => url.endsWith('/api/map/base-map.pmtiles'))).toBe(true);
    expect(errors).toEqual([]);
    await close();
  });

  it('is dimmed by night', async () => {
    await nameBaseMap({ url: tilesUrl(), attribution: 'Example survey' });
    const { page, close } = await openDistrict({ viewport, colorScheme: 'dark' });
    await page.locator('.map-credit').waitFor();
    await page.waitForTimeout(1000);
    const picture = await page.locator('.map-place').screenshot();
    const brightest = await page.evaluate(async (data) => {
      const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const pen = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d')!;
      pen.drawImage(bitmap, 0, 0);
      // A corner of the map, where there is the base map alone.
      return Math.max(...pen.getImageData(40, 40, 1, 1).data.slice(0, 3));
    }, picture.toString('base64'));
    expect(brightest).toBeLessThan(90);
    expect(brightest).toBeGreaterThan(10);
    await close();
  });
});
