import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { fillDemo, openStore } from '@plugside/records';
import { describe, expect, it } from 'vitest';
import { root, toolFile } from './tools.mjs';

function markdownUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      return /^(node_modules|dist|\..*)$/.test(entry.name) ? [] : markdownUnder(path);
    }
    return entry.name.endsWith('.md') ? [path] : [];
  });
}

const pages = markdownUnder(root).map((path) => ({
  name: relative(root, path),
  path,
  text: readFileSync(path, 'utf8'),
}));

/** Fenced code of a language, in order. */
function codeIn(text: string, language: string): string[] {
  return [...text.matchAll(/^```(\w+)\n([\s\S]*?)^```/gm)]
    .filter((block) => block[1] === language)
    .map((block) => block[2] ?? '');
}

describe('pages of documentation', () => {
  it('link to files that are there', () => {
    const missing = pages.flatMap(({ name, path, text }) =>
      [...text.matchAll(/\]\(([^)\s]+)\)/g)]
        .map((link) => link[1] ?? '')
        .filter((target) => !/^(https?:|mailto:|#)/.test(target))
        .filter((target) => !existsSync(resolve(dirname(path), target.split('#')[0] ?? '')))
        .map((target) => `${name} links to ${target}`),
    );
    expect(missing).toEqual([]);
  });

  it('name npm commands that exist', () => {
    const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const unknown = pages.flatMap(({ name, text }) =>
      [...text.matchAll(/npm run ([\w:-]+)/g)]
        .map((command) => command[1] ?? '')
        .filter((command) => !(command in scripts))
        .map((command) => `${name} names npm run ${command}`),
    );
    expect(unknown).toEqual([]);
  });
});

const readme = pages.find((page) => page.name === 'README.md')?.text ?? '';

describe('README.md', () => {
  it('shows commands that run', async () => {
    const shown = codeIn(readme, 'sh')
      .flatMap((block) => block.split('\n'))
      .filter((line) => line.startsWith('npm run plugside -- '))
      .map((line) => line.slice('npm run plugside -- '.length));
    expect(shown.length).toBeGreaterThan(0);
    const scratch = mkdtempSync(join(tmpdir(), 'plugside-readme-'));
    // As npm start leaves it.
    mkdirSync(join(scratch, 'data'));
    const store = await openStore({ file: join(scratch, 'data', 'plugside.sqlite') });
    await fillDemo(store);
    await store.close();
    for (const line of shown) {
      const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map((word) => word[1] ?? word[2] ?? '');
      // Plans are read from the checkout; what a command writes goes to a scratch folder.
      const args = words.map((word) => (word.startsWith('examples/') ? join(root, word) : word));
      const { status, stderr } = spawnSync(
        process.execPath,
        [join(root, 'packages/cli/bin/plugside.mjs'), ...args],
        { cwd: scratch, encoding: 'utf8' },
      );
      expect(status, `${line}\n${stderr}`).toBe(0);
    }
    rmSync(scratch, { recursive: true });
  });

  it('shows a library example that runs and prints a flow and what stops it', () => {
    const [example] = codeIn(readme, 'ts');
    expect(example).toBeDefined();
    const folder = join(root, '.cache');
    mkdirSync(folder, { recursive: true });
    const file = join(folder, 'readme-example.ts');
    writeFileSync(file, example ?? '');
    const { stdout, stderr, status } = spawnSync(
      process.execPath,
      [toolFile('tsx'), '--conditions=plugside-source', file],
      { cwd: root, encoding: 'utf8' },
    );
    expect(status, stderr).toBe(0);
    expect(stdout).toMatch(/^[1-9]\d* gpm\n(stopped by: .+\n)+$/);
  });
});
