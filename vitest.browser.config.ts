import { defineConfig } from 'vitest/config';

/**
 * Tests that drive the built app in a real browser. `npm test` builds it first and names the
 * browser in PLUGSIDE_CHROMIUM; the app's address is given by `inject('appUrl')`.
 */
export default defineConfig({
  test: {
    include: ['packages/web/**/*.browser.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**'],
    environment: 'node',
    globalSetup: ['scripts/serve-for-browser-tests.ts'],
    // One browser at a time: several on a small machine starve each other.
    pool: 'forks',
    fileParallelism: false,
    // A loaded machine can make one wait too short; a test that fails twice is at fault. The report
    // names what passed only when run again.
    retry: 1,
    // What a page shows after a request may take longer than the usual second.
    expect: { poll: { timeout: 30_000, interval: 100 } },
    testTimeout: 180_000,
    hookTimeout: 180_000,
    env: { PLUGSIDE_CHROMIUM: process.env.PLUGSIDE_CHROMIUM ?? '/usr/bin/chromium' },
  },
});
