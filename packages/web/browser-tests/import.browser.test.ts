import { readFile } from 'node:fs/promises';
import { AxeBuilder } from '@axe-core/playwright';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { openApp, withBrowser } from './open-app.ts';

withBrowser();

/** Invented rows inside the invented district; two of them cannot be understood. */
const CANNERY = [
  'Bldg ID,Building,Address,Lat,Long,Levels,Wanted',
  'IT-1,Import Test Cannery,2 Alder Street,-48.88482,-123.39876,2,4000',
  'IT-2,Import Test Loft,4 Alder Street,-48.88492,-123.39866,3,2000',
  'IT-3,Import Test Shed,6 Alder Street,,,1,2000',
  'IT-4,Import Test Kiln,8 Alder Street,-48.88512,-123.39846,a few,2000',
  '',
].join('\n');

const file = (name: string, text: string) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(text),
});

async function openImport(options: BrowserContextOptions = {}) {
  const app = await openApp(options);
  await app.page.goto(`${inject('appUrl')}import`);
  await app.page.getByRole('heading', { name: 'Bring in a list' }).waitFor();
  return app;
}

async function choose(page: Page, name: string, text: string) {
  await page.getByLabel('File to import').setInputFiles(file(name, text));
  await page.getByRole('button', { name: 'Look at the columns' }).click();
  await page.getByRole('heading', { name: 'Columns' }).waitFor();
}

/** Drops a file where one can be chosen, as from the desktop. */
async function drop(page: Page, name: string, text: string) {
  const dataTransfer = await page.evaluateHandle(
    ([fileName, content]) => {
      const data = new DataTransfer();
      data.items.add(new File([content], fileName));
      return data;
    },
    [name, text] as const,
  );
  await page.locator('.drop-place').dispatchEvent('drop', { dataTransfer });
}

async function pickFrom(page: Page, label: string | RegExp, item: string) {
  await page.getByRole('button', { name: label }).click();
  await page.getByRole('menuitemradio', { name: item, exact: true }).click();
}

const bringIn = async (page: Page) => {
  await page.getByRole('button', { name: /^Bring in \d/ }).click();
  await page.getByRole('heading', { name: /^Brought in/ }).waitFor();
};

/** `added 2, changed 0` → { added: 2 … } */
async function counts(page: Page): Promise<Record<string, number>> {
  const lines = await page
    .locator('.import-counts > div')
    .evaluateAll((all) =>
      all.map((one) => [
        one.querySelector('dt')?.textContent,
        one.querySelector('dd')?.textContent,
      ]),
    );
  return Object.fromEntries(
    lines.map(([name, count]) => [name?.split(' ').at(-1), Number(count?.replaceAll(',', ''))]),
  );
}

interface Listed {
  id: string;
  version: number;
  name: string;
}

async function records(kind: string, source: string): Promise<Listed[]> {
  const url = `${inject('appUrl')}api/records/${kind}?limit=5000&externalSource=${source}`;
  return ((await (await fetch(url)).json()) as { records: Listed[] }).records;
}

async function total(kind: string): Promise<number> {
  const answer = await fetch(`${inject('appUrl')}api/records/${kind}?limit=1`);
  return ((await answer.json()) as { total: number }).total;
}

afterAll(async () => {
  for (const source of ['import-test-buildings', 'import-test-axe-buildings']) {
    for (const { id, version } of await records('buildings', source)) {
      const url = `${inject('appUrl')}api/records/buildings/${id}`;
      await fetch(url, { method: 'DELETE', headers: { 'If-Match': `"${version}"` } });
    }
  }
  for (const { id, version } of await records('stations', 'import-test-stations')) {
    const url = `${inject('appUrl')}api/records/stations/${id}`;
    await fetch(url, { method: 'DELETE', headers: { 'If-Match': `"${version}"` } });
  }
});

