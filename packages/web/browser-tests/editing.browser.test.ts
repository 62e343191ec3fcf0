import { describe, expect, it } from 'vitest';
import { answerFigure, openApp, pickFromPlanMenu, typeInto, withBrowser } from './open-app.ts';

withBrowser();

const LENGTH = /^Lay length/;

describe('the answer', () => {
  it('shows what the EPANET toolkit finds for this hookup: 1,394.8 gpm boosted, 505.6 alone', async () => {
    const { page, errors, close } = await openApp();
    expect(await answerFigure(page)).toBe(1395);
    const words = await page.locator('.answer-words').textContent();
    expect(words).toContain('+889');
    expect(words).toContain('185 psi');
    expect(errors).toEqual([]);
    await close();
  });

  it('loses what the booster gave when it is switched off, and the gain with it', async () => {
    const { page, close } = await openApp();
    await page.getByRole('radio', { name: 'Booster off: hydrant pressure alone' }).click();
    await expect.poll(() => answerFigure(page)).toBeLessThan(1000);
    expect(await page.locator('.answer-words').textContent()).not.toContain(
      'over hydrant pressure',
    );
    await page.getByRole('radio', { name: 'Booster on' }).click();
    await expect.poll(() => answerFigure(page)).toBe(1395);
    await close();
  });
});

describe('changing the plan where it stands', () => {
  it('answers a longer lay with less water, and undo gives it back', async () => {
    const { page, close } = await openApp();
    await typeInto(page, LENGTH, '1600');
    await expect.poll(() => answerFigure(page)).toBeLessThan(1300);
    await page.getByRole('button', { name: 'Undo: Lay length' }).click();
    await expect.poll(() => answerFigure(page)).toBe(1395);
    await page.getByRole('button', { name: 'Redo: Lay length' }).click();
    await expect.poll(() => answerFigure(page)).toBeLessThan(1300);
    await page.keyboard.press('Control+z');
    await expect.poll(() => answerFigure(page)).toBe(1395);
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(() => answerFigure(page)).toBeLessThan(1300);
    await close();
  });

  it('takes another unit when it is written: 100 m is 328 ft (1 ft = 0.3048 m)', async () => {
    const { page, close } = await openApp();
    await typeInto(page, LENGTH, '100 m');
    expect(await page.getByRole('spinbutton', { name: LENGTH }).inputValue()).toBe('328');
    await close();
  });

  it('says in place what is wrong with an entry, and keeps the value', async () => {
    const { page, close } = await openApp();
    await typeInto(page, /^Static pressure/, '4 ft');
    await page.getByRole('alert').getByText('psi').first().waitFor();
    await page.keyboard.press('Escape');
    expect(await page.getByRole('spinbutton', { name: /^Static pressure/ }).inputValue()).toBe(
      '62',
    );
    expect(await answerFigure(page)).toBe(1395);
    await close();
  });

  it('lays a longer lay when the engine is dragged away, in one step back', async () => {
    const { page, close } = await openApp();
    const engine = page.getByRole('slider', { name: /^Place of Engine 3/ });
    const box = (await engine.boundingBox())!;
    const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (let step = 1; step <= 8; step++) await page.mouse.move(from.x - step * 15, from.y);
    await page.mouse.up();
    const length = page.getByRole('spinbutton', { name: LENGTH });
    expect(Number(await length.inputValue())).toBeLessThan(900);
    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await length.inputValue()).toBe('900');
    await close();
  });

  it('adds and takes away side lines and attack lines', async () => {
    const { page, errors, close } = await openApp();
    await page.getByRole('button', { name: /^Take away the side line from side2/ }).click();
    await expect.poll(() => answerFigure(page)).toBeLessThan(1395);
    await page.getByRole('button', { name: '+ side line' }).click();
    const lines = page.locator('.attack-line');
    const before = await lines.count();
    await page.getByRole('button', { name: '+ attack line' }).click();
    expect(await lines.count()).toBe(before + 1);
    await lines
      .last()
      .getByRole('button', { name: /^Take away/ })
      .click();
    expect(await lines.count()).toBe(before);
    expect(errors).toEqual([]);
    await close();
  });

  it("stops the answer at a department's own limit", async () => {
    const { page, close } = await openApp();
    await typeInto(page, /^Limit: Supply hose, 5 in, Engine 7/, '150');
    await expect.poll(() => answerFigure(page)).toBeLessThan(1395);
    expect(await page.locator('.answer-words').textContent()).toContain('150 psi');
    await close();
  });
});

describe('the three questions', () => {
  it('sets for a demand and says when it cannot be had', async () => {
    const { page, close } = await openApp();
    await page.getByRole('radio', { name: 'How do I set it?' }).click();
    await typeInto(page, 'Flow to set for', '1200');
    await page.getByText('Yes.').waitFor();
    await typeInto(page, 'Flow to set for', '2000');
    await page.getByText('Not this way').waitFor();
    await close();
  });

  it('turns to "now" when a pump is set by hand, and tells a passed limit by word', async () => {
    const { page, close } = await openApp();
    await typeInto(page, 'Discharge pressure to set, Engine 7', '215');
    const now = page.getByRole('radio', { name: 'What happens now?' });
    await expect.poll(() => now.getAttribute('aria-checked')).toBe('true');
    await page.locator('.answer-words').getByText('Passed').waitFor();
    await page.locator('.limit-name').getByText('Passed').first().waitFor();
    await close();
  });

  it('tries booster pressures on the valve without changing the plan', async () => {
    const { page, close } = await openApp();
    const trial = page.getByRole('slider', { name: 'Try a booster pressure' });
    await trial.focus();
    await trial.press('Home');
    await page.locator('.valve-sentence').getByText('adds nothing yet').waitFor();
    await trial.press('End');
    await page.locator('.valve-sentence').getByText('above hydrant pressure').waitFor();
    expect(await answerFigure(page)).toBe(1395);
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    await close();
  });
});

describe('a plan that cannot be answered', () => {
  it('says why in place, greys the last good drawing, and comes back when it is mended', async () => {
    const { page, errors, close } = await openApp();
    await pickFromPlanMenu(page, /^Forward lay/);
    await page.getByRole('radio', { name: 'How do I set it?' }).click();
    for (let lines = await page.locator('.attack-line').count(); lines > 0; lines--) {
      await page
        .locator('.attack-line')
        .last()
        .getByRole('button', { name: /^Take away/ })
        .click();
    }
    await page.getByText('cannot be answered as it stands').waitFor();
    expect(await page.locator('.board.stale .evolution svg').count()).toBe(1);
    await typeInto(page, 'Flow to set for', '400');
    await page.getByText('Yes.').waitFor();
    expect(await page.locator('.board.stale').count()).toBe(0);
    expect(errors).toEqual([]);
    await close();
  });
});
