import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { openApp, withBrowser } from './open-app.ts';

withBrowser();

const MARK = 'PickTest';
const at = (path: string) => `${inject('appUrl')}${path}`;

interface Kept {
  id: string;
  version: number;
}

async function create(kind: string, json: object): Promise<Kept> {
  const answer = await fetch(at(`api/records/${kind}`), {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ name: MARK, longitude: -123.3, latitude: -48.8, ...json }),
  });
  if (!answer.ok) throw new Error(await answer.text());
  return (await answer.json()) as Kept;
}

afterAll(async () => {
  for (const kind of ['hydrants', 'buildings']) {
    const answer = await fetch(at(`api/records/${kind}?search=${MARK}&limit=100`));
    const { records } = (await answer.json()) as { records: Kept[] };
    for (const { id, version } of records) {
      await fetch(at(`api/records/${kind}/${id}`), {
        method: 'DELETE',
        headers: { 'If-Match': `"${version}"` },
      });
    }
  }
});

const field = (page: Page, label: string) =>
  page.getByRole('textbox', { name: label, exact: true });

/** What has the focus, as it is called. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const node = document.activeElement;
    return node?.getAttribute('aria-label') ?? node?.textContent?.trim() ?? '';
  });

/** Presses Tab until that has the focus; ends where it never does. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let pressed = 0; pressed < 40; pressed += 1) {
    if (name.test(await focused(page))) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reaches ${name}; it stands on ${await focused(page)}.`);
}

/** Metres that a degree has there, by the earth's mean radius of 6,371 km. */
const M_PER_DEGREE = (6_371_000 * Math.PI) / 180;

