import { AxeBuilder } from '@axe-core/playwright';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { openApp, withBrowser } from './open-app.ts';

withBrowser();

const MARK = 'RecTest';

interface Kept {
  id: string;
  version: number;
  name: string;
}

const at = (path: string) => `${inject('appUrl')}${path}`;

async function api<Answer>(
  path: string,
  { method = 'GET', version, json }: { method?: string; version?: number; json?: unknown } = {},
): Promise<Answer> {
  const answer = await fetch(at(`api${path}`), {
    method,
    headers: {
      ...(json !== undefined && { 'Content-Type': 'application/json' }),
      ...(version !== undefined && { 'If-Match': `"${version}"` }),
    },
    ...(json !== undefined && { body: JSON.stringify(json) }),
  });
  if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${await answer.text()}`);
  return (answer.status === 204 ? undefined : await answer.json()) as Answer;
}

const create = (kind: string, json: object) =>
  api<Kept>(`/records/${kind}`, { method: 'POST', json });

/** A hydrant of these tests' own, far from the invented district's. */
const hydrant = (name: string, more: object = {}) =>
  create('hydrants', {
    name: `${MARK} ${name}`,
    longitude: -123.3,
    latitude: -48.8,
    mainIn: 8,
    owner: 'Town water',
    ...more,
  });

const flowTest = (hydrantId: string, testedOn: string, residualPsi: number) =>
  create('flow-tests', {
    hydrantId,
    testedOn,
    staticPsi: 62,
    residualPsi,
    statedFlowGpm: 1000,
    by: MARK,
  });

afterAll(async () => {
  const hydrants = await api<{ records: Kept[] }>(`/records/hydrants?search=${MARK}&limit=100`);
  for (const one of hydrants.records) {
    await api(`/records/hydrants/${one.id}`, {
      method: 'PATCH',
      version: one.version,
      json: { planTestId: null },
    });
    const tests = await api<{ records: Kept[] }>(`/records/flow-tests?hydrantId=${one.id}`);
    for (const { id, version } of tests.records) {
      await api(`/records/flow-tests/${id}`, { method: 'DELETE', version });
    }
    const { version } = await api<Kept>(`/records/hydrants/${one.id}`);
    await api(`/records/hydrants/${one.id}`, { method: 'DELETE', version });
  }
});

async function openRecords(path = 'records', options: BrowserContextOptions = {}) {
  const app = await openApp(options);
  await app.page.goto(at(path));
  await app.page.locator('.records').waitFor();
  return app;
}

const fact = (page: Page, label: string) =>
  page.locator('.record-fact').filter({ has: page.getByText(label, { exact: true }) });

const field = (page: Page, label: string) =>
  page.getByRole('textbox', { name: label, exact: true });

const heading = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { name, level: 2 });

describe('a test that is left before it is saved', () => {
  it('is still there after another page, Back, a reload and a closed tab, and can be discarded', async () => {
    const { id } = await hydrant('Left');
    const path = `records/flow-tests/new?hydrantId=${id}`;
    const { page, close } = await openRecords(path);
    await field(page, 'Static').fill('61.5');
    await field(page, 'On hydrant').fill('H-2');
    await field(page, 'Pitot').fill('18');
    // What cannot be read is kept too, and no number before it in its place.
    await field(page, 'Residual').fill('40');
    await field(page, 'Residual').fill('4o');
    expect(await page.locator('.kept-note').count()).toBe(0);
    await page.getByRole('navigation', { name: 'Kinds of record' }).getByText('Rigs').click();
    await heading(page, 'Rigs').waitFor();
    await page.goBack();
    const stands = async (of: Page) => {
      await of.getByText(/^Typed earlier, .* not saved/).waitFor();
      expect(await field(of, 'Static').inputValue()).toBe('61.5');
      expect(await field(of, 'On hydrant').inputValue()).toBe('H-2');
      expect(await field(of, 'Pitot').inputValue()).toBe('18');
      expect(await field(of, 'Residual').inputValue()).toBe('4o');
      expect(await field(of, 'Residual').getAttribute('aria-invalid')).toBe('true');
      await of.getByRole('button', { name: 'Save test' }).click();
      await of.getByText('Enter the date, static and residual first.').waitFor();
    };
    await stands(page);
    await page.reload();
    await stands(page);
    const other = await page.context().newPage();
    await page.close();
    await other.goto(at(path));
    await stands(other);
    // Another hydrant's test is another form.
    const { id: second } = await hydrant('Left too');
    await other.goto(at(`records/flow-tests/new?hydrantId=${second}`));
    await field(other, 'Static').waitFor();
    expect(await field(other, 'Static').inputValue()).toBe('');
    await other.goto(at(path));
    await stands(other);
    await other.getByRole('button', { name: 'Discard it' }).click();
    await expect.poll(() => field(other, 'Static').inputValue()).toBe('');
    expect(await other.locator('.kept-note').count()).toBe(0);
    await other.reload();
    await field(other, 'Static').waitFor();
    expect(await field(other, 'Static').inputValue()).toBe('');

    // Saved, nothing is left over.
    await field(other, 'Static').fill('60');
    await field(other, 'Residual').fill('50');
    await field(other, 'Total as stated').fill('1000');
    await other.getByRole('button', { name: 'Save test' }).click();
    await heading(other, /^Flow test of/).waitFor();
    await other.goto(at(path));
    await field(other, 'Static').waitFor();
    expect(await field(other, 'Static').inputValue()).toBe('');
    await close();
  });

  it('of a pump or a hose is kept alike', async () => {
    const rig = await create('rigs', { name: `${MARK} Engine`, ratedGpm: 1500 });
    const { page, close } = await openRecords(`records/pump-tests/new?rigId=${rig.id}`);
    await field(page, 'Flow, reading 1').fill('1500');
    await page.reload();
    await page.getByText(/^Typed earlier, .* not saved/).waitFor();
    expect(await field(page, 'Flow, reading 1').inputValue()).toBe('1,500');
    await page.goto(at('records/hose-tests/new'));
    await field(page, 'Loss, reading 2').fill('12.5');
    await field(page, 'Tested by').fill(MARK);
    await field(page, 'Note').fill('New couplings');
    await page.reload();
    await page.getByText(/^Typed earlier, .* not saved/).waitFor();
    expect(await field(page, 'Loss, reading 2').inputValue()).toBe('12.5');
    expect(await field(page, 'Note').inputValue()).toBe('New couplings');

    // Made whole and saved, with who tested and the note.
    await field(page, 'Flow, reading 2').fill('500');
    await field(page, 'Length, reading 2').fill('100');
    await page.getByRole('button', { name: 'Save test' }).click();
    await page.locator('.record-facts').waitFor();
    const { records } = await api<{ records: (Kept & { by: string; note: string })[] }>(
      `/records/hose-tests?search=${MARK}`,
    );
    expect(records).toMatchObject([{ by: MARK, note: 'New couplings' }]);
    const [test] = records;
    await api(`/records/hose-tests/${test!.id}`, { method: 'DELETE', version: test!.version });
    await api(`/records/rigs/${rig.id}`, { method: 'DELETE', version: rig.version });
    await close();
  });
});

describe('an outline', () => {
  const corners = [
    [-123.3004, -48.8004],
    [-123.2996, -48.8004],
    [-123.2996, -48.7998],
    [-123.3004, -48.7998],
  ];

  const drawn = async (page: Page) => {
    await page.getByRole('button', { name: 'Draw it on the map' }).click();
    await page.locator('.outline-map[data-drawn]').waitFor({ timeout: 60_000 });
  };

  it('of a building is drawn: points dragged, added between two, removed, undone', async () => {
    const building = await create('buildings', {
      name: `${MARK} Outline`,
      longitude: -123.3,
      latitude: -48.8,
      footprint: [[...corners, corners[0]]],
    });
    const { page, errors, close } = await openRecords(`records/buildings/${building.id}/edit`);
    const list = field(page, 'Outline');
    const places = async () =>
      (await list.inputValue()).split('\n').map((line) => line.split(', ').map(Number));
    expect(await places()).toEqual(corners);
    await drawn(page);
    const point = (n: number) => page.getByRole('button', { name: new RegExp(`^Point ${n}:`) });
    await expect.poll(() => page.locator('.outline-point').count()).toBe(4);
    expect(await page.locator('.outline-middle').count()).toBe(4);

    // Dragged by mouse: the second corner goes east, the others stay.
    await point(2).scrollIntoViewIfNeeded();
    const box = (await point(2).boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 20, y, { steps: 4 });
    await page.mouse.move(x + 40, y, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => (await places())[1]![0]!).toBeGreaterThan(-123.2996);
    const dragged = await places();
    expect(dragged.filter((_, at) => at !== 1)).toEqual(corners.filter((_, at) => at !== 1));
    expect(dragged[1]![1]).toBeCloseTo(-48.8004, 4);

    // A middle point becomes a corner, half way between its neighbours, and has the focus.
    await page.getByRole('button', { name: 'Add a point before 4' }).click();
    await expect.poll(async () => (await places()).length).toBe(5);
    const added = (await places())[3]!;
    expect(added[0]).toBeCloseTo(-123.3, 6);
    expect(added[1]).toBeCloseTo(-48.7998, 5);
    await expect.poll(() => point(4).evaluate((one) => one === document.activeElement)).toBe(true);

    // By keyboard: north, and away.
    await page.keyboard.press('ArrowUp');
    await expect.poll(async () => (await places())[3]![1]!).toBeGreaterThan(-48.7998);
    expect(await point(4).evaluate((one) => one === document.activeElement)).toBe(true);
    await page.keyboard.press('Delete');
    await expect.poll(async () => (await places()).length).toBe(4);
    expect(await places()).toEqual(dragged);

    // Undone step by step: the removal, the arrow, the point, the drag.
    const undo = page.getByRole('button', { name: 'Undo' });
    for (const count of [5, 5, 4]) {
      await undo.click();
      await expect.poll(async () => (await places()).length).toBe(count);
    }
    expect(await places()).toEqual(dragged);
    await undo.click();
    await expect.poll(places).toEqual(corners);
    await expect.poll(() => undo.isDisabled()).toBe(true);

    // What is typed shows on the map, and what cannot be read is said.
    await list.fill(`${await list.inputValue()}\n-123.3006, -48.8001`);
    await expect.poll(() => page.locator('.outline-point').count()).toBe(5);
    await list.fill('here');
    await page.getByText('The list of places cannot be read').waitFor();
    await list.fill(dragged.map((place) => place.join(', ')).join('\n'));
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.locator('.record-facts').waitFor();
    const kept = await api<{ version: number; footprint: number[][][] }>(
      `/records/buildings/${building.id}`,
    );
    // A ring ends where it begins.
    expect(kept.footprint).toEqual([[...dragged, dragged[0]]]);
    await api(`/records/buildings/${building.id}`, { method: 'DELETE', version: kept.version });
    expect(errors).toEqual([]);
    await close();
  });

  it('of a street is begun on the map by pressing it', async () => {
    const { page, errors, close } = await openRecords('records/streets/new');
    await field(page, 'Name').fill(`${MARK} Lane`);
    await drawn(page);
    const map = page.locator('.outline-map');
    for (const position of [
      { x: 100, y: 100 },
      { x: 200, y: 120 },
      { x: 300, y: 220 },
    ]) {
      await map.click({ position });
    }
    await expect.poll(() => page.locator('.outline-point').count()).toBe(3);
    const results = await new AxeBuilder({ page }).include('.record-form').analyze();
    expect(results.violations.map(({ id }) => id)).toEqual([]);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.locator('.record-facts').waitFor();
    const { records } = await api<{ records: (Kept & { path: number[][] })[] }>(
      `/records/streets?search=${MARK}`,
    );
    const [street] = records;
    expect(street?.path).toHaveLength(3);
    // East is right and north is up.
    const [first, second, third] = street!.path as [number[], number[], number[]];
    expect(second[0]).toBeGreaterThan(first[0]!);
    expect(third[1]).toBeLessThan(second[1]!);
    await api(`/records/streets/${street!.id}`, { method: 'DELETE', version: street!.version });
    expect(errors).toEqual([]);
    await close();
  });
});

describe('a hydrant in the records', () => {
  it('is found by its name, tells its test, and takes another that becomes its curve', async () => {
    const { id, name } = await hydrant('Tested');
    await flowTest(id, '2024-05-01', 40);
    const { page, errors, close } = await openRecords();
    await page.getByRole('navigation', { name: 'Kinds of record' }).getByText('Hydrants').click();
    await heading(page, 'Hydrants').waitFor();
    await page.getByRole('searchbox').fill(name);
    await page.getByRole('link', { name }).click();
    await heading(page, name).waitFor();
    expect(await fact(page, 'Main').textContent()).toContain('8 in');
    expect(await fact(page, 'Main').textContent()).toContain('entered by the department');
    // 1000·((62−20)/(62−40))^0.54 = 1,418 gpm, by hand.
    const answer = page.locator('.test-history .test-answer');
    expect(await answer.textContent()).toContain('1,418');

    await page.getByRole('link', { name: 'Add a flow test' }).click();
    await field(page, 'Static').fill('60');
    await field(page, 'Residual').fill('50');
    await field(page, 'Total as stated').fill('1000');
    await page.getByLabel('Tested on').fill('2026-05-02');
    await page.getByRole('button', { name: 'Save test' }).click();
    await heading(page, 'Flow test of 2026-05-02').waitFor();
    await page.getByRole('link', { name, exact: true }).click();
    await heading(page, name).waitFor();
    // 1000·((60−20)/(60−50))^0.54 = 2,114 gpm, by hand.
    await expect.poll(() => answer.textContent()).toContain('2,114');

    // Plans may use the older one; the choice is kept with the hydrant.
    await page.locator('.plan-test-choice', { hasText: '2024-05-01' }).click();
    await expect.poll(() => answer.textContent()).toContain('1,418');
    const kept = await api<{ planTestId?: string }>(`/records/hydrants/${id}`);
    expect(kept.planTestId).toBeDefined();

    await page.goBack();
    await heading(page, 'Flow test of 2026-05-02').waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  it('is corrected: a refused value says what is allowed and stays, a good one is kept', async () => {
    const { id, name } = await hydrant('Corrected', {
      origins: { mainIn: { kind: 'imported', text: 'utility list' } },
    });
    const { page, close } = await openRecords(`records/hydrants/${id}`);
    expect(await fact(page, 'Main').textContent()).toContain('imported: utility list');
    await page.getByRole('link', { name: 'Edit' }).click();
    await field(page, 'Main').fill('500');
    await field(page, 'Owner').fill('');
    await page.getByRole('button', { name: 'Save' }).click();
    const problem = page.getByText('500 in is not allowed: more than 0, up to 120 in.');
    await problem.waitFor();
    expect(await field(page, 'Main').inputValue()).toBe('500');
    expect(await field(page, 'Main').getAttribute('aria-invalid')).toBe('true');
    await expect
      .poll(() => field(page, 'Main').evaluate((one) => one === document.activeElement))
      .toBe(true);

    // What was typed survives going away and coming back.
    await page.getByRole('link', { name: `‹ ${name}` }).click();
    await heading(page, name).waitFor();
    await page.goBack();
    await page.getByText(/^Typed earlier, .* not saved/).waitFor();
    expect(await field(page, 'Main').inputValue()).toBe('500');
    await field(page, 'Main').fill('150 mm');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.locator('.record-facts').waitFor();
    // 150 mm = 5.906 in (1 in = 25.4 mm).
    const kept = await api<{ mainIn: number; owner?: string }>(`/records/hydrants/${id}`);
    expect(kept.mainIn).toBeCloseTo(150 / 25.4, 6);
    expect(kept.owner).toBeUndefined();
    expect(await fact(page, 'Main').textContent()).toContain('entered by the department');
    expect(await page.locator('.facts-empty').textContent()).toContain('owner');
    await close();
  });

  it('says where a value comes from, as the department writes it', async () => {
    const { id } = await hydrant('Origin');
    const { page, close } = await openRecords(`records/hydrants/${id}/edit`);
    await page.getByText('Show and change where each value comes from').click();
    await page.getByRole('button', { name: /^Main comes from/ }).click();
    await page.getByRole('menuitemradio', { name: 'measured' }).click();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Say where it comes from').waitFor();
    await field(page, 'In words').fill('dug up');
    await page.getByLabel('Since').fill('2025-03-04');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.locator('.record-facts').waitFor();
    expect(await fact(page, 'Main').textContent()).toContain('measured: dug up, 2025-03-04');
    await close();
  });

  it('changed by another meanwhile: both versions stand side by side and nothing is lost', async () => {
    const { id, version } = await hydrant('Contested');
    const { page, close } = await openRecords(`records/hydrants/${id}/edit`);
    await field(page, 'Main').fill('6');
    await field(page, 'Type').fill('wall');
    await api(`/records/hydrants/${id}`, {
      method: 'PATCH',
      version,
      json: { mainIn: 12, owner: 'County' },
    });
    await page.getByRole('button', { name: 'Save' }).click();
    const dialog = page.getByRole('alertdialog');
    await dialog.waitFor();
    const row = (name: string) => dialog.getByRole('radiogroup', { name: new RegExp(`^${name} `) });
    expect(await row('Main').textContent()).toMatch(/Yours6 in.*Theirs12 in/);
    expect(await dialog.getByRole('radiogroup').count()).toBe(3);
    const save = dialog.getByRole('button', { name: 'Save as chosen' });
    expect(await save.isDisabled()).toBe(true);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);

    // A third writer in between: asked again, on the newest version.
    await api(`/records/hydrants/${id}`, {
      method: 'PATCH',
      version: version + 1,
      json: { note: 'painted' },
    });
    await row('Main').getByText('Yours').click();
    await save.click();
    await row('Note').waitFor();
    await save.click();
    await page.locator('.record-facts').waitFor();
    expect(await api(`/records/hydrants/${id}`)).toMatchObject({
      mainIn: 6,
      type: 'wall',
      owner: 'County',
      note: 'painted',
    });
    await close();
  });

  it('stays while its tests refer to it, says which, and goes once they are gone', async () => {
    const { id, name } = await hydrant('Removed');
    const test = await flowTest(id, '2025-06-03', 45);
    const { page, close } = await openRecords(`records/hydrants/${id}`);
    await page.getByRole('button', { name: 'Remove' }).click();
    const dialog = page.getByRole('alertdialog');
    await dialog.getByRole('button', { name: 'Remove' }).click();
    await dialog.getByRole('heading', { name: `${name} stays` }).waitFor();
    await dialog.getByRole('link', { name: 'Flow test of 2025-06-03' }).click();
    await heading(page, 'Flow test of 2025-06-03').waitFor();
    expect(page.url()).toContain(test.id);

    await page.getByRole('button', { name: 'Remove' }).click();
    await dialog.getByRole('button', { name: 'Remove' }).click();
    await heading(page, 'Flow tests').waitFor();
    await page.goto(at(`records/hydrants/${id}`));
    await page.getByRole('button', { name: 'Remove' }).click();
    await dialog.getByRole('button', { name: 'Remove' }).click();
    await heading(page, 'Hydrants').waitFor();
    await expect(api(`/records/hydrants/${id}`)).rejects.toThrow('404');
    await close();
  });

  it('is added by hand, by keys alone', async () => {
    const { page, close } = await openRecords('records/hydrants/new');
    await field(page, 'Name').focus();
    await page.keyboard.type(`${MARK} Added`);
    await page.keyboard.press('Enter');
    await page.getByText('2 fields are to mend').waitFor();
    await page.keyboard.type('-48.8001');
    await page.keyboard.press('Tab');
    await page.keyboard.type('-123.3001');
    await page.keyboard.press('Enter');
    await heading(page, `${MARK} Added`).waitFor();
    expect(await fact(page, 'Latitude').textContent()).toContain('48.8001° S');
    await close();
  });
});

describe('every kind of record', () => {
  it('has a list, a first record to read, and a form that changes nothing by itself', async () => {
    const { page, errors, close } = await openRecords();
    const names = await page
      .getByRole('navigation', { name: 'Kinds of record' })
      .getByRole('link')
      .evaluateAll((links) => links.map((link) => link.getAttribute('href')!));
    expect(names).toHaveLength(15);
    for (const path of names.slice(1)) {
      await page.goto(at(path.slice(1)));
      const first = page.locator('.record-link').first();
      await first.click();
      await page.locator('.record-facts').waitFor();
      const url = page.url();
      const api = url.replace('/records/', '/api/records/');
      const version = async () => ((await (await fetch(api)).json()) as Kept).version;
      const before = await version();
      await page.getByRole('link', { name: 'Edit' }).click();
      await page.getByRole('button', { name: /^Save/ }).click();
      await page.locator('.record-facts').waitFor();
      expect(await version(), path).toBe(before);
    }
    expect(errors).toEqual([]);
    await close();
  });

  it('is sorted by its columns, however long it is, and the address keeps the order', async () => {
    for (const [name, mainIn] of [
      ['Sort 10', 6],
      ['Sort 2', 12],
      ['Sort 1', undefined],
    ] as const) {
      await hydrant(name, { mainIn });
    }
    const { page, errors, close } = await openRecords('records/hydrants');
    await page.getByRole('searchbox').fill(`${MARK} Sort`);
    const names = async () =>
      (await page.locator('.record-link').allTextContents()).map((text) =>
        text.replace(`${MARK} Sort `, ''),
      );
    await expect.poll(names).toEqual(['1', '2', '10']);
    const head = (name: string) => page.getByRole('columnheader', { name });
    expect(await head('Name').getAttribute('aria-sort')).toBe('ascending');
    await head('Main').getByRole('button').focus();
    await page.keyboard.press('Enter');
    await expect.poll(names).toEqual(['10', '2', '1']);
    expect(await head('Main').getAttribute('aria-sort')).toBe('ascending');
    expect(await head('Name').getAttribute('aria-sort')).toBeNull();
    await page.keyboard.press('Enter');
    await expect.poll(names).toEqual(['2', '10', '1']);
    expect(page.url()).toContain('sort=-mainIn');
    await page.reload();
    await expect.poll(names).toEqual(['2', '10', '1']);

    // A phone has no heads: the order is chosen.
    await page.setViewportSize({ width: 390, height: 844 });
    await page.getByRole('button', { name: /^Sorted by: Main, greatest first/ }).click();
    await page.getByRole('menuitemradio', { name: 'Name, Z to A' }).click();
    await expect
      .poll(async () => (await page.locator('.record-row-name').allTextContents()).join())
      .toBe(['10', '2', '1'].map((one) => `${MARK} Sort ${one}`).join());
    expect(errors).toEqual([]);
    await close();
  });

  it('finds a test by the name of its hydrant', async () => {
    const { id, name } = await hydrant('Searched');
    await flowTest(id, '2024-05-01', 40);
    const { page, close } = await openRecords('records/flow-tests');
    await page.getByRole('searchbox').fill(name);
    await expect.poll(() => page.locator('.record-link').count()).toBe(1);
    // The hydrant's name comes after the row, by a request of its own.
    await expect.poll(() => page.locator('.record-table tbody').textContent()).toContain(name);
    await close();
  });

  it('leads back to the row of a long list that one came from', async () => {
    const { page, close } = await openRecords('records/buildings');
    const links = page.locator('.record-link');
    await links.first().waitFor();
    for (const count of [200, 300]) {
      await page.getByRole('button', { name: /^Show more/ }).scrollIntoViewIfNeeded();
      await expect.poll(() => links.count()).toBeGreaterThanOrEqual(count);
    }
    const row = links.nth(250);
    await row.scrollIntoViewIfNeeded();
    const name = await row.textContent();
    const scrolled = await page.evaluate(() => window.scrollY);
    expect(scrolled).toBeGreaterThan(1000);
    await row.click();
    await page.locator('.record-facts').waitFor();
    await page.goBack();
    await expect.poll(() => page.evaluate(() => window.scrollY)).toBe(scrolled);
    expect(await links.nth(250).textContent()).toBe(name);
    await close();
  });

  it('shows SI where the app is switched to it: 8 in is 203 mm', async () => {
    const { id } = await hydrant('Metric');
    const { page, close } = await openRecords(`records/hydrants/${id}`);
    await page.getByRole('radio', { name: 'bar · L/min' }).click();
    expect(await fact(page, 'Main').textContent()).toContain('203 mm');
    await close();
  });

  it('says so at an address where nothing is kept', async () => {
    const { page, close } = await openRecords('records/hydrants/01ARZ3NDEKTSV4RRFFQ69G5FAV');
    await page.getByText('There is no hydrant with id').waitFor();
    await page.goto(at('records/pipes'));
    await page.getByText('Nothing is kept at /records/pipes').waitFor();
    await close();
  });
});

describe('how the records look', () => {
  const firstHydrant = async () => {
    const { records } = await api<{ records: Kept[] }>('/records/hydrants?limit=1');
    return records[0]!.id;
  };
  const overflow = (page: Page) =>
    page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

  for (const width of [390, 1440] as const) {
    for (const colorScheme of ['light', 'dark'] as const) {
      it(`has no faults for assistive technology at ${width} px, ${colorScheme}`, async () => {
        const { page, close } = await openRecords('records', {
          colorScheme,
          viewport: { width, height: 900 },
        });
        for (const path of ['', '/stations', `/hydrants/${await firstHydrant()}`]) {
          await page.goto(at(`records${path}`));
          await page.locator('h2').first().waitFor();
          await page.waitForLoadState('networkidle');
          const { violations } = await new AxeBuilder({ page }).analyze();
          const told = violations.map(
            (one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).join('; ')}`,
          );
          expect(told, path).toEqual([]);
        }
        await close();
      });
    }
  }

  it('has no faults for assistive technology in a form', async () => {
    const { page, close } = await openRecords('records/rigs/new');
    await page.getByText('Show and change where each value comes from').click();
    await page.getByRole('button', { name: '+ Add a load' }).click();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('One field is to mend').waitFor();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await close();
  });

  it('fits every width without scrolling sideways', async () => {
    const { page, close } = await openRecords();
    const id = await firstHydrant();
    for (const path of ['', '/hydrants', `/hydrants/${id}`, `/hydrants/${id}/edit`, '/rigs']) {
      await page.goto(at(`records${path}`));
      await page.locator('h2').first().waitFor();
      for (const width of [390, 820, 1440]) {
        await page.setViewportSize({ width, height: 900 });
        await expect
          .poll(() => overflow(page), { message: `${path} at ${width}` })
          .toBeLessThanOrEqual(0);
      }
    }
    await close();
  });

  it('gives a finger 44 px on everything that can be pressed, on a phone', async () => {
    const { page, close } = await openRecords('records/hydrants/new', {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    await page.getByText('Show and change where each value comes from').click();
    const small = await page
      .locator('main button:visible, main input:visible, main label:has(input):visible')
      .evaluateAll((nodes) =>
        nodes
          .filter(
            (node) => !node.closest('.hidden-text') && node.getAttribute('type') !== 'checkbox',
          )
          .map((node) => ({ node, box: node.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 2 && (box.width < 43.5 || box.height < 43.5))
          .map(({ node, box }) => `${node.outerHTML.slice(0, 90)} ${box.width}×${box.height}`),
      );
    expect(small).toEqual([]);
    await close();
  });
});
