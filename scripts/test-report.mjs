/**
 * Reporter of the test runner: writes what passed and everything that failed to the file named in
 * PLUGSIDE_TEST_REPORT. A test file that does not load, a hook that fails after the last test and
 * an error outside any test fail a run in which every single test passed; they are listed as well.
 * Tests that passed only when run again are named with what was wrong the first time.
 */
import { writeFileSync } from 'node:fs';
import { relative } from 'node:path';

/** @typedef {{ where: string, why: string }} Failure */
/** @typedef {{ passed: number, failures: Failure[], repeated: Failure[] }} Report */

export default class TestReport {
  /**
   * @param {ReadonlyArray<import('vitest/node').TestModule>} modules
   * @param {ReadonlyArray<{ message?: string, stack?: string }>} unhandled
   */
  onTestRunEnd(modules, unhandled) {
    let passed = 0;
    /** @type {Failure[]} */
    const failures = [];
    /** @type {Failure[]} */
    const repeated = [];
    for (const module of modules) {
      const file = relative(process.cwd(), module.moduleId);
      failures.push(...failuresOf(file, module.errors()));
      for (const suite of module.children.allSuites()) {
        failures.push(...failuresOf(`${file} > ${suite.fullName}`, suite.errors()));
      }
      for (const test of module.children.allTests()) {
        const result = test.result();
        const told = () => ({
          where: `${file} > ${test.fullName}`,
          why: (result.errors ?? []).map(textOf).join('\n'),
        });
        if (result.state === 'passed') passed += 1;
        if (result.state === 'passed' && test.diagnostic()?.flaky) repeated.push(told());
        if (result.state === 'failed') failures.push(told());
      }
    }
    failures.push(...failuresOf('outside any test', unhandled));
    writeFileSync(
      process.env.PLUGSIDE_TEST_REPORT ?? '',
      JSON.stringify({ passed, failures, repeated }),
    );
  }
}

/**
 * @param {string} where
 * @param {ReadonlyArray<{ message?: string, stack?: string }>} errors
 * @returns {Failure[]}
 */
function failuresOf(where, errors) {
  return errors.map((error) => ({ where, why: textOf(error) }));
}

/** @param {{ message?: string, stack?: string }} error */
function textOf(error) {
  const { message = String(error), stack = '' } = error;
  return stack.includes(message) ? stack : `${message}\n${stack}`;
}
