/** The Lay page in Chromium: frames while the engine is dragged and a length is keyed; beside it, the pointer moved over the page. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore } from '@plugside/records';
import { framesDuring, openBrowser, openPage, printCompared } from './browser.ts';
import { copyApp, serveDatabase } from './served.ts';

const MOVES = 120;
const folder = mkdtempSync(join(tmpdir(), 'plugside-bench-'));
const file = join(folder, 'empty.db');
await (await openStore({ file })).close();
const app = join(folder, 'app');
copyApp(app);
const served = await serveDatabase(file, app);
const browser = await openBrowser();
try {
  const page = await openPage(browser);
  await page.goto(served.url);
  const engine = page.getByRole('slider', { name: /^Place of Engine/ }).first();
  await engine.waitFor();
  const box = await engine.boundingBox();
  if (!box) throw new Error('The engine is not shown.');
  const grip = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const length = page.getByRole('spinbutton', { name: /^Lay length/ }).first();
  const before = await length.inputValue();

  const sweep = (from: { x: number; y: number }) => async () => {
    for (let move = 1; move <= MOVES; move += 1) {
      await page.mouse.move(from.x - 100 * Math.sin((move / MOVES) * Math.PI), from.y);
      await page.waitForTimeout(8);
    }
  };
  const hovering = await framesDuring(page, sweep({ x: grip.x, y: grip.y + 200 }));
  const dragging = await framesDuring(page, async () => {
    await page.mouse.move(grip.x, grip.y);
    await page.mouse.down();
    await page.mouse.move(grip.x - 60, grip.y);
    if ((await length.inputValue()) === before) throw new Error('The drag changes nothing.');
    await sweep(grip)();
    await page.mouse.up();
  });
  await length.focus();
  const keying = await framesDuring(page, async () => {
    for (let press = 0; press < MOVES; press += 1) {
      await page.keyboard.press(press < MOVES / 2 ? 'ArrowUp' : 'ArrowDown');
    }
  });
  printCompared(
    'Frames on the Lay page (1440 × 900)',
    ['pointer moved', 'plan changed'],
    [
      { what: 'the engine dragged', reference: hovering, measured: dragging },
      { what: 'a length keyed up and down', reference: hovering, measured: keying },
    ],
  );
} finally {
  await browser.close();
  await served.stop();
  rmSync(folder, { recursive: true });
}
