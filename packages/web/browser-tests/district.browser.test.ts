import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  fingers,
  fromApi,
  haversineFt,
  hoseLaid,
  layLength,
  numberIn,
  openDistrict,
  type Place,
  placesOf,
  pointOnLay,
} from './district-page.ts';
import { openApp, withBrowser } from './open-app.ts';

withBrowser();

/** A sphere's distance may be off the ellipsoid's by so much. */
const SPHERE = 0.006;

let hydrants: Awaited<ReturnType<typeof placesOf>>;
let building: Place;
let hydrant: Place;

const near = (to: Place) =>
  [...hydrants]
    .filter(({ status }) => status === 'in service')
    .sort((a, b) => haversineFt(a, to) - haversineFt(b, to));

beforeAll(async () => {
  hydrants = await placesOf('hydrants');
  const buildings = await placesOf('buildings');
  const names = buildings.map(({ name }) => name);
  // In town, by a name that no other has, and needing a known flow.
  building = buildings.find(
    (one) =>
      one.neededGpm !== null &&
      names.indexOf(one.name) === names.lastIndexOf(one.name) &&
      haversineFt(one, near(one)[3]!) < 900,
  )!;
  hydrant = near(building)[2]!;
});

const search = () => `?building=${building.id}&hydrant=${hydrant.id}`;
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ }).first();

async function openLay(options: Parameters<typeof openDistrict>[0] = {}) {
  const app = await openDistrict({ search: search(), ...options });
  await app.page.locator('.lay-figure').waitFor();
  return app;
}

describe('from a building to its plan', () => {
  it('finds the building, lists hydrants by hose length, lays from one and solves the plan', async () => {
    const { page, errors, close } = await openDistrict();
    await page.getByLabel('Find by name or address').fill(building.name);
    await page
      .locator('.row')
      .filter({ has: page.getByText(building.name, { exact: true }) })
      .click();
    await page.locator('.rows .row-figure').first().waitFor();
    expect(await page.getByRole('link', { name: 'Drill it' }).getAttribute('href')).toContain(
      `/drill/new?building=${building.id}`,
    );

    const rows = await page.locator('li .row').evaluateAll((nodes) =>
      nodes.map((node) => ({
        name: node.querySelector('.row-name')?.textContent ?? '',
        length: node.querySelector('.row-figure')?.textContent ?? '',
      })),
    );
    expect(rows.length).toBeGreaterThanOrEqual(8);
    const lengths = rows.map(({ length }) => numberIn(length));
    expect([...lengths].sort((a, b) => a - b)).toEqual(lengths);
    const counted = rows.filter(({ name }, i) => {
      const crowFt = haversineFt(hydrants.find((one) => one.name === name)!, building);
      expect(lengths[i], name).toBeGreaterThanOrEqual(crowFt * (1 - SPHERE) - 1);
      return lengths[i]! > crowFt * 1.02;
    });
    // Streets turn corners: most hose is longer than the crow's way.
    expect(counted.length).toBeGreaterThan(rows.length / 2);

    await page.locator('li .row').filter({ hasText: hydrant.name }).first().click();
    await page.locator('.lay-figure').waitFor();
    const listed = rows.find(({ name }) => name === hydrant.name)!;
    expect(await layLength(page)).toBe(numberIn(listed.length));
    const riseFt = building.elevationFt! - hydrant.elevationFt!;
    const rise = await page.locator('.lay-numbers dd').nth(1).textContent();
    expect(rise).toMatch(riseFt > 0.5 ? /^up/ : riseFt < -0.5 ? /^down/ : /^level$/);
    if (Math.abs(riseFt) >= 0.5) expect(numberIn(rise)).toBe(Math.round(Math.abs(riseFt)));
    expect(numberIn(await page.locator('.lay-figure').textContent())).toBeGreaterThan(100);
    expect(await page.locator('.lay-answer').textContent()).toMatch(/\(\d+ psi\) is the limit\./);
    expect(errors).toEqual([]);
    await close();
  });

  it('opens the plan in the lay with the hose laid: whole sections over the street', async () => {
    const { page, close } = await openLay();
    const [streetFt, lengthFt] = [await layLength(page), await hoseLaid(page)];
    // Large-diameter hose in sections of 100 ft (common practice, no source).
    expect(lengthFt).toBe(Math.ceil(streetFt / 100) * 100);
    expect(await page.locator('.lay-numbers dt').nth(2).textContent()).toBe(
      `Hose laid, ${lengthFt / 100} sections of 100 ft`,
    );
    await page.getByRole('button', { name: 'Open in the lay' }).click();
    await page.locator('.answer').waitFor();
    expect(await page.getByRole('spinbutton', { name: /^Lay length/ }).inputValue()).toBe(
      lengthFt.toLocaleString('en-US'),
    );
    expect(await page.getByLabel('Title of the plan').inputValue()).toBe(
      `${building.name} from ${hydrant.name}`,
    );
    await close();
  });

  it('saves the plan: the records hold the way that was dragged, as long as it was said to be', async () => {
    const { page, close } = await openLay();
    const before = await layLength(page);
    const at = await pointOnLay(page);
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x + 90, at.y + 60, { steps: 6 });
    await page.mouse.move(at.x + 170, at.y + 120, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => layLength(page)).toBeGreaterThan(before);
    await page.waitForTimeout(300);
    const lengthFt = await layLength(page);
    await page.getByRole('button', { name: 'Save the plan' }).click();
    await page.getByText(/^Saved: /).waitFor();
    const { records } = await fromApi<{
      records: { hydrantIds: string[]; path: [number, number][]; text: string }[];
    }>(`/records/plans?buildingId=${building.id}`);
    const saved = records.find(({ hydrantIds }) => hydrantIds.includes(hydrant.id))!;
    const path = saved.path.map(([longitude, latitude]) => ({ longitude, latitude }));
    expect(haversineFt(path[0]!, hydrant)).toBeLessThan(1);
    expect(haversineFt(path.at(-1)!, building)).toBeLessThan(1);
    const pathFt = path.slice(1).reduce((sum, place, i) => sum + haversineFt(path[i]!, place), 0);
    expect(Math.abs(pathFt / lengthFt - 1)).toBeLessThan(SPHERE);
    expect(saved.text).toContain(building.name);
    await close();
  });
});

