/**
 * `npm test`: installs what is missing, then lint, types, tests, build, and tests in a browser.
 * Goes on after a failed step, so that one run tells all; the exit code is 0 only when none failed.
 * The last line holds the true totals of both test runs.
 */
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { buildStale } from './build.mjs';
import { findChromium } from './chromium.mjs';
import { installMissing, requireNode } from './install.mjs';
import { preparePostgresql } from './postgresql.mjs';
import { root, runTool } from './tools.mjs';

requireNode();
await installMissing();
const untested = await preparePostgresql();
if (untested) console.warn(untested);

/** @type {string[]} */
const failedSteps = [];
const totals = { passed: 0, failed: 0 };

await step(
  'lint and package directions',
  async () => (await runTool('biome', ['check', '.'])) === 0,
);
await step('types', async () => (await runTool('tsc', ['-b'])) === 0);
await step('tests', () => runTests('vitest.config.ts', 'tests.json'));
const built = await step('build of the app', buildStale);
await step('tests in a browser', async () => {
  const chromium = await findChromium();
  if (!chromium || !built) return false;
  return runTests('vitest.browser.config.ts', 'browser-tests.json', {
    PLUGSIDE_CHROMIUM: chromium,
  });
});

if (untested) console.warn(`\n${untested}`);
if (failedSteps.length > 0) console.error(`\nFailed: ${failedSteps.join('; ')}`);
console.log(`\n${totals.passed} passed, ${totals.failed} failed`);
process.exitCode = failedSteps.length > 0 || totals.failed > 0 ? 1 : 0;

/**
 * @param {string} name
 * @param {() => Promise<boolean>} work
 */
async function step(name, work) {
  console.log(`\n== ${name}`);
  const ok = await work();
  if (!ok) failedSteps.push(name);
  return ok;
}

/**
 * One run of the test runner; adds to the totals.
 *
 * @param {string} config
 * @param {string} report name of the runner's own report, which the totals are read from
 * @param {Record<string, string>} [settings] environment to add
 */
async function runTests(config, report, settings = {}) {
  const file = join(root, '.cache', report);
  mkdirSync(join(root, '.cache'), { recursive: true });
  rmSync(file, { force: true });
  const code = await runTool(
    'vitest',
    [
      'run',
      '--config',
      config,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ],
    { env: { ...process.env, ...settings } },
  );
  const counted = countTests(file);
  totals.passed += counted.passed;
  totals.failed += counted.failed;
  return code === 0 && counted.failed === 0;
}

/**
 * A file that failed before its first test (it did not load) counts as one failed test,
 * and so does a run that left no report.
 *
 * @param {string} file
 */
function countTests(file) {
  try {
    const report = JSON.parse(readFileSync(file, 'utf8'));
    const unloaded = report.testResults.filter(
      (/** @type {{ status: string, assertionResults: unknown[] }} */ suite) =>
        suite.status === 'failed' && suite.assertionResults.length === 0,
    ).length;
    return { passed: report.numPassedTests, failed: report.numFailedTests + unloaded };
  } catch {
    console.error(`No report from the test runner at ${file}`);
    return { passed: 0, failed: 1 };
  }
}
