/** A drill from a plan that the department has on record, from choosing the supply to the kept result. */
import type { DrillLog, DrillScene, Judgement } from '@plugside/drill';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { fromApi, haversineFt, type Place, placesOf } from './district-page.ts';
import { openApp, withBrowser } from './open-app.ts';

withBrowser();

const at = (path: string) => `${inject('appUrl')}${path}`;

async function device(path: string) {
  const app = await openApp();
  await app.page.goto(at(path));
  return app;
}

/** A building in town whose need a hydrant or two meet, in front of which an engine can boost. */
async function buildingInTown(): Promise<Place> {
  const hydrants = await placesOf('hydrants');
  const buildings = await placesOf('buildings');
  const near = (one: Place) => hydrants.filter((hydrant) => haversineFt(hydrant, one) < 700).length;
  return buildings.find((one) => one.neededGpm === 1000 && near(one) > 3)!;
}

/** Saves the first way to supply a building that an engine boosts. @returns the plan's id and name */
async function savedPlan(page: Page, building: Place): Promise<{ id: string; name: string }> {
  await page.goto(at(`supply/${building.id}`));
  await page.locator('.way-list tbody tr', { hasText: 'boosted by' }).first().click();
  await page.locator('.way-detail[aria-label*="boosted by"]').waitFor();
  await page.getByRole('button', { name: 'Save the plan' }).click();
  const link = page.locator('.save-told a');
  await link.waitFor();
  const id = (await link.getAttribute('href'))!.split('/').at(-1)!;
  return { id, name: (await link.textContent())! };
}

const say = (page: Page, text: string) =>
  page.locator('.radio').getByRole('button', { name: text }).click();

const turn = (page: Page, valve: string, stop: string) =>
  page
    .locator('.control-list')
    .getByRole('button', { name: `${valve}: ${stop}`, exact: true })
    .click();

const discharge = async (page: Page, rig: string) => {
  const text = await page.locator(`[data-gauge="${rig}.discharge"] .gauge-value b`).textContent();
  return Number((text ?? '').replaceAll(',', ''));
};

interface Replay {
  title: string;
  scene: DrillScene;
  log: DrillLog;
  result: Judgement[];
}