describe('dragging the lay', () => {
  it('with the mouse lengthens it, and each drag is undone by itself', async () => {
    const { page, close } = await openLay();
    const shortest = await layLength(page);
    const at = await pointOnLay(page);
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x + 160, at.y + 110, { steps: 10 });
    await page.mouse.up();
    await expect.poll(() => layLength(page)).toBeGreaterThan(shortest);
    await page.waitForTimeout(300);
    const once = await layLength(page);
    const handle = page.getByRole('button', { name: /^Point 1 of the lay/ });
    const box = (await handle.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x - 240, box.y - 160, { steps: 10 });
    await page.mouse.up();
    await expect.poll(() => layLength(page)).not.toBe(once);
    await undo(page).click();
    await expect.poll(() => layLength(page)).toBe(once);
    await undo(page).click();
    await expect.poll(() => layLength(page)).toBe(shortest);
    expect(await handle.count()).toBe(0);
    await close();
  });

  it('far off the street says that it leaves the street and comes back, both ways counted', async () => {
    const { page, close } = await openLay();
    await page.getByRole('button', { name: 'Go by a street' }).waitFor();
    const at = await pointOnLay(page);
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    // Down to the empty ground at the edge of the map.
    const map = (await page.locator('.map-place').boundingBox())!;
    let told = '';
    for (let share = 0.1; share < 1 && !/leaves the street for/.test(told); share += 0.05) {
      await page.mouse.move(at.x, at.y + share * (map.y + map.height - at.y - 10), { steps: 3 });
      await page.waitForTimeout(120);
      told = (await page.locator('.lay-panel').textContent()) ?? '';
    }
    await page.mouse.up();
    const [, oneWay, both] =
      /leaves the street for ([\d,]+) ft, and comes back: ([\d,]+) ft of hose/.exec(told) ?? [];
    expect(Math.abs(numberIn(both!) - 2 * numberIn(oneWay!))).toBeLessThanOrEqual(1);
    expect(numberIn(oneWay!)).toBeGreaterThan(60);
    await close();
  });
});

