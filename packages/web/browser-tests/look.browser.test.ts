import { AxeBuilder } from '@axe-core/playwright';
import { describe, expect, it } from 'vitest';
import { answerFigure, openApp, pickFromPlanMenu, withBrowser } from './open-app.ts';

withBrowser();

const widths = [390, 820, 1440] as const;

describe('every width', () => {
  for (const width of widths) {
    it(`fits ${width} px without scrolling sideways, for every question and a long relay`, async () => {
      const { page, close } = await openApp({ viewport: { width, height: 900 } });
      const overflow = () =>
        page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      for (const question of ['What do I get?', 'How do I set it?', 'What happens now?']) {
        await page.getByRole('radio', { name: question }).click();
        expect(await overflow(), question).toBeLessThanOrEqual(0);
      }
      await pickFromPlanMenu(page, /^Hill relay/);
      expect(await overflow(), 'relay').toBeLessThanOrEqual(0);
      await close();
    });
  }

  it('gives a finger 44 px on everything that can be pressed, on a phone', async () => {
    const { page, close } = await openApp({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    const small = await page
      .locator('button:visible, input:not([type="range"]):visible, summary:visible')
      .evaluateAll((nodes) =>
        nodes
          .filter((node) => !node.closest('[data-idle]') && !node.closest('.hidden-text'))
          .map((node) => ({ node, box: node.getBoundingClientRect() }))
          .filter(({ box }) => box.width < 43.5 || box.height < 43.5)
          .map(({ node, box }) => `${node.outerHTML.slice(0, 90)} ${box.width}×${box.height}`),
      );
    expect(small).toEqual([]);
    await close();
  });

  it('stacks answer, settings, drawing and profile on a phone', async () => {
    const { page, close } = await openApp({ viewport: { width: 390, height: 844 } });
    const tops: number[] = [];
    for (const part of ['.answer', '.set-and-say', '.evolution', '.profile', '.limits']) {
      tops.push((await page.locator(part).boundingBox())!.y);
    }
    expect([...tops].sort((a, b) => a - b)).toEqual(tops);
    await close();
  });
});

describe('labels on the drawings', () => {
  const plans = [null, /^Hill relay/, /^Two hydrants and/, /^Hand lines from a manifold/];
  for (const width of widths) {
    it(`never overlap at ${width} px`, async () => {
      const { page, close } = await openApp({ viewport: { width, height: 900 } });
      for (const plan of plans) {
        if (plan) await pickFromPlanMenu(page, plan);
        for (const drawing of ['.evolution', '.profile']) {
          const boxes = await page.locator(`${drawing} .label text`).evaluateAll((nodes) =>
            nodes.map((node) => {
              const { x, y, width: w, height: h } = node.getBoundingClientRect();
              // The line box is taller than the letters in it.
              return { text: node.textContent, x, y: y + h * 0.2, w, h: h * 0.6 };
            }),
          );
          expect(boxes.length).toBeGreaterThan(2);
          const clashes = boxes.flatMap((a, i) =>
            boxes
              .slice(i + 1)
              .filter(
                (b) => a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h,
              )
              .map((b) => `${a.text} / ${b.text}`),
          );
          expect(clashes, String(plan)).toEqual([]);
        }
      }
      await close();
    });
  }
});

describe('themes and units', () => {
  for (const theme of ['Day', 'Night']) {
    it(`has nothing for axe to find by ${theme.toLowerCase()}`, async () => {
      const { page, close } = await openApp();
      await page.getByRole('radio', { name: theme }).click();
      for (const question of ['What do I get?', 'How do I set it?', 'What happens now?']) {
        await page.getByRole('radio', { name: question }).click();
        const { violations } = await new AxeBuilder({ page }).analyze();
        const told = violations.map(
          (one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).join('; ')}`,
        );
        expect(told, question).toEqual([]);
      }
      await close();
    });
  }

  it('follows the device until told otherwise', async () => {
    const { page, close } = await openApp({ colorScheme: 'dark' });
    const html = page.locator('html');
    expect(await html.getAttribute('data-theme')).toBe('night');
    await page.getByRole('radio', { name: 'Day' }).click();
    expect(await html.getAttribute('data-theme')).toBe('day');
    await close();
  });

  it('tells 1,394.8 gpm as 5,280 L/min (1 gal = 3.785412 L, NIST SP 811)', async () => {
    const { page, close } = await openApp();
    await page.getByRole('radio', { name: 'bar · L/min' }).click();
    await expect.poll(() => answerFigure(page)).toBe(Math.round(1394.842 * 3.785412));
    expect(await page.locator('.answer').textContent()).toContain('L/min');
    await close();
  });
});