describe('a list whose places are geometries', () => {
  it('is mended where it is refused: a place is entered in coordinates', async () => {
    const { page, errors, close } = await openImport();
    const before = await total('stations');
    const feature = (name: string, geometry: object | null) => ({
      type: 'Feature',
      properties: { name },
      geometry,
    });
    const point = (...coordinates: number[]) => ({ type: 'Point', coordinates });
    const list = JSON.stringify({
      type: 'FeatureCollection',
      features: [
        feature('Import test 1', point(-123.3951, -48.8801)),
        feature('Import test 2', null),
        feature('Import test 3', point(-123.3953, -148.8803)),
      ],
    });
    await choose(page, 'import-test-stations.geojson', list);
    await bringIn(page);
    expect(await counts(page)).toMatchObject({ added: 1, refused: 2 });
    const coordinate = (name: string) => page.getByRole('textbox', { name });
    await coordinate('Longitude, row 2').fill('-123.3952');
    await coordinate('Latitude, row 2').fill('-48.8802');
    await coordinate('Longitude, row 3').fill('-123.3953');
    // What was typed outlives the page.
    await page.reload();
    await coordinate('Latitude, row 3').fill("48°52.818'S");
    await page.getByRole('button', { name: 'Bring in 2 mended rows' }).click();
    await expect
      .poll(() => counts(page), { timeout: 30_000 })
      .toMatchObject({ added: 2, unchanged: 1, refused: 0 });
    expect(await total('stations')).toBe(before + 3);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('a list of buildings', () => {
  it('is seen as understood, mapped, brought in, mended in place, never doubled, and planned for', async () => {
    const { page, errors, close } = await openImport();
    const before = await total('buildings');
    await choose(page, 'import-test-buildings.csv', CANNERY);
    expect(await page.getByRole('button', { name: 'Kind of record: buildings' }).count()).toBe(1);
    expect(await page.locator('.unused-columns').textContent()).toContain('Wanted');
    const rows = page.locator('.first-rows > li');
    expect(await rows.nth(2).textContent()).toContain('Refused. The row has no place');
    expect(await rows.nth(3).textContent()).toMatch(/Refused. Storeys/);

    await pickFrom(page, /^Wanted is taken for/, 'Needed fire flow');
    await pickFrom(page, /^Unit of Wanted/, 'L/min');
    // 4000 L/min over 3.785 412 L to the gallon (NIST SP 811) is 1056.7 gpm.
    await rows.first().getByText('1,057 gpm').waitFor();
    expect(await rows.first().textContent()).toContain('import-test-buildings.csv, Wanted');

    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByRole('heading', { name: /^Tried/ }).waitFor();
    expect(await counts(page)).toMatchObject({ added: 2, refused: 2 });
    expect(await total('buildings')).toBe(before);

    // The import is where it was after the page is loaded anew, with what was chosen.
    await page.reload();
    await page.getByRole('heading', { name: /^Tried/ }).waitFor();
    expect(await page.getByRole('button', { name: 'Unit of Wanted: L/min' }).count()).toBe(1);

    await bringIn(page);
    expect(await counts(page)).toMatchObject({ added: 2, refused: 2 });
    expect(await total('buildings')).toBe(before + 2);
    const reasons = await page.locator('.reasons').textContent();
    expect(reasons).toContain('no place: 1 row');
    expect(reasons).toContain('value not understood: 1 row');

    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Download them as CSV' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('import-test-buildings-refused.csv');
    const sheet = await readFile(await download.path(), 'utf8');

    // What is typed outlives the page.
    await page.getByRole('textbox', { name: 'Levels, row 5' }).fill('3');
    await page.reload();
    await page.getByRole('button', { name: 'Bring in 1 mended row' }).click();
    await expect
      .poll(() => counts(page), { timeout: 30_000 })
      .toMatchObject({ added: 1, unchanged: 2, refused: 1 });
    expect(await total('buildings')).toBe(before + 3);

    // The other way: the downloaded sheet mended, and brought in as it is.
    await page.getByRole('link', { name: 'Import another list' }).click();
    const mended = sheet.replace('6 Alder Street,,', '6 Alder Street,-48.88502,-123.39856');
    await choose(page, download.suggestedFilename(), mended);
    await page.getByText('as last time for “import-test-buildings”').waitFor();
    await bringIn(page);
    expect(await counts(page)).toMatchObject({ added: 1, changed: 0, refused: 1 });
    expect(await total('buildings')).toBe(before + 4);

    // The same file again: its columns are remembered, and nothing is doubled.
    await page.getByRole('link', { name: 'Import another list' }).click();
    await choose(page, 'import-test-buildings.csv', CANNERY);
    await page.getByText('The columns are taken as last time').waitFor();
    await bringIn(page);
    expect(await counts(page)).toMatchObject({ added: 0, changed: 0, unchanged: 2, refused: 2 });

    // Next month's file has another name: dropped here, and taken as the same list.
    await page.getByRole('link', { name: 'Import another list' }).click();
    await drop(page, 'import-test-buildings-december.csv', CANNERY);
    await page.getByRole('button', { name: 'Look at the columns' }).click();
    await page.getByRole('button', { name: 'Yes, the same list' }).click();
    await page.getByRole('button', { name: 'Unit of Wanted: L/min' }).waitFor();
    await bringIn(page);
    expect(await counts(page)).toMatchObject({ added: 0, changed: 0, unchanged: 2, refused: 2 });
    const listed = await records('buildings', 'import-test-buildings');
    expect(listed.map(({ name }) => name).sort()).toEqual([
      'Import Test Cannery',
      'Import Test Kiln',
      'Import Test Loft',
      'Import Test Shed',
    ]);

    await page.getByRole('link', { name: /district’s map/ }).click();
    await page.getByLabel('Find by name or address').fill('Import Test Cannery');
    await page.getByRole('button', { name: /^Import Test Cannery.*1,057 gpm/ }).click();
    const near = page.locator('#near-hydrants ~ ol .row');
    await near.first().waitFor();
    const lengths = await near.locator('.row-figure').allTextContents();
    const feet = lengths.map((text) => Number(text.replace(/[^\d]/g, '')));
    expect(feet.length).toBeGreaterThan(1);
    expect(lengths[0]).toMatch(/ ft$/);
    expect([...feet].sort((a, b) => a - b)).toEqual(feet);
    await near.filter({ hasNotText: 'out of service' }).first().click();
    const answer = page.locator('.lay-answer');
    await answer.getByText('to the building').waitFor();
    const said = await answer.textContent();
    expect(said).toMatch(/[\d,]+ gpm to the building/);
    expect(said).toMatch(/(short of|over) the 1,057 gpm needed/);
    // Which limit holds the flow where it is, named with its value.
    expect(said).toMatch(/\(\d[^)]*(psi|gpm)[^)]*\) (is|are) the limits?\.$/);
    expect(errors).toEqual([]);
    await close();
  }, 150_000);

  it('is not run with a coordinate system that is not known', async () => {
    const { page, close } = await openImport();
    await choose(page, 'import-test-crs-buildings.csv', CANNERY);
    const crs = page.getByRole('textbox', { name: 'Coordinate system' });
    await crs.fill('EPSG:999999');
    await crs.press('Enter');
    await page.getByText('nothing can be brought in yet').waitFor();
    expect(await page.getByRole('button', { name: /^Bring in/ }).count()).toBe(0);
    expect(await page.getByText('EPSG:999999 is in no list that is known').count()).toBe(2);
    await crs.fill('EPSG:4326');
    await crs.press('Enter');
    await page.getByRole('button', { name: 'Bring in 4 rows' }).waitFor();
    await close();
  });
});

describe('a large list', () => {
  it('cancelled in the middle leaves the records as they were', async () => {
    const { page, close } = await openImport();
    const before = await total('hydrants');
    const rows = Array.from(
      { length: 100_000 },
      (_, n) => `IT-${n},H,-48.88${String(n % 1000).padStart(3, '0')},-123.39`,
    );
    await choose(page, 'import-test-hydrants.csv', ['id,name,lat,lon', ...rows].join('\n'));
    await page.getByRole('button', { name: 'Bring in 100,000 rows' }).click();
    const bar = page.getByRole('progressbar', { name: /^Going through/ });
    await expect
      .poll(async () => Number(await bar.getAttribute('aria-valuenow')), {
        interval: 50,
        timeout: 30_000,
      })
      .toBeGreaterThan(0);
    expect(await page.getByText('Cancelling writes nothing').count()).toBe(1);
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('button', { name: 'Bring in 100,000 rows' }).waitFor();
    expect(await total('hydrants')).toBe(before);
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByText('the records are as they were').waitFor();
    await close();
  });
});

describe('what cannot go on', () => {
  it('is refused before it is sent, with what to do', async () => {
    const { page, close } = await openImport();
    await page.getByLabel('File to import').setInputFiles(file('hydrants.xlsx', 'PK'));
    expect(await page.getByRole('alert').textContent()).toContain('Save the sheet as CSV');
    expect(await page.getByRole('button', { name: 'Look at the columns' }).count()).toBe(0);
    await close();
  });

  it('says where no server answers, and goes on when one does', async () => {
    const { page, close } = await openImport();
    await page.getByLabel('File to import').setInputFiles(file('hydrants.csv', CANNERY));
    await page.context().setOffline(true);
    await page.getByRole('button', { name: 'Look at the columns' }).click();
    await page.getByText('No records answer here').waitFor();
    await page.context().setOffline(false);
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('button', { name: 'Look at the columns' }).click();
    await page.getByRole('heading', { name: 'Columns' }).waitFor();
    await close();
  });

  it('says that an import is gone, and how to go on', async () => {
    const { page, close } = await openImport();
    await page.goto(`${inject('appUrl')}import/00000000-0000-4000-8000-000000000000`);
    await page.getByText('This import is no longer here').waitFor();
    await page.getByRole('link', { name: 'Import another list' }).click();
    await page.getByRole('heading', { name: 'Bring in a list' }).waitFor();
    await close();
  });

  it('says why a file could not be read', async () => {
    const { page, close } = await openImport();
    await page.getByLabel('File to import').setInputFiles(file('roads.zip', 'PK\u0003\u0004 none'));
    await page.getByRole('button', { name: 'Look at the columns' }).click();
    await page.getByRole('heading', { name: 'roads.zip was not brought in' }).waitFor();
    await close();
  });
});

describe('the screens', () => {
  for (const width of [390, 1440]) {
    for (const colorScheme of ['light', 'dark'] as const) {
      it(`have no faults for assistive technology at ${width}, ${colorScheme}`, async () => {
        const viewport = { width, height: 844 };
        const { page, close } = await openImport({
          colorScheme,
          viewport,
          hasTouch: width === 390,
        });
        const look = async (what: string) => {
          expect((await new AxeBuilder({ page }).analyze()).violations, what).toEqual([]);
          const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
          expect(over, what).toBeLessThanOrEqual(0);
          if (width !== 390) return;
          const low = await page
            .locator('main button:visible, main input:visible, main summary:visible')
            .evaluateAll((all) =>
              all
                .filter((one) => one.getBoundingClientRect().height < 43.5)
                .map((one) => one.textContent),
            );
          expect(low, what).toEqual([]);
        };
        await look('choosing');
        await choose(page, 'import-test-axe-buildings.csv', CANNERY);
        await look('columns');
        await bringIn(page);
        await page.locator('.mend-row').first().waitFor();
        await look('report');
        await close();
      });
    }
  }
});