describe('on a phone', () => {
  const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

  it('a finger drags the lay and its handle, and pans and zooms the map beside them', async () => {
    const { page, errors, close } = await openLay(phone);
    const finger = await fingers(page);
    const shortest = await layLength(page);
    const at = await pointOnLay(page);
    await finger.move([[at.x, at.y]], [[at.x + 90, at.y + 40]]);
    await expect.poll(() => layLength(page)).toBeGreaterThan(shortest);
    await page.waitForTimeout(300);
    const once = await layLength(page);
    const handle = page.getByRole('button', { name: /^Point 1 of the lay/ });
    const box = (await handle.boundingBox())!;
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
    const middle = [box.x + box.width / 2, box.y + box.height / 2] as const;
    await finger.move([middle], [[middle[0] - 110, middle[1] - 70]]);
    await expect.poll(() => layLength(page)).not.toBe(once);
    const moved = (await handle.boundingBox())!;
    expect(Math.abs(moved.x - (box.x - 110))).toBeLessThan(4);
    await page.waitForTimeout(300);
    const twice = await layLength(page);

    // Panning carries the handle along and leaves the lay as it is.
    const map = (await page.locator('.map-place').boundingBox())!;
    const empty = [map.x + map.width - 30, map.y + map.height - 30] as const;
    await finger.move([empty], [[empty[0] - 60, empty[1] - 20]]);
    await expect.poll(async () => (await handle.boundingBox())!.x).toBeLessThan(moved.x - 40);
    const scale = page.locator('.maplibregl-ctrl-scale');
    const scaleBefore = await scale.textContent();
    const across = map.y + map.height - 60;
    await finger.move(
      [
        [150, across],
        [240, across],
      ],
      [
        [70, across],
        [330, across],
      ],
    );
    await expect.poll(() => scale.textContent()).not.toBe(scaleBefore);
    expect(await layLength(page)).toBe(twice);
    await undo(page).click();
    await expect.poll(() => layLength(page)).toBe(once);
    await undo(page).click();
    await expect.poll(() => layLength(page)).toBe(shortest);
    expect(errors).toEqual([]);
    await close();
  });

  it('a tap 18 px beside a hydrant picks it: its target is 44 px wide', async () => {
    const buildings = await placesOf('buildings');
    const alone = hydrants.find(
      (one) =>
        [...hydrants, ...buildings].every(
          (other) => other.id === one.id || haversineFt(one, other) > 90,
        ) && one.status === 'in service',
    )!;
    const { page, close } = await openDistrict({ ...phone, search: `?hydrant=${alone.id}` });
    await page.getByRole('link', { name: /All places/ }).click();
    await page.waitForURL((url) => url.search === '');
    await page.waitForTimeout(500);
    const map = (await page.locator('.map-place').boundingBox())!;
    const finger = await fingers(page);
    await finger.tap([map.x + map.width / 2 + 18, map.y + map.height / 2]);
    await page.waitForURL((url) => url.searchParams.get('hydrant') === alone.id);
    await close();
  });

  it('shows map and list together or one alone, and nothing over the other', async () => {
    const { page, close } = await openLay(phone);
    const map = page.locator('.map-place');
    const panel = page.locator('.panel');
    const [a, b] = [(await map.boundingBox())!, (await panel.boundingBox())!];
    expect(a.y + a.height).toBeLessThanOrEqual(b.y);
    expect(Math.min(a.height, b.height)).toBeGreaterThan(250);
    expect(b.y + b.height).toBeLessThanOrEqual(844);
    await page.getByRole('radio', { name: 'Map' }).click();
    expect(await panel.isVisible()).toBe(false);
    expect((await map.boundingBox())!.height).toBeGreaterThan(600);
    await page.getByRole('radio', { name: 'List' }).click();
    expect(await map.isVisible()).toBe(false);
    expect((await panel.boundingBox())!.height).toBeGreaterThan(600);
    await page.getByRole('radio', { name: 'Both' }).click();
    expect(await map.isVisible()).toBe(true);
    await close();
  });
});

