import { AxeBuilder } from '@axe-core/playwright';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { type OpenedApp, openApp, withBrowser } from './open-app.ts';

withBrowser();

const at = (path: string) => `${inject('appUrl')}${path}`;

/** Opens a page of the app as a device of its own. */
async function device(path: string, options: BrowserContextOptions = {}): Promise<OpenedApp> {
  const app = await openApp(options);
  await app.page.goto(at(path));
  return app;
}

/** Makes a drill from the form, as an instructor. */
async function made(crew: string, options: BrowserContextOptions = {}) {
  const app = await device('drill/new', options);
  await app.page.getByLabel(/^Crew/).fill(crew);
  await app.page.getByRole('button', { name: 'Make the drill' }).click();
  await app.page.locator('.code-shown').waitFor();
  const code = new URL(app.page.url()).pathname.split('/')[2]!;
  return { ...app, code };
}

async function takeRole(page: Page, role: 'hydrant' | 'attack') {
  await page.getByRole('button', { name: `Take ${role} operator` }).click();
  await page.locator('.stage').waitFor();
}

/** A device that takes a role by the drill's address. */
async function joined(code: string, role: 'hydrant' | 'attack', options = {}) {
  const app = await device(`drill/${code}`, options);
  await takeRole(app.page, role);
  return app;
}

const gauge = async (page: Page, id: string) => {
  const text = await page.locator(`[data-gauge="${id}"] .gauge-value b`).first().textContent();
  return Number((text ?? '').replaceAll(',', '').replace('−', '-'));
};

const nextIs = (page: Page, what: RegExp) =>
  page.locator('.next-what', { hasText: what }).waitFor({ timeout: 45_000 });

async function couple(page: Page, hose: string, end: 'water' | 'fire', port: string) {
  await page
    .locator('.control-list')
    .getByRole('button', { name: `Couple ${hose}, end nearer the ${end} to…` })
    .click();
  await page.getByRole('menuitem', { name: port, exact: true }).click();
}

const turn = (page: Page, valves: string, valve: string, stop: string) =>
  page
    .locator('.control-list')
    .getByRole('region', { name: `Valves of ${valves}` })
    .getByRole('button', { name: `${valve}: ${stop}`, exact: true })
    .click();

const bleeder = (page: Page, state: 'Open' | 'Shut') =>
  page
    .locator('.control-list')
    .getByRole('radiogroup', { name: 'Intake 1 bleeder' })
    .getByRole('radio', { name: state })
    .click();

const say = (page: Page, text: string | RegExp) =>
  page.locator('.radio').getByRole('button', { name: text }).click();

async function govern(page: Page, rig: string, psi: number) {
  const field = page.locator('.stage-side').getByRole('spinbutton', { name: `${rig} governor` });
  await field.fill(String(psi));
  await field.press('Enter');
}

const heard = (page: Page, words: string) =>
  page.locator('.said, .radio-log', { hasText: words }).first().waitFor();

const connected = (page: Page) => page.locator('[data-connection="here"]').waitFor();

/** Where the wall opens without typing, as the instructor has it: path and fragment. */
const wallLink = async (lead: Page) =>
  (await lead.getByRole('link', { name: 'Open the wall screen' }).getAttribute('href'))!.slice(1);

/** Past drills of a crew: the list is asked for anew a moment after the typing. */
async function ofCrew(page: Page, crew: string) {
  const listed = page.waitForResponse((one) => new URL(one.url()).searchParams.has('crew'));
  await page.getByRole('searchbox').fill(crew);
  await listed;
}