describe('a drill from a plan on record', () => {
  it('is chosen by name, played on two tablets, and its result kept with what was done', async () => {
    const crew = `Record crew ${Date.now()}`;
    const lead = await device('supply');
    const plan = await savedPlan(lead.page, await buildingInTown());

    await lead.page.goto(at('drill/new'));
    await lead.page.getByText('A plan on record').click();
    await lead.page.getByText('Choose a plan first.').waitFor();
    await lead.page.getByRole('button', { name: /^Plan/ }).click();
    await lead.page.getByRole('menuitemradio', { name: plan.name }).first().click();
    await lead.page.getByText('Hose connected').click();
    // A plan has no steps to show.
    expect(await lead.page.getByText('Show each role its next step').count()).toBe(0);
    await lead.page.getByLabel(/^Crew/).fill(crew);
    await lead.page.getByRole('button', { name: 'Make the drill' }).click();
    await lead.page.locator('.code-shown').waitFor();
    const code = new URL(lead.page.url()).pathname.split('/')[2]!;
    await lead.page.locator('.room-drill', { hasText: plan.name }).waitFor();

    const hydrant = await device(`drill/${code}`);
    await hydrant.page.getByRole('button', { name: 'Take hydrant operator' }).click();
    const attack = await device(`drill/${code}`);
    await attack.page.getByRole('button', { name: 'Take attack operator' }).click();
    const [source, fire] = [hydrant.page, attack.page];
    for (const page of [source, fire]) await page.locator('.stage').waitFor();
    await lead.page.getByRole('button', { name: 'Begin the drill' }).click();

    // Tank water first, while the hydrant operator charges the supply line.
    await turn(fire, 'Tank to pump', 'open');
    await fire.locator('.stage-side').getByRole('radio', { name: 'In gear' }).click();
    const governor = fire.locator('.stage-side').getByRole('spinbutton', { name: /governor/ });
    await governor.fill('120');
    await governor.press('Enter');
    const words = source.getByLabel('In your own words');
    await words.fill('Water coming: stand clear of the hose.');
    await words.press('Enter');
    await fire.locator('.said', { hasText: 'Water coming' }).waitFor();
    await say(fire, 'Copied.');
    await turn(source, 'Hydrant stem', 'open');
    await lead.page.getByRole('radio', { name: '× 4' }).click();
    await lead.page
      .locator('.whole-piece', { hasText: /stem\s*open/ })
      .waitFor({ timeout: 30_000 });
    const { scene } = await replayOf(lead.page, code);
    await expect.poll(() => discharge(fire, scene.plan.scene), { timeout: 30_000 }).toBe(120);
    await lead.page
      .locator('.whole-hose', { hasText: /filling|\d %/ })
      .first()
      .waitFor();

    await lead.page.getByRole('button', { name: 'End the drill' }).click();
    await lead.page.getByRole('button', { name: 'End it' }).click();
    await lead.page.getByRole('link', { name: 'See how it went' }).click();
    await lead.page.locator('.criterion').first().waitFor();
    const roomId = new URL(lead.page.url()).pathname.split('/').at(-1)!;
    const kept = await fromApi<Replay>(`/drills/${roomId}/replay`);
    expect(kept.title).toBe(plan.name);
    // The plan that was on record, whole: its text is what the scene was laid out from.
    const record = await fromApi<{ text: string; version: number }>(`/records/plans/${plan.id}`);
    for (const { id } of kept.scene.plan.rigs) expect(record.text).toContain(id);
    const done = kept.log.flatMap((one) =>
      one.kind === 'action' ? [`${one.role}: ${one.action.do}`] : [],
    );
    expect(done).toEqual(
      expect.arrayContaining([
        'attack operator: set valve',
        'attack operator: pump in gear',
        'attack operator: set governor',
        'attack operator: radio',
        'hydrant operator: radio',
        'hydrant operator: set valve',
      ]),
    );
    expect(kept.log.filter(({ kind }) => kind === 'refused')).toEqual([]);
    const shown = await lead.page.locator('.criterion').count();
    expect(kept.result.length).toBe(shown);
    await lead.page.getByRole('link', { name: '‹ Past drills' }).click();
    await lead.page.getByRole('searchbox').fill(crew);
    await expect.poll(() => lead.page.locator('.past-run').count()).toBe(1);
    await lead.page.locator('.past-run', { hasText: plan.name }).waitFor();

    await fetch(at(`api/records/plans/${plan.id}`), {
      method: 'DELETE',
      headers: { 'if-match': `"${record.version}"` },
    });
    for (const one of [lead, hydrant, attack]) {
      expect(one.errors).toEqual([]);
      await one.close();
    }
  }, 180_000);
});

const api = (path: string, method: string, body?: unknown, version?: number) =>
  fetch(at(`api/records/${path}`), {
    method,
    headers: {
      ...(body !== undefined && { 'content-type': 'application/json' }),
      ...(version !== undefined && { 'if-match': `"${version}"` }),
    },
    ...(body !== undefined && { body: JSON.stringify(body) }),
  });

/** Makes the drill that the form has, and gives its scene. */
async function madeScene(page: Page): Promise<DrillScene> {
  await page.getByRole('button', { name: 'Make the drill' }).click();
  await page.locator('.code-shown').waitFor();
  const code = new URL(page.url()).pathname.split('/')[2]!;
  return (await replayOf(page, code)).scene;
}