describe('stations and water', () => {
  it('lists the rigs of a station', async () => {
    const [station] = await placesOf('stations');
    const { records } = await fromApi<{ records: { name: string }[] }>(
      `/records/rigs?stationId=${station!.id}`,
    );
    const { page, close } = await openDistrict({ search: `?station=${station!.id}` });
    await page.getByRole('heading', { name: 'Rigs here' }).waitFor();
    const names = await page.locator('.panel .row-name').allTextContents();
    expect(names.sort()).toEqual(records.map(({ name }) => name).sort());
    await close();
  });

  it('says of water what is known and what to look at before drafting, in litres for SI (1 gal = 3.785412 L, NIST SP 811)', async () => {
    const sources = await placesOf('water-sources');
    const pond = sources.find(({ usableGal }) => typeof usableGal === 'number')!;
    const { page, close } = await openDistrict({ search: `?water=${pond.id}` });
    const needed = page.locator('.needed');
    await needed.waitFor();
    expect(numberIn(await needed.textContent())).toBe(pond.usableGal);
    const told = (await page.locator('.panel').textContent()) ?? '';
    for (const word of ['Access', 'Lift', 'Strainer', 'Defer to']) expect(told).toContain(word);
    await page.getByRole('radio', { name: 'bar · L/min' }).click();
    const litres = Number(pond.usableGal) * 3.785412;
    await expect.poll(() => needed.textContent()).toMatch(/ L\b/);
    const shown = numberIn(await needed.textContent());
    expect(Math.abs(shown / litres - 1)).toBeLessThan(0.005);
    await close();
  });
});

describe('units', () => {
  const US_UNITS = /\d (ft|psi|gpm|gal)\b/;

  /** What the panel says, without what is quoted from a source. */
  const ownWords = (page: Page) =>
    page.locator('.panel').evaluate((panel) => {
      const copy = panel.cloneNode(true) as Element;
      for (const quoted of copy.querySelectorAll('.fact-origin')) quoted.remove();
      return copy.textContent;
    });

  it('turn lengths, notices and the scale bar to metres (1 ft = 0.3048 m, NIST SP 811)', async () => {
    const { page, close } = await openLay();
    const lengthFt = await layLength(page);
    await page.getByRole('radio', { name: 'bar · L/min' }).click();
    const text = await page.locator('.lay-numbers dd').first().textContent();
    expect(text).toMatch(/ m$/);
    expect(Math.abs(numberIn(text) - lengthFt * 0.3048)).toBeLessThan(0.7);
    expect(await page.locator('.maplibregl-ctrl-scale').textContent()).toMatch(/\d\s?k?m$/);
    expect(await ownWords(page)).not.toMatch(US_UNITS);
    await page.getByRole('link', { name: new RegExp(`‹ ${building.name.slice(0, 10)}`) }).click();
    await page.locator('li .row-figure').first().waitFor();
    expect(await ownWords(page)).not.toMatch(US_UNITS);
    await close();
  });
});

/** Many pages, or many keys, on a machine that draws without a graphics card. */
const UNHURRIED = { timeout: 180_000 };

