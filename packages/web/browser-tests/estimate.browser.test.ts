import { AxeBuilder } from '@axe-core/playwright';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openApp, withBrowser } from './open-app.ts';

withBrowser();

async function openEstimate(options: BrowserContextOptions = {}) {
  const app = await openApp(options);
  await app.page.getByRole('link', { name: 'Estimate' }).click();
  await app.page.getByRole('heading', { name: 'How many more lines?' }).waitFor();
  return app;
}

async function read(page: Page, [still, left, flow]: readonly [string, string, string]) {
  await page.getByRole('textbox', { name: 'Static' }).fill(still);
  await page.getByRole('textbox', { name: 'Residual' }).fill(left);
  await page.getByRole('textbox', { name: 'That line' }).fill(flow);
}

const row = (page: Page, name: string) =>
  page.getByRole('row', { name: new RegExp(`^${name}`) }).getByRole('cell');

describe('the quick estimate', () => {
  it('gives one more by percentage at 80 to 60 psi, as published, and what the curve makes of it', async () => {
    const { page, errors, close } = await openEstimate();
    await read(page, ['80', '60', '500']);
    // Tracking/estimating water supply on the fire ground: 25 % drop, one more.
    expect(await row(page, 'Percentage').first().textContent()).toBe('1');
    // (60/20)^0.54 = 1.81 volumes in all to 20 psi, by hand.
    expect(await page.locator('.test-answer').textContent()).toMatch(/^0 more lines.*0\.81/);
    expect(await row(page, 'Percentage').last().textContent()).toContain('too little');
    expect(errors).toEqual([]);
    await close();
  });

  it('is worked by keys alone, and takes other units where they are written', async () => {
    const { page, close } = await openEstimate();
    await page.getByRole('textbox', { name: 'Static' }).focus();
    for (const typed of ['5.5 bar', '72 psi', '1900 L/min']) {
      await page.keyboard.type(typed);
      await page.keyboard.press('Tab');
    }
    expect(await page.locator('.test-answer').count()).toBe(1);
    // 5.5 bar is 79.77 psi (NIST SP 811).
    expect(await page.getByRole('textbox', { name: 'Static' }).inputValue()).toBe('79.77');
    await close();
  });

  it('says what it could not read, and that a residual cannot stand above static', async () => {
    const { page, close } = await openEstimate();
    await read(page, ['60', '80', '250']);
    expect(await page.locator('.findings').textContent()).toContain('80 psi is above static 60');
    await page.getByRole('textbox', { name: 'Static' }).fill('lots');
    await page.keyboard.press('Tab');
    expect(await page.getByText('"lots" does not begin with a number').count()).toBe(1);
    await close();
  });

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`has no faults for assistive technology and fits a phone, ${colorScheme}`, async () => {
      const { page, close } = await openEstimate({
        colorScheme,
        viewport: { width: 390, height: 844 },
      });
      await read(page, ['80', '72', '500']);
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over).toBeLessThanOrEqual(0);
      const low = await page
        .locator('main button:visible, main input:visible')
        .evaluateAll((nodes) => nodes.filter((one) => one.getBoundingClientRect().height < 43.5));
      expect(low).toHaveLength(0);
      await close();
    });
  }
});