describe('a place picked on the map, by keys alone', () => {
  it('goes east with the map, is taken into both fields, and the keys lead on to the next field', async () => {
    const { id } = await create('hydrants', {});
    const { page, errors, close } = await openApp();
    await page.goto(at(`records/hydrants/${id}/edit`));
    const [longitude, latitude] = [field(page, 'Longitude'), field(page, 'Latitude')];
    await longitude.waitFor();
    await longitude.focus();
    await tabTo(page, /^Pick the place on the map$/);
    await page.keyboard.press('Enter');
    const take = page.getByRole('button', { name: 'Take this place' });
    await expect.poll(() => take.isEnabled(), { timeout: 60_000 }).toBe(true);
    const told = page.locator('.place-pick-told');
    await expect.poll(() => told.textContent()).toContain('48.80000° S');

    // The map begins where the hydrant stands, and is moved under the cross.
    await tabTo(page, /^Map of the district$/);
    const before = await told.textContent();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => told.textContent()).not.toBe(before);
    await tabTo(page, /^Take this place$/);
    await page.keyboard.press('Enter');
    await expect.poll(() => told.textContent()).toContain('Taken into the fields above');
    await expect.poll(async () => Number(await longitude.inputValue())).toBeGreaterThan(-123.3);
    // A step is a part of what is in view: some hundred metres at most, due east.
    const [east, north] = [
      (Number(await longitude.inputValue()) + 123.3) * M_PER_DEGREE * Math.cos(0.8517),
      (Number(await latitude.inputValue()) + 48.8) * M_PER_DEGREE,
    ];
    expect(east).toBeGreaterThan(5);
    expect(east).toBeLessThan(1000);
    expect(Math.abs(north)).toBeLessThan(1);

    // No trap: Tab goes on past the map, and back again over it.
    await tabTo(page, /^$|Elevation/);
    for (let pressed = 0; pressed < 8; pressed += 1) await page.keyboard.press('Shift+Tab');
    expect(await focused(page)).not.toMatch(/Take this place|Map of the district|Zoom/);
    const { violations } = await new AxeBuilder({ page }).include('.record-form').analyze();
    expect(violations.map((one) => one.id)).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('an outline on the map, by keys alone', () => {
  it('gets a point, moves one by small and big steps, loses the last, and the focus stays on the map', async () => {
    const corners = [
      [-123.3004, -48.8004],
      [-123.2996, -48.8004],
      [-123.2996, -48.7998],
      [-123.3004, -48.7998],
    ];
    const { id } = await create('buildings', { footprint: [[...corners, corners[0]]] });
    const { page, errors, close } = await openApp();
    await page.goto(at(`records/buildings/${id}/edit`));
    const list = field(page, 'Outline');
    await list.waitFor();
    const places = async () =>
      (await list.inputValue()).split('\n').map((line) => line.split(', ').map(Number));
    await list.focus();
    await tabTo(page, /^Draw it on the map$/);
    await page.keyboard.press('Enter');
    await page.locator('.outline-map[data-drawn]').waitFor({ timeout: 60_000 });
    await expect.poll(() => page.locator('.outline-point').count()).toBe(4);

    // A point between two, by Enter; it has the focus, and goes south.
    await tabTo(page, /^Add a point before 3/);
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await places()).length).toBe(5);
    await expect.poll(() => focused(page)).toMatch(/^Point 3:/);
    const begun = (await places())[2]!;
    await page.keyboard.press('ArrowDown');
    await expect.poll(async () => (await places())[2]![1]!).toBeLessThan(begun[1]!);
    const small = begun[1]! - (await places())[2]![1]!;
    await page.keyboard.press('Shift+ArrowUp');
    await expect.poll(async () => (await places())[2]![1]!).toBeGreaterThan(begun[1]!);
    // Up 24 px from 4 px below where it began: five small steps above it.
    const above = (await places())[2]![1]! - begun[1]!;
    expect(above / small).toBeCloseTo(5, 0);

    // The last point taken away: the one before it has the focus.
    await tabTo(page, /^Point 5:/);
    await page.keyboard.press('Delete');
    await expect.poll(async () => (await places()).length).toBe(4);
    await expect.poll(() => focused(page)).toMatch(/^Point 4:/);

    // No trap: the buttons under the map are reached, and undo brings it back.
    await tabTo(page, /^Undo$/);
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await places()).length).toBe(5);
    expect((await places())[4]).toEqual(corners[3]);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('a list from far away', () => {
  it('is told with its distance before it is brought in, and shown beside the district, north up', async () => {
    const { page, errors, close } = await openApp();
    await page.goto(at('import'));
    // One degree of latitude south of the invented district's middle: 111 km, 69 mi.
    const rows = [0, 1, 2, 3].map(
      (n) => `PT-${n},${MARK} far ${n},${n} Far Road,-49.88,${-123.39 + n / 1000},2,1000`,
    );
    const text = ['Bldg ID,Building,Address,Lat,Long,Levels,Wanted', ...rows, ''].join('\n');
    await page.getByLabel('File to import').setInputFiles({
      name: 'far-buildings.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(text),
    });
    await page.getByRole('button', { name: 'Look at the columns' }).click();
    const picture = page.getByRole('img', { name: /The district as a square/ });
    await picture.waitFor();
    const words = (await page.locator('.whereabouts').textContent()) ?? '';
    const miles = Number(/lie about ([\d.,]+) mi/.exec(words)?.[1]);
    expect(miles).toBeGreaterThan(60);
    expect(miles).toBeLessThan(75);
    // Dots under the square, all within the picture.
    const box = (await picture.boundingBox())!;
    const square = (await picture.locator('rect').boundingBox())!;
    const dots = await picture.locator('circle').evaluateAll((all) =>
      all.map((one) => {
        const { x, y, right, bottom } = one.getBoundingClientRect();
        return { x, y, right, bottom };
      }),
    );
    expect(dots).toHaveLength(4);
    for (const dot of dots) {
      expect(dot.y).toBeGreaterThan(square.y + square.height);
      expect(dot.x).toBeGreaterThanOrEqual(box.x);
      expect(dot.right).toBeLessThanOrEqual(box.x + box.width);
      expect(dot.bottom).toBeLessThanOrEqual(box.y + box.height);
    }
    const { violations } = await new AxeBuilder({ page }).include('.whereabouts').analyze();
    expect(violations.map((one) => one.id)).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });
});