describe('with the keyboard alone', UNHURRIED, () => {
  const tabTo = async (page: Page, name: RegExp) => {
    for (let i = 0; i < 90; i += 1) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate(() => {
        const node = document.activeElement;
        return node?.getAttribute('aria-label') ?? node?.textContent ?? '';
      });
      if (name.test(at)) return;
    }
    throw new Error(`${name} is not reached by Tab.`);
  };

  it('goes from the search to a plan, moves a point of the lay and undoes it', async () => {
    const { page, close } = await openDistrict();
    await tabTo(page, /^Find by name/);
    await page.keyboard.type(building.name);
    await page.waitForTimeout(300);
    await tabTo(page, new RegExp(`^${building.name}`));
    await page.keyboard.press('Enter');
    await page.locator('li .row-figure').first().waitFor();
    await page.waitForTimeout(200);
    await tabTo(page, new RegExp(`${hydrant.name}\\b`));
    await page.keyboard.press('Enter');
    await page.locator('.lay-figure').waitFor();
    const shortest = await layLength(page);

    await page.waitForTimeout(200);
    await tabTo(page, /^Go by a street/);
    await page.keyboard.press('Enter');
    await page.getByRole('menu').waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(() => layLength(page)).toBeGreaterThan(shortest);
    await page.waitForTimeout(300);
    const once = await layLength(page);
    await tabTo(page, /^Point 1 of the lay/);
    for (let i = 0; i < 4; i += 1) await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(() => layLength(page)).not.toBe(once);
    for (let i = 0; i < 4; i += 1) await page.keyboard.press('Control+z');
    await expect.poll(() => layLength(page)).toBe(once);
    await page.keyboard.press('Delete');
    await expect.poll(() => layLength(page)).toBe(shortest);

    await page.locator('.panel-inside').focus();
    await tabTo(page, /^Open in the lay/);
    await page.keyboard.press('Enter');
    await page.locator('.answer').waitFor();
    await close();
  });
});

describe('looks', UNHURRIED, () => {
  for (const width of [390, 820, 1440]) {
    for (const colorScheme of ['light', 'dark'] as const) {
      it(`has nothing for axe to find at ${width} px by ${colorScheme === 'light' ? 'day' : 'night'}, and nothing to scroll sideways`, async () => {
        const [station] = await placesOf('stations');
        const [water] = await placesOf('water-sources');
        const { page, close } = await openDistrict({
          viewport: { width, height: 900 },
          colorScheme,
          ...(width === 390 && { hasTouch: true, isMobile: true }),
        });
        const addresses = ['', `?building=${building.id}`, search()];
        addresses.push(`?hydrant=${hydrant.id}`, `?station=${station!.id}`, `?water=${water!.id}`);
        for (const address of addresses) {
          await page.goto(`${new URL(page.url()).origin}/district${address}`);
          await page.locator('[data-drawn]').waitFor();
          await page.locator('.panel h2, .panel .row').first().waitFor();
          if (address === search()) await page.locator('.lay-figure').waitFor();
          const { violations } = await new AxeBuilder({ page }).analyze();
          const told = violations.map(
            (one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).join('; ')}`,
          );
          expect(told, address).toEqual([]);
          const wider = await page.evaluate(
            () => document.documentElement.scrollWidth - window.innerWidth,
          );
          expect(wider, address).toBeLessThanOrEqual(0);
          if (width !== 390) continue;
          const small = await page
            .locator(
              '.district button:visible, .district input:visible, .district summary:visible, .district a:visible',
            )
            .evaluateAll((nodes) =>
              nodes
                .map((node) => ({ node, box: node.getBoundingClientRect() }))
                .filter(({ box }) => box.width < 43.5 || box.height < 43.5)
                .map(
                  ({ node, box }) => `${node.outerHTML.slice(0, 90)} ${box.width}×${box.height}`,
                ),
            );
          expect(small, address).toEqual([]);
        }
        await close();
      });
    }
  }
});

describe('the map and other servers', () => {
  it('asks nobody but its own server', async () => {
    const { page, close } = await openApp();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    const own = new URL(page.url()).origin;
    await page.goto(`${own}/district${search()}`);
    await page.locator('[data-drawn]').waitFor();
    await page.locator('.lay-figure').waitFor();
    await page.waitForTimeout(500);
    expect(asked.length).toBeGreaterThan(10);
    const others = asked.filter((url) => !url.startsWith(own) && !/^(data|blob):/.test(url));
    expect(others).toEqual([]);
    await close();
  });
});