async function axeClean(page: Page, where: string) {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const told = violations.map(
    (one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).join('; ')}`,
  );
  expect(told, where).toEqual([]);
}

describe('several people on one water supply', () => {
  it('play the boost to its end over a drop and a reload, and look at it again', async () => {
    const crew = `Browser crew ${Date.now()}`;
    const instructor = await made(crew);
    const { code } = instructor;
    const lead = instructor.page;
    // The code is typed in small letters at the start page, as it is heard.
    const hydrant = await device('drill');
    await hydrant.page.getByLabel('Code from the instructor').fill(code.toLowerCase());
    await hydrant.page.getByRole('button', { name: 'Join' }).click();
    await takeRole(hydrant.page, 'hydrant');
    const attack = await joined(code, 'attack');
    const [pump, fire] = [hydrant.page, attack.page];

    // Taken roles are taken for a third.
    const late = await device(`drill/${code}`);
    await late.page.getByRole('button', { name: 'Take nozzle crew' }).waitFor();
    expect(await late.page.getByRole('button', { name: /Take hydrant/ }).count()).toBe(0);
    await late.close();

    await lead.locator('.seat-list li[data-here]').nth(1).waitFor();
    await lead.getByRole('button', { name: 'Let the computer play the nozzle crew' }).click();
    await lead.getByText('played by the computer').waitFor();
    await lead.getByText('Show each role its next step').click();
    await pump.getByText('The drill has not begun').waitFor();
    await lead.getByRole('button', { name: 'Begin the drill' }).click();
    await pump.getByText('The drill has not begun').waitFor({ state: 'hidden' });

    await couple(pump, 'Suction hose', 'water', 'Hydrant assist valve V1, pump suction');
    await couple(pump, 'Suction hose', 'fire', 'Booster, intake 1');
    await couple(pump, 'Discharge hose', 'water', 'Booster, discharge 1');
    await couple(pump, 'Discharge hose', 'fire', 'Hydrant assist valve V1, pump discharge');
    await bleeder(pump, 'Open');
    await nextIs(pump, /Tell the attack operator/);
    await say(pump, 'Hooked up and ready to boost.');
    await heard(fire, 'Hooked up and ready to boost.');
    await nextIs(pump, /handle to boost/);

    // The hydrant operator's tablet loses the network, taps all the same, and has it again.
    await hydrant.page.context().setOffline(true);
    await pump.locator('[data-connection="away"]').waitFor();
    await lead.getByText('taken, its device is away').waitFor();
    await turn(pump, 'Hydrant assist valve V1', 'Handle', 'to boost');
    await pump.getByText('1 action waits').waitFor();
    await hydrant.page.context().setOffline(false);
    await connected(pump);
    await lead.getByRole('radio', { name: '× 4' }).click();
    await pump.locator('.room-role', { hasText: 'Hydrant operator' }).waitFor();
    // The handle went to boost once it was back: the suction hose fills, and is full.
    await nextIs(pump, /Wait for water at the bleeder/);
    await bleeder(pump, 'Shut');
    await nextIs(pump, /Open your intake 1/);
    await turn(pump, 'Booster', 'Intake 1', 'open');
    // Hydrant H1 stands at 62 psi; two lines take some 280 gpm of it.
    await expect.poll(() => gauge(pump, 'B1.intake'), { timeout: 30_000 }).toBeGreaterThan(40);
    expect(await gauge(pump, 'B1.intake')).toBeLessThan(62);

    // The attack operator's tablet is closed and opened again: the same role, the present state.
    const unassistedPsi = await gauge(fire, 'A1.intake');
    const closed = attack.page;
    const back = await closed.context().newPage();
    await closed.close();
    await back.goto(at(`drill/${code}`));
    await back.locator('.stage').waitFor();
    await back.locator('.room-role', { hasText: 'Attack operator' }).waitFor();
    await heard(back, 'Hooked up and ready to boost.');
    expect(Math.abs((await gauge(back, 'A1.intake')) - unassistedPsi)).toBeLessThanOrEqual(6);

    await nextIs(back, /Say what pressure/);
    await say(back, /^I want/);
    await back.getByRole('button', { name: 'Say it' }).click();
    await heard(pump, 'I want 120 psi.');
    await turn(pump, 'Booster', 'Discharge 1', 'open');
    await nextIs(pump, /Put the pump in gear/);
    await pump.locator('.stage-side').getByRole('radio', { name: 'In gear' }).click();
    await say(pump, 'Boosting now: watch your intake.');
    await nextIs(pump, /90 psi/);
    await govern(pump, 'Booster', 90);
    await nextIs(pump, /120 psi/);
    await govern(pump, 'Booster', 120);
    await nextIs(pump, /Say that the boost is made/);
    await say(pump, 'Boost is made.');
    await nextIs(back, /Open discharge 3/);
    // What the booster adds arrives at the fire.
    expect(await gauge(back, 'A1.intake')).toBeGreaterThan(unassistedPsi + 20);
    await turn(back, 'Attack engine', 'Discharge 3', '25 percent open');
    // The computer opens the third nozzle once its line is full; the instructor sees the truth of it.
    const third = lead.locator('.whole-piece', { hasText: 'Nozzle N3' });
    await third.filter({ hasText: 'open' }).waitFor({ timeout: 45_000 });
    await expect.poll(() => gauge(lead, 'N3.pressure'), { timeout: 45_000 }).toBeGreaterThan(60);

    // Ended by the instructor, for all of them.
    await lead.getByRole('button', { name: 'End the drill' }).click();
    await lead.getByRole('alertdialog').getByRole('button', { name: 'End it' }).click();
    await pump.getByText('The drill has ended.').waitFor();
    await lead.getByRole('link', { name: 'See how it went' }).click();
    await lead.locator('.criterion').first().waitFor();
    const stands = Object.fromEntries(
      await lead
        .locator('.criterion')
        .evaluateAll((rows) =>
          rows.map((row) => [
            row.querySelector('.criterion-label')?.textContent ?? '',
            (row as HTMLElement).dataset.stands,
          ]),
        ),
    );
    expect(stands).toMatchObject({
      'Water interrupted at an open nozzle': 'met',
      'Steps out of order': 'met',
      'Wrong connections': 'met',
      'Messages missed': 'met',
      'Time to boost': 'not judged',
    });

    // The replay: before the boost the booster stands still, at the end it holds what was asked.
    const booster = lead.locator('.whole-piece', { hasText: 'Booster' });
    await booster.filter({ hasText: 'out of gear' }).waitFor();
    const scrubber = lead.getByRole('slider', { name: 'Moment of the drill' });
    await scrubber.press('End');
    await booster.filter({ hasText: 'pumping' }).waitFor();
    expect(await booster.textContent()).toMatch(/discharge1(19|20|21) psi/);
    await lead.locator('.mark-button', { hasText: 'pump in gear' }).click();
    await booster.filter({ hasText: 'out of gear' }).waitFor();
    expect(await lead.locator('.scrubber-time b').textContent()).not.toBe('0:00');
    const lines = await lead
      .locator('.chart-reading')
      .evaluateAll((paths) => paths.map((path) => path.getAttribute('d') ?? ''));
    // Three gauges of each of two engines, one at the discharge that is gated, and a pressure for each of four nozzles.
    expect(lines.length).toBe(11);
    for (const line of lines) expect(line.length).toBeGreaterThan(100);

    // All of it in SI by the app's switch.
    await lead.getByRole('radio', { name: 'bar · L/min' }).click();
    // 120 psi = 8.27 bar.
    await scrubber.press('End');
    await booster.filter({ hasText: /discharge8\.[23]\d* bar/ }).waitFor();
    const main = (await lead.locator('main').textContent()) ?? '';
    expect(main.match(/.{20}\b(psi|gpm)\b.{10}/g)).toBeNull();
    await lead.getByRole('radio', { name: 'psi · gpm' }).click();

    const report = await lead.getByRole('link', { name: /^Print the report/ }).getAttribute('href');
    const pdf = await fetch(new URL(report!, lead.url()));
    expect(pdf.status).toBe(200);
    expect((await pdf.text()).slice(0, 5)).toBe('%PDF-');

    // And in the list of past drills, by the crew.
    await lead.getByRole('link', { name: '‹ Past drills' }).click();
    await ofCrew(lead, crew);
    await expect.poll(() => lead.locator('.past-run').count()).toBe(1);
    await lead.locator('.past-run', { hasText: crew }).getByRole('link').click();
    await lead.locator('.score').waitFor();

    // Taken out of the records, after a question.
    await lead.getByRole('link', { name: '‹ Past drills' }).click();
    await ofCrew(lead, crew);
    await expect.poll(() => lead.locator('.past-run').count()).toBe(1);
    await lead.getByRole('button', { name: /^Remove / }).click();
    await lead.getByRole('button', { name: 'Keep it' }).click();
    expect(await lead.locator('.past-run').count()).toBe(1);
    await lead.getByRole('button', { name: /^Remove / }).click();
    await lead.getByRole('alertdialog').getByRole('button', { name: 'Remove' }).click();
    await lead.getByText(`No drill was run by “${crew}”.`).waitFor();
    await lead.reload();
    await ofCrew(lead, crew);
    await lead.getByText(`No drill was run by “${crew}”.`).waitFor();

    expect(instructor.errors).toEqual([]);
    expect(attack.errors).toEqual([]);
    // A connection without a network is told of by the browser itself.
    expect(hydrant.errors.filter((text) => !/ERR_INTERNET_DISCONNECTED/.test(text))).toEqual([]);
    for (const one of [instructor, hydrant, attack]) await one.close();
  }, 240_000);

  it('nothing moves on a screen when the clock stops and goes on', async () => {
    const lead = await made(`Still crew ${Date.now()}`, { viewport: { width: 820, height: 1180 } });
    const tablets = await Promise.all(
      [390, 820, 1440].map(async (width) => {
        const viewport = { width, height: 1000 };
        const device = await openApp({ viewport });
        await device.page.goto(at(`drill/${lead.code}`));
        return device;
      }),
    );
    const roles = ['hydrant operator', 'attack operator', 'nozzle crew'];
    for (const [index, { page }] of tablets.entries()) {
      await page.getByRole('button', { name: `Take ${roles[index]}` }).click();
      await page.locator('.stage').waitFor();
    }
    const topOf = async (page: Page, what: string) =>
      Math.round((await page.locator(what).first().boundingBox())!.y);
    const tops = async () => [
      await topOf(lead.page, '.whole-sheet'),
      await topOf(lead.page, '.switcher[aria-label="Speed of the clock"], .panel-row .switcher'),
      ...(await Promise.all(tablets.map(({ page }) => topOf(page, '.stage-gauges')))),
    ];
    const held = async (words: string) => {
      for (const { page } of [lead, ...tablets])
        await expect.poll(() => page.locator('.room-held').textContent()).toBe(words);
    };
    await held('The drill has not begun: the instructor starts it.');
    const before = await tops();
    await lead.page.getByRole('button', { name: 'Begin the drill' }).click();
    await held('');
    expect(await tops()).toEqual(before);
    await expect.poll(() => lead.page.locator('.room-clock b').textContent()).not.toBe('0:00');
    await lead.page.getByRole('button', { name: 'Stop the clock' }).click();
    await held('The instructor has stopped the clock.');
    expect(await tops()).toEqual(before);
    for (const one of [lead, ...tablets]) {
      expect(one.errors).toEqual([]);
      await one.close();
    }
  }, 150_000);

  it('a fault that the instructor makes shows in what follows, and can be put right', async () => {
    const instructor = await made('Faults');
    const { page: lead, code } = instructor;
    const attack = await joined(code, 'attack');
    await lead.getByRole('button', { name: 'Begin the drill' }).click();
    await lead.getByRole('radio', { name: '× 4' }).click();
    const kink = lead.getByRole('button', { name: 'Supply hose: Kinks' });
    await kink.click();
    await expect.poll(() => gauge(attack.page, 'A1.intake')).toBeLessThan(20);
    // The crew sees the gauge fall, not why.
    expect(await attack.page.getByText('kinked').count()).toBe(0);
    expect(await kink.isDisabled()).toBe(true);
    // Nor does the class, on the wall, until the instructor shows it.
    const wall = await device(await wallLink(lead));
    await wall.page.locator('.whole-piece').first().waitFor();
    const faulty = wall.page.locator('.whole-hose[data-faulty]');
    expect(await faulty.count()).toBe(0);
    await lead.getByText('Show faults on the wall').click();
    const told = wall.page.getByText('Supply hose kinked');
    await told.waitFor();
    expect(await faulty.count()).toBeGreaterThan(0);
    await lead.getByText('Show faults on the wall').click();
    await told.waitFor({ state: 'detached' });
    expect(await faulty.count()).toBe(0);
    await wall.close();
    await lead.getByRole('button', { name: 'Put right: Supply hose kinked' }).click();
    await expect.poll(() => gauge(attack.page, 'A1.intake')).toBeGreaterThan(30);
    await lead.getByLabel('What to say').fill('Second alarm: 40 psi less at the main');
    await lead.getByRole('button', { name: 'Say', exact: true }).click();
    await heard(attack.page, 'Second alarm');
    // Tapped without a network on a page that is then closed: told, not done late.
    await attack.page.context().setOffline(true);
    await attack.page.locator('[data-connection="away"]').waitFor();
    await turn(attack.page, 'Attack engine', 'Discharge 1', 'shut');
    await attack.page.getByText('1 action waits').waitFor();
    const back = await attack.page.context().newPage();
    await attack.page.close();
    await back.context().setOffline(false);
    await back.goto(at(`drill/${code}`));
    await back.getByText('Not done:').waitFor();
    await back.getByText('Discharge 1, Attack engine: shut').waitFor();
    await back.getByRole('button', { name: 'Understood' }).click();
    expect(await gauge(back, 'A1.flow')).toBeGreaterThan(200);
    await lead.getByRole('button', { name: 'Stop the clock' }).click();
    await back.getByText('The instructor has stopped the clock.').waitFor();
    await lead.getByRole('button', { name: 'Free the role of attack operator' }).click();
    await back.getByText('was given free').waitFor();
    await back.getByRole('button', { name: 'Choose a role' }).click();
    await takeRole(back, 'attack');
    expect(instructor.errors).toEqual([]);
    await attack.close();
    await instructor.close();
  });

  it('opens the wall by its own code alone: linked or typed, and no more once it was made anew', async () => {
    const { page: lead, code, close, errors } = await made('Wall');
    const link = await wallLink(lead);
    const key = link.split('#')[1]!;
    expect(link).toBe(`drill/${code}/wall#${key}`);
    // A tablet that has only the code to join by sees the roles, and nothing of the drill.
    const tablet = await device(`drill/${code}`);
    await tablet.page.getByRole('link', { name: 'Watch' }).click();
    const field = tablet.page.getByLabel('Wall code from the instructor');
    const open = tablet.page.getByRole('button', { name: 'Open the wall' });
    await field.fill(code);
    await open.click();
    await tablet.page.getByText(`${code} is a code to join by`).waitFor();
    await field.fill('BBBB BBBB');
    await open.click();
    await tablet.page.getByText('This is not the wall code of this drill').waitFor();
    expect(await tablet.page.locator('.whole-piece').count()).toBe(0);
    // Typed as it is read out, it opens; and again after a reload.
    await field.fill(`${key.slice(0, 4)} ${key.slice(4)}`.toLowerCase());
    await open.click();
    await tablet.page.locator('.whole-piece').first().waitFor();
    await tablet.page.reload();
    await tablet.page.locator('.whole-piece').first().waitFor();
    // By the link it opens at once, and the address on the wall does not give the key away.
    const sent: string[] = [];
    const wall = await device('drill');
    wall.page.on('request', (one) => sent.push(one.url()));
    wall.page.on('websocket', (one) => sent.push(one.url()));
    await wall.page.goto(at(link));
    await wall.page.locator('.whole-piece').first().waitFor();
    expect(wall.page.url()).toBe(at(`drill/${code}/wall`));
    // A browser sends no fragment (RFC 3986, section 3.5); Playwright tells it with the address all the same.
    expect(sent.filter((url) => new URL(url).pathname.includes(key))).toEqual([]);
    expect(sent.filter((url) => new URL(url).search.includes(key))).toEqual([]);
    // Made anew: both are out, and the instructor has the new one.
    await lead.getByRole('button', { name: 'Make a new wall code' }).click();
    await wall.page.getByText('This is not the wall code of this drill, or no longer').waitFor();
    await tablet.page.getByText('This is not the wall code of this drill, or no longer').waitFor();
    await expect.poll(() => wallLink(lead)).not.toBe(link);
    await wall.page.goto(at(await wallLink(lead)));
    await wall.page.locator('.whole-piece').first().waitFor();
    expect(errors).toEqual([]);
    await wall.close();
    await tablet.close();
    await close();
  });

  it('says what is wrong with a code, and where no drill runs under one', async () => {
    const { page, close } = await device('drill');
    const field = page.getByLabel('Code from the instructor');
    await field.fill('KTMRA');
    await page.getByRole('button', { name: 'Join' }).click();
    await page.getByText('A is in no code').waitFor();
    expect(await field.inputValue()).toBe('KTMRA');
    await field.fill('BBBBB');
    await page.getByRole('button', { name: 'Join' }).click();
    await page.getByText('No drill runs under this code').waitFor();
    await close();
  });

  it('starts from the plan in the lay, with the department’s own benchmark and crew', async () => {
    const { page, close } = await device('drill/new');
    await page.getByText('The plan open in the lay').click();
    await page.getByText('Water flowing').click();
    await page.locator('summary', { hasText: 'Benchmarks' }).click();
    const within = page.getByRole('textbox', { name: 'Boosted within' });
    await within.fill('90');
    await within.press('Tab');
    await page.getByText('your department’s; ours: not judged').waitFor();
    await page.locator('summary', { hasText: 'Seed' }).click();
    const seed = page.getByRole('textbox', { name: /^Seed/ });
    await seed.fill('many');
    await page.getByText('“many” is no seed').waitFor();
    await seed.fill('7');
    await page.getByRole('button', { name: 'Make the drill' }).click();
    await page.locator('.code-shown').waitFor();
    await page.locator('.whole-piece').first().waitFor();
    await page.getByRole('button', { name: 'End the drill' }).click();
    await page.getByRole('button', { name: 'End it' }).click();
    await page.getByRole('link', { name: 'See how it went' }).click();
    // The plan flows already: there is no boost left to drill.
    await page
      .locator('.criterion', { hasText: 'Time to boost' })
      .getByText('No boost is drilled here.')
      .waitFor();
    await close();
  });
});

