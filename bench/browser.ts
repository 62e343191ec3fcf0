/** Chromium over the built app, and the frames that it draws while something goes on. */
import { type Browser, chromium, type Page } from 'playwright-core';
import { formatSeconds } from './measure.ts';

export async function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.PLUGSIDE_CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

export async function openPage(browser: Browser): Promise<Page> {
  const visitor = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
  });
  const page = await visitor.newPage();
  page.on('pageerror', (error) => {
    throw error;
  });
  await page.addInitScript(() => {
    const kept = { at: [] as number[], on: false };
    Object.assign(window, { benchFrames: kept });
    const frame = (time: number) => {
      if (kept.on) kept.at.push(time);
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
  return page;
}

/** Times between the frames that the page could draw while the work went on [s]. */
export async function framesDuring(page: Page, work: () => Promise<void>): Promise<number[]> {
  await page.evaluate(() => {
    const { benchFrames } = window as unknown as { benchFrames: { at: number[]; on: boolean } };
    Object.assign(benchFrames, { at: [], on: true });
  });
  await work();
  const at = await page.evaluate(() => {
    const { benchFrames } = window as unknown as { benchFrames: { at: number[]; on: boolean } };
    benchFrames.on = false;
    return benchFrames.at;
  });
  return at.slice(1).map((time, n) => (time - at[n]!) / 1000);
}

/**
 * Clicks, and waits until the page shows what it is asked to.
 * @returns from the press to the frame after which it is there [s]
 */
export async function clickUntil(
  page: Page,
  at: { x: number; y: number },
  selector: string,
  text: string,
): Promise<number> {
  await page.evaluate(
    ([wanted, words]) => {
      const isThere = () =>
        [...document.querySelectorAll(wanted)].some((one) => one.textContent?.includes(words));
      const shown = new Promise<number>((resolve, reject) => {
        const pressed = (event: Event) => {
          const look = () => {
            const passedMs = performance.now() - event.timeStamp;
            if (isThere())
              requestAnimationFrame(() => resolve(performance.now() - event.timeStamp));
            else if (passedMs < 20_000) requestAnimationFrame(look);
            else reject(new Error(`Nothing at ${wanted} with "${words}" after a click.`));
          };
          look();
        };
        addEventListener('pointerdown', pressed, { capture: true, once: true });
      });
      Object.assign(window, { benchShown: shown });
    },
    [selector, text] as const,
  );
  await page.mouse.click(at.x, at.y);
  const tookMs = await page.evaluate(
    () => (window as unknown as { benchShown: Promise<number> }).benchShown,
  );
  return tookMs / 1000;
}

/** One line of a table: what was done, on the reference and on what is measured. */
export interface Compared {
  what: string;
  reference: readonly number[];
  measured: readonly number[];
}

/** Median and 95th percentile of each, and how many times the reference the measured takes. */
export function printCompared(
  title: string,
  [reference, measured]: readonly [string, string],
  rows: readonly Compared[],
): void {
  const head = [
    '',
    'n',
    `${reference}: median`,
    '95 %',
    'n',
    `${measured}: median`,
    '95 %',
    'ratio',
  ];
  const cells = rows.map((row) => [
    row.what,
    String(row.reference.length),
    formatSeconds(share(row.reference, 0.5)),
    formatSeconds(share(row.reference, 0.95)),
    String(row.measured.length),
    formatSeconds(share(row.measured, 0.5)),
    formatSeconds(share(row.measured, 0.95)),
    `${(share(row.measured, 0.5) / share(row.reference, 0.5)).toPrecision(3)}×`,
  ]);
  const table = [head, ...cells];
  const widths = head.map((_, i) => Math.max(...table.map((line) => line[i]!.length)));
  console.log(`\n${title}`);
  for (const line of table) {
    const padded = line.map((cell, i) =>
      i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!),
    );
    console.log(`  ${padded.join('  ')}`);
  }
}

/** The value that so great a share of them does not exceed. */
function share(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const value = sorted[Math.min(sorted.length - 1, Math.ceil(sorted.length * part) - 1)];
  if (value === undefined) throw new RangeError('There is nothing to take a share of.');
  return value;
}
