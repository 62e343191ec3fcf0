import { describe, expect, it } from 'vitest';
import { answerFigure, openApp, withBrowser } from './open-app.ts';

withBrowser();

describe('with the keyboard alone', () => {
  it('reaches every control in order, each with a visible focus and a name', async () => {
    const { page, close } = await openApp();
    const seen: string[] = [];
    for (let i = 0; i < 120; i++) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate(() => {
        const node = document.activeElement;
        if (!node || node === document.body) return null;
        const style = getComputedStyle(node);
        const ringed = node.closest('[data-focus-visible]') ?? node;
        const ring = getComputedStyle(ringed);
        return {
          name:
            node.getAttribute('aria-label') ??
            document.getElementById(node.getAttribute('aria-labelledby')?.split(' ')[0] ?? '')
              ?.textContent ??
            node.textContent ??
            '',
          visible:
            style.outlineStyle !== 'none' ||
            ring.outlineStyle !== 'none' ||
            style.boxShadow !== 'none',
        };
      });
      if (!at) break;
      expect(at.visible, at.name).toBe(true);
      expect(at.name.trim()).not.toBe('');
      seen.push(at.name);
    }
    const reached = seen.join('\n');
    for (const wanted of [
      /^Title of the plan/m,
      /^Plan/m,
      /^Static pressure/m,
      /^Lay length/m,
      /^Place of Engine 3/m,
      /^Discharge pressure of Engine 7/m,
      /^Limit: /m,
    ]) {
      expect(reached).toMatch(wanted);
    }
    await close();
  });

  it('steps a number, ten at a time with shift, and undoes it', async () => {
    const { page, close } = await openApp();
    const rise = page.getByRole('spinbutton', { name: /^Rise/ });
    await rise.focus();
    await page.keyboard.press('ArrowUp');
    expect(await rise.inputValue()).toBe('36');
    await page.keyboard.press('Shift+ArrowDown');
    expect(await rise.inputValue()).toBe('26');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    expect(await rise.inputValue()).toBe('35');
    await close();
  });

  it('moves the engine on the drawing and the pressure on the profile', async () => {
    const { page, close } = await openApp();
    await page.getByRole('slider', { name: /^Place of Engine 3/ }).focus();
    await page.keyboard.press('ArrowLeft');
    expect(await page.getByRole('spinbutton', { name: /^Lay length/ }).inputValue()).toBe('875');
    await page.getByRole('slider', { name: /^Discharge pressure of Engine 7/ }).focus();
    await page.keyboard.press('ArrowDown');
    const now = page.getByRole('radio', { name: 'What happens now?' });
    await expect.poll(() => now.getAttribute('aria-checked')).toBe('true');
    await close();
  });

  it('chooses a question, a hose and a new plan', async () => {
    const { page, close } = await openApp();
    const hose = page.getByRole('button', { name: /Hose of Assist valve to Engine 3/ });
    await hose.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await expect.poll(() => answerFigure(page)).toBeLessThan(1395);
    await page.getByRole('button', { name: /^Plan/ }).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('Forward');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByLabel('Title of the plan').inputValue()).toBe('Forward lay');
    await close();
  });
});

describe('for a screen reader', () => {
  it('tells the answer once it has settled, and the drawings as a table', async () => {
    const { page, close } = await openApp();
    const told = page.locator('[aria-live="polite"]');
    await expect
      .poll(() => told.textContent(), { timeout: 5000 })
      .toContain('1,395 gpm to the scene');
    await page.getByText('The drawings as a table').click();
    const rows = page.locator('.stations tbody tr');
    await expect.poll(() => rows.count()).toBeGreaterThan(10);
    expect(await page.locator('.stations').textContent()).toContain('Engine 3, intake');
    await close();
  });
});
