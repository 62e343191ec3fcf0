import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { answerFigure, openApp, pickFromPlanMenu, typeInto, withBrowser } from './open-app.ts';

withBrowser();

const file = (name: string, text: string) => ({
  name,
  mimeType: 'application/yaml',
  buffer: Buffer.from(text),
});

describe('plan files', () => {
  for (const [item, ending] of [
    ['Save as YAML', 'yaml'],
    ['Save as JSON', 'json'],
  ] as const) {
    it(`saves a plan as ${ending} and opens it again, the same`, async () => {
      const { page, close } = await openApp();
      await typeInto(page, /^Lay length/, '1250');
      const figure = await answerFigure(page);
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        pickFromPlanMenu(page, item),
      ]);
      expect(download.suggestedFilename()).toBe(`cold-store-quarry-road.${ending}`);
      const text = await readFile(await download.path(), 'utf8');
      await pickFromPlanMenu(page, /^Forward lay/);
      await expect.poll(() => answerFigure(page)).not.toBe(figure);
      await page.getByLabel('Plan file').setInputFiles(file(`saved.${ending}`, text));
      await expect.poll(() => answerFigure(page)).toBe(figure);
      await close();
    });
  }

  it('lists what is wrong with a bad file, line by line, and leaves the plan alone', async () => {
    const { page, close } = await openApp();
    const bad = 'plugside: 1\ntitle: Broken\nscene: E3\nhydrants:\n  - id: H1\n    static: deep\n';
    await page.getByLabel('Plan file').setInputFiles(file('broken.yaml', bad));
    const message = page.getByRole('alert');
    await message.getByText('broken.yaml was not opened').waitFor();
    expect(await message.textContent()).toMatch(/line 6/);
    expect(await answerFigure(page)).toBe(1395);
    await message.getByRole('button', { name: 'Dismiss' }).click();
    expect(await page.getByRole('alert').count()).toBe(0);
    await close();
  });

  it('opens every pattern and example without an error', async () => {
    const { page, errors, close } = await openApp();
    await page.getByRole('button', { name: /^Plan/ }).click();
    const names = await page.getByRole('menuitem').allInnerTexts();
    await page.keyboard.press('Escape');
    const starts = names.filter((name) => !/^(Open|Save|Copy)/.test(name));
    expect(starts.length).toBeGreaterThan(8);
    for (const name of starts) {
      await pickFromPlanMenu(page, name);
      await page.locator('.evolution svg').waitFor();
      expect(await page.locator('.answer-problem, .nothing').count(), name).toBe(0);
    }
    expect(errors).toEqual([]);
    await close();
  });
});

describe('what outlives the page', () => {
  it('carries the whole plan in a link to someone else', async () => {
    const sender = await openApp();
    await typeInto(sender.page, /^Rise/, '60');
    const figure = await answerFigure(sender.page);
    await pickFromPlanMenu(sender.page, /^Copy a link/);
    await sender.page.locator('.message').waitFor();
    const fragment = new URL(sender.page.url()).hash;
    await sender.close();
    const receiver = await openApp({ fragment });
    await expect.poll(() => answerFigure(receiver.page)).toBe(figure);
    // Gone from the address, so that a reload keeps what is changed from here.
    expect(new URL(receiver.page.url()).hash).toBe('');
    await receiver.close();
  });

  it('says in words that a link was cut short', async () => {
    const { page, close } = await openApp({ fragment: '#plan=7VptT9tA' });
    await page.getByRole('alert').getByText('damaged').waitFor();
    expect(await answerFigure(page)).toBe(1395);
    await close();
  });

  it('keeps the plan, the units and the theme over a reload', async () => {
    const { page, close } = await openApp();
    await typeInto(page, /^Lay length/, '1250');
    await page.getByRole('radio', { name: 'bar · L/min' }).click();
    await page.getByRole('radio', { name: 'Night' }).click();
    const figure = await answerFigure(page);
    await page.reload();
    await expect.poll(() => answerFigure(page)).toBe(figure);
    expect(await page.locator('html').getAttribute('data-theme')).toBe('night');
    expect(await page.getByRole('spinbutton', { name: /^Lay length/ }).inputValue()).toBe('381');
    await close();
  });
});