describe('what stays in sight', () => {
  for (const [width, height, colorScheme] of [
    [390, 844, 'light'],
    [820, 1180, 'dark'],
  ] as const) {
    it(`is the pump’s pressures and what stands wrong, by its governor at ${width} px`, async () => {
      const lead = await made(`In sight ${width}`);
      const look = { colorScheme, viewport: { width, height } };
      const { page, errors, close } = await joined(lead.code, 'attack', look);
      await page.getByText('Never uncouple under pressure').waitFor();
      await page.getByText('Defer to your department').waitFor();
      const watch = page.locator('.stage-watch');
      const before = (await watch.boundingBox())!.height;
      const more = page.getByRole('button', { name: 'Attack engine governor: +10' });
      await more.evaluate((node) => node.scrollIntoView({ block: 'end' }));
      await lead.page.getByRole('button', { name: 'Begin the drill' }).click();
      await lead.page.getByRole('button', { name: 'Supply hose: Kinks' }).click();
      // What it feeds wants far more than comes through a kink.
      const told = page.locator('.stage-caution[role="status"]');
      await expect.poll(() => told.textContent()).toMatch(/under 20 psi/);
      const bar = (await page.locator('.room-bar').boundingBox())!;
      const seen = (await watch.boundingBox())!;
      expect(Math.abs(seen.y - (bar.y + bar.height))).toBeLessThanOrEqual(1);
      expect(seen.height).toBe(before);
      expect((await more.boundingBox())!.y).toBeGreaterThan(seen.y + seen.height);
      const strip = page.locator('.watch-strip');
      expect(await strip.isVisible()).toBe(true);
      expect(await strip.getAttribute('aria-hidden')).toBe('true');
      await expect.poll(() => strip.textContent()).toMatch(/intake.*discharge/);
      await axeClean(page, 'attack operator');
      expect(errors).toEqual([]);
      await close();
      await lead.close();
    }, 90_000);
  }

  it('is of a nozzle crew its streams in words, and no gauge', async () => {
    const lead = await made('Streams');
    const { page, close } = await device(`drill/${lead.code}`, {
      viewport: { width: 390, height: 844 },
    });
    await page.getByRole('button', { name: 'Take nozzle crew' }).click();
    await page.locator('[data-stream="N1"]', { hasText: 'stream' }).waitFor();
    expect(await page.locator('[data-gauge]').count()).toBe(0);
    expect(await page.locator('.stage-gauges').textContent()).not.toMatch(/psi|bar/);
    await axeClean(page, 'nozzle crew');
    await close();
    await lead.close();
  });

  for (const evolution of ['Boost through the assist valve', 'Relay of three engines']) {
    it(`is all of the wall: ${evolution}`, async () => {
      const lead = await device('drill/new');
      await lead.page.getByRole('button', { name: /Evolution/ }).click();
      await lead.page.getByRole('menuitemradio', { name: evolution }).click();
      await lead.page.getByRole('button', { name: 'Make the drill' }).click();
      await lead.page.locator('.code-shown').waitFor();
      const wall = await device(await wallLink(lead.page));
      await wall.page.locator('.whole-piece').first().waitFor();
      for (const [width, height] of [
        [1440, 900],
        [1366, 768],
      ] as const) {
        await wall.page.setViewportSize({ width, height });
        const lowest = () =>
          wall.page.evaluate(() =>
            Math.max(
              document.documentElement.scrollHeight,
              ...[...document.querySelectorAll('.whole-piece, .drill-cautions')].map(
                (node) => node.getBoundingClientRect().bottom,
              ),
            ),
          );
        await expect.poll(lowest, { message: `${width}×${height}` }).toBeLessThanOrEqual(height);
      }
      await wall.close();
      await lead.close();
    }, 60_000);
  }
});