describe('a drill on a hydrant of the records', () => {
  it('takes its curve and main; one without a test says why not and what to do', async () => {
    const made = await api('hydrants', 'POST', {
      name: 'Z-untested',
      longitude: 0.01,
      latitude: 0.01,
      steamerIn: 4.5,
    });
    const untested = (await made.json()) as { id: string; version: number };
    const lead = await device('drill/new');
    const { page } = lead;
    await page.getByText('A hydrant on record').click();
    await page.getByText('Choose a hydrant first.').waitFor();
    const search = page.getByRole('searchbox', { name: /^Find a hydrant/ });
    await search.fill('Z-untested');
    await page.locator('.find-hydrant .row', { hasText: 'Z-untested' }).click();
    await page.getByText('Z-untested has no flow test on record.').waitFor();
    await page.getByRole('link', { name: 'Add a flow test' }).waitFor();
    await page.getByText('This hydrant cannot be drilled: see above.').waitFor();
    expect(await page.getByRole('button', { name: 'Make the drill' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Another hydrant' }).click();

    const hydrants = await placesOf('hydrants');
    const strong = hydrants
      .filter(({ steamerIn, status }) => steamerIn !== null && status === 'in service')
      .sort((a, b) => Number(b.q20Gpm) - Number(a.q20Gpm))[0]!;
    await page.getByRole('searchbox', { name: /^Find a hydrant/ }).fill(String(strong.name));
    await page
      .locator('.find-hydrant .row')
      .filter({ has: page.getByText(String(strong.name), { exact: true }) })
      .click();
    await page.locator('.source-picked .figures', { hasText: 'by the test of' }).waitFor();
    // The boost unless another evolution is chosen, with its steps to be shown.
    await page.getByText('Show each role its next step').waitFor();
    const scene = await madeScene(page);
    const { test } = await fromApi<{ test: { staticPsi: number; residualPsi: number } }>(
      `/hydrants/${strong.id}/supply`,
    );
    const record = await fromApi<{ main?: string }>(`/records/hydrants/${strong.id}`);
    expect(scene.evolution).toBe('boost through valve');
    expect(scene.plan.hydrants[0]).toMatchObject({
      name: strong.name,
      staticPsi: test.staticPsi,
      residualPsi: test.residualPsi,
    });
    expect(scene.plan.hydrants[0]!.main).toBe(record.main);
    await page.locator('.whole-piece', { hasText: String(strong.name) }).waitFor();

    await api(`hydrants/${untested.id}`, 'DELETE', undefined, untested.version);
    expect(lead.errors).toEqual([]);
    await lead.close();
  }, 120_000);
});

describe('a drill for a building of the records', () => {
  it('takes the first of the ways that its supply is chosen from, with lines at the fire', async () => {
    const building = await buildingInTown();
    const lead = await device(`drill/new?building=${building.id}`);
    const { page } = lead;
    const ways = page.getByRole('radiogroup', { name: /^Way to supply it/ });
    const first = ways.getByRole('radio').first();
    await first.waitFor({ state: 'attached', timeout: 60_000 });
    await expect.poll(() => first.isChecked()).toBe(true);
    const scene = await madeScene(page);
    // The first in rank where the supply is chosen.
    const supply = await device(`supply/${building.id}`);
    const named = supply.page.locator('.way-list tbody tr').first();
    await named.waitFor({ timeout: 60_000 });
    const title = scene.title.slice(String(building.name).length + 2);
    await expect.poll(() => named.textContent()).toContain(title);
    await supply.close();
    const rated = scene.plan.nozzles.map((one) => ('ratedGpm' in one ? one.ratedGpm : 0));
    const spare = scene.plan.nozzles.findIndex(({ id }) => id === scene.spareNozzle);
    expect(rated.reduce((sum, gpm) => sum + gpm, 0) - rated[spare]!).toBe(1000);
    await page.getByRole('button', { name: 'Extra line called' }).waitFor();
    await page.locator('.seat-list', { hasText: 'Nozzle crew' }).waitFor();
    expect(lead.errors).toEqual([]);
    await lead.close();
  }, 180_000);
});

/** The drill while it runs, by the instructor's key that this device keeps. */
async function replayOf(page: Page, code: string): Promise<Replay> {
  return page.evaluate(async (drill) => {
    const seats = JSON.parse(localStorage.getItem('plugside.drill-seats') ?? '[]') as [
      string,
      { instructorKey: string; roomId: string },
    ][];
    const { instructorKey, roomId } = seats.find(([one]) => one === drill)![1];
    const answer = await fetch(`/api/drills/${roomId}/replay`, {
      headers: { authorization: `Bearer ${instructorKey}` },
    });
    return (await answer.json()) as Replay;
  }, code);
}
