import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, inject } from 'vitest';

const LAUNCH_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built app is served, ending in a slash. */
    appUrl: string;
    /** The same over the same records, with a file of map tiles (PMTiles) of one colour. */
    tiledAppUrl: string;
    /** Another server's map tiles, of one colour: `${tilesUrl}{z}/{x}/{y}.png`. */
    tilesUrl: string;
  }
}

let browser: Browser | undefined;

/** Starts one browser for a file of tests and ends it after them. */
export function withBrowser(): void {
  beforeAll(async () => {
    browser = await chromium.launch({
      executablePath: process.env.PLUGSIDE_CHROMIUM ?? '/usr/bin/chromium',
      args: LAUNCH_ARGS,
    });
  });
  afterAll(async () => {
    await browser?.close();
  });
}

export interface OpenedApp {
  page: Page;
  /** Errors that the page met; a test that expects none checks it. */
  errors: string[];
  close(): Promise<void>;
}

/** Opens the app as a new visitor, with nothing remembered. */
export async function openApp(
  options: BrowserContextOptions & { fragment?: string } = {},
): Promise<OpenedApp> {
  if (!browser) throw new Error('Call withBrowser() at the top of the file first.');
  const { fragment = '', ...context } = options;
  const visitor = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
    ...context,
  });
  const page = await visitor.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(inject('appUrl') + fragment);
  await page.locator('.answer').waitFor();
  return { page, errors, close: () => visitor.close() };
}

/** The big figure of the answer. */
export async function answerFigure(page: Page): Promise<number> {
  const text = (await page.locator('.answer-number').textContent()) ?? '';
  return Number(text.replaceAll(',', ''));
}

/** Types into a number where it stands. */
export async function typeInto(page: Page, label: string | RegExp, text: string): Promise<void> {
  const field = page.getByRole('spinbutton', { name: label });
  await field.fill(text);
  await field.press('Enter');
}

/** Picks from the Plan menu. */
export async function pickFromPlanMenu(page: Page, item: string | RegExp): Promise<void> {
  await page.getByRole('button', { name: /^Plan/ }).click();
  await page.getByRole('menuitem', { name: item }).click();
}
