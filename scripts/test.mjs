/**
 * `npm test`: installs what is missing, then lint, types, tests, build, and tests in a browser.
 * Goes on after a failed step, so that one run tells all; the exit code is 0 only when none failed.
 * What failed is told again at the end, and the last line holds the true totals of both test runs.
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
let passed = 0;
/** @type {import('./test-report.mjs').Failure[]} */
const failures = [];
/** @type {import('./test-report.mjs').Failure[]} */
const repeated = [];

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
for (const { where, why } of repeated) console.warn(`\nPASSED WHEN RUN AGAIN ${where}\n${why}`);
for (const { where, why } of failures) console.error(`\nFAILED ${where}\n${why}`);
if (failedSteps.length > 0) console.error(`\nFailed: ${failedSteps.join('; ')}`);
console.log(`\n${passed} passed, ${failures.length} failed`);
process.exitCode = failedSteps.length > 0 ? 1 : 0;

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
 * One run of the test runner; adds to what passed and to what failed.
 *
 * @param {string} config
 * @param {string} name of the report that the totals are read from
 * @param {Record<string, string>} [settings] environment to add
 */
async function runTests(config, name, settings = {}) {
  const file = join(root, '.cache', name);
  mkdirSync(join(root, '.cache'), { recursive: true });
  rmSync(file, { force: true });
  const code = await runTool(
    'vitest',
    [
      'run',
      '--config',
      config,
      '--reporter=default',
      `--reporter=${join(root, 'scripts', 'test-report.mjs')}`,
    ],
    { env: { ...process.env, PLUGSIDE_TEST_REPORT: file, ...settings } },
  );
  const report = readReport(file, code);
  passed += report.passed;
  failures.push(...report.failures);
  repeated.push(...report.repeated);
  return report.failures.length === 0;
}

/**
 * A run that left no report, or that failed without a failure in it, counts as one failure.
 *
 * @param {string} file
 * @param {number} code what the runner ended with
 * @returns {import('./test-report.mjs').Report}
 */
function readReport(file, code) {
  const unsaid = { where: file, why: `The test runner ended with ${code} and did not say why.` };
  try {
    const report = JSON.parse(readFileSync(file, 'utf8'));
    if (code !== 0 && report.failures.length === 0) report.failures.push(unsaid);
    return report;
  } catch {
    return { passed: 0, failures: [unsaid], repeated: [] };
  }
}