describe('how drills together look', () => {
  for (const width of [390, 1440] as const) {
    for (const colorScheme of ['light', 'dark'] as const) {
      it(`has no faults for assistive technology at ${width} px, ${colorScheme}`, async () => {
        const look = { colorScheme, viewport: { width, height: 900 } };
        const { page, code, close } = await made('Look', look);
        await page.locator('.whole-piece').first().waitFor();
        await axeClean(page, 'instructor');
        const second = await device(`drill/${code}`, look);
        await second.page.getByRole('button', { name: 'Take nozzle crew' }).waitFor();
        await axeClean(second.page, 'join');
        await second.page.goto(at(`drill/${code}/wall`));
        await second.page.getByRole('button', { name: 'Open the wall' }).click();
        await second.page.getByText('Type the eight letters').waitFor();
        await axeClean(second.page, 'wall code');
        await second.page.goto(at(await wallLink(page)));
        await second.page.locator('.whole-piece').first().waitFor();
        await axeClean(second.page, 'wall');
        await second.page.goto(at('drill/new'));
        await second.page.locator('summary', { hasText: 'Benchmarks' }).click();
        await axeClean(second.page, 'start');
        await second.close();
        await page.getByRole('button', { name: 'Begin the drill' }).click();
        await page.getByRole('button', { name: 'Supply hose: Kinks' }).click();
        await page.getByText('Supply hose kinked').first().waitFor();
        await page.getByRole('button', { name: 'End the drill' }).click();
        await page.getByRole('button', { name: 'End it' }).click();
        await page.getByRole('link', { name: 'See how it went' }).click();
        await page.locator('.whole-piece').first().waitFor();
        await axeClean(page, 'replay');
        for (const path of ['drill', 'drill/new', 'drill/past']) {
          await page.goto(at(path));
          await page.locator('h1').first().waitFor();
          await page.waitForLoadState('networkidle');
          await axeClean(page, path);
        }
        await close();
      }, 180_000);
    }
  }

  it('fits every width without scrolling sideways, with targets for a glove', async () => {
    const { page, code, close } = await made('Width', { hasTouch: true });
    await page.locator('.whole-piece').first().waitFor();
    const fits = async (where: string) => {
      for (const width of [390, 820, 1440]) {
        await page.setViewportSize({ width, height: 900 });
        await expect
          .poll(() => page.evaluate(() => document.documentElement.scrollWidth - innerWidth), {
            message: `${where} at ${width}`,
          })
          .toBeLessThanOrEqual(0);
      }
      const small = await page
        .locator(
          'main button:visible, main input:visible, main a:visible, main label:has(input):visible',
        )
        .evaluateAll((nodes) =>
          nodes
            .filter(
              (node) =>
                !node.closest('.hidden-text') &&
                !['checkbox', 'radio', 'range'].includes(node.getAttribute('type') ?? ''),
            )
            .map((node) => ({ node, box: node.getBoundingClientRect() }))
            .filter(({ box }) => box.width > 2 && (box.width < 43.5 || box.height < 43.5))
            .map(({ node, box }) => `${node.outerHTML.slice(0, 90)} ${box.width}×${box.height}`),
        );
      expect(small, where).toEqual([]);
    };
    await fits('instructor');
    await page.goto(at(`drill/${code}/wall`));
    await page.locator('.whole-piece').first().waitFor();
    await fits('wall');
    // Nothing of the drawing is cut off where it is drawn larger.
    const place = (await page.locator('.whole').boundingBox())!;
    for (const piece of await page.locator('.whole-piece').all()) {
      const box = (await piece.boundingBox())!;
      expect(box.x).toBeGreaterThanOrEqual(place.x);
      expect(box.x + box.width).toBeLessThanOrEqual(place.x + place.width);
      expect(box.y + box.height).toBeLessThanOrEqual(place.y + place.height);
    }
    await page.goto(at('drill/new'));
    await page.getByRole('button', { name: 'Make the drill' }).waitFor();
    await fits('start');
    await page.goto(at(`drill/${code}`));
    await page.getByRole('button', { name: 'Leave', exact: true }).click();
    await page.getByRole('button', { name: 'Instruct' }).waitFor();
    await fits('join');
    await page.getByRole('button', { name: 'Instruct' }).click();
    await page.getByRole('button', { name: 'End the drill' }).click();
    await page.getByRole('button', { name: 'End it' }).click();
    await page.getByRole('link', { name: 'See how it went' }).click();
    await page.locator('.whole-piece').first().waitFor();
    await fits('replay');
    await close();
  });
});
