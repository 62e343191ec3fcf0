import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Plugside, preparePlugside, root } from './run-plugside.ts';

// Each run is a process of its own, and a machine may be busy.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let plugside: Plugside;
beforeAll(async () => {
  plugside = await preparePlugside();
});
afterAll(() => plugside.remove());

const commands = [
  ['most', 'set', 'now', 'compare', 'sweep', 'curves'],
  ['new', 'check', 'convert', 'profile', 'catalogue', 'schema'],
].flat();

/** The examples in a text: lines that begin with `$ plugside`. */
const examplesIn = (text: string) =>
  [...text.matchAll(/^\s*\$ plugside (.*)$/gm)].map((line) => line[1] ?? '');

/** A command line's words; quotes hold a word together. */
const wordsOf = (line: string) =>
  [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');

describe('help', () => {
  it('lists every command, the exit codes and a beginning', () => {
    const { status, stdout } = plugside.run(['--help']);
    expect(status).toBe(0);
    for (const name of commands) expect(stdout).toMatch(new RegExp(`^ {2}${name} `, 'm'));
    for (const code of [0, 1, 2, 3, 4])
      expect(stdout).toMatch(new RegExp(`^ {2}${code} {2}\\w`, 'm'));
    expect(examplesIn(stdout).length).toBeGreaterThanOrEqual(2);
  });

  it.each(commands)('of %s has two examples or more, and each runs', (name) => {
    const { status, stdout } = plugside.run([name, '--help']);
    expect(status).toBe(0);
    const shown = examplesIn(stdout);
    expect(shown.length).toBeGreaterThanOrEqual(2);
    for (const line of shown) {
      const run = plugside.run(wordsOf(line));
      expect(run.status, `plugside ${line}\n${run.stderr}`).toBe(0);
      expect(run.stdout).not.toBe('');
    }
  });

  it('of the program: its beginning runs as shown', () => {
    for (const line of examplesIn(plugside.run(['--help']).stdout)) {
      const words = wordsOf(line).map((word) => (word === 'plan.yaml' ? 'first.yaml' : word));
      const run = plugside.run(words);
      expect(run.status, `plugside ${line}\n${run.stderr}`).toBe(0);
    }
  });

  it('prints the version of the package', () => {
    const { version } = JSON.parse(readFileSync(join(root, 'packages/cli/package.json'), 'utf8'));
    expect(plugside.run(['--version']).stdout).toBe(`${version}\n`);
  });
});

describe('docs/command-line.md', () => {
  const page = readFileSync(join(root, 'docs', 'command-line.md'), 'utf8');

  it('has a heading for every command', () => {
    for (const name of commands) expect(page).toMatch(new RegExp(`^### ${name}$`, 'm'));
  });

  it('shows commands that run', () => {
    const shown = examplesIn(page);
    expect(shown.length).toBeGreaterThanOrEqual(commands.length);
    for (const line of shown) {
      const run = plugside.run(wordsOf(line));
      expect(run.status, `plugside ${line}\n${run.stderr}`).toBe(0);
    }
  });
});

describe('the starter', () => {
  it('says what to do where nothing is built', () => {
    const bare = mkdtempSync(join(tmpdir(), 'plugside-bare-'));
    const bin = join(bare, 'packages', 'cli', 'bin');
    mkdirSync(bin, { recursive: true });
    copyFileSync(join(root, 'packages/cli/bin/plugside.mjs'), join(bin, 'plugside.mjs'));
    const { status, stderr } = spawnSync(process.execPath, [join(bin, 'plugside.mjs'), 'most'], {
      encoding: 'utf8',
    });
    rmSync(bare, { recursive: true });
    expect(status).toBe(4);
    expect(stderr).toMatch(/not built yet\..*npm run build/);
  });
});
