import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { root, toolFile } from './tools.mjs';

/** Each import on its own in this file, and the words that must refuse it. */
const REFUSED: [file: string, code: string, words: string][] = [
  ['hydraulics/src/network/a.ts', "import '@plugside/fireground';", 'hydraulics is physics alone'],
  ['hydraulics/src/b.ts', "import 'zod';", 'hydraulics is physics alone'],
  ['hydraulics/src/c.ts', "import 'node:fs';", 'hydraulics is physics alone'],
  ['hydraulics/src/d.ts', "export * from 'yaml';", 'hydraulics is physics alone'],
  ['hydraulics/src/e.ts', "export const e = import('yaml');", 'hydraulics is physics alone'],
  ['hydraulics/src/f.ts', "import '../../fireground/src/index.ts';", 'leaves the package'],
  ['hydraulics/src/g.ts', 'export const g = process.cwd();', 'global variable process'],
  ['hydraulics/src/h.test.ts', "import '@plugside/fireground';", 'no other package of ours'],
  ['fireground/src/a.ts', "import '@plugside/web';", 'fireground imports its own files'],
  ['fireground/src/b.ts', "import 'node:path';", 'fireground imports its own files'],
  ['fireground/src/c.ts', "import 'react';", 'fireground imports its own files'],
  [
    'fireground/src/d.ts',
    "import '@plugside/hydraulics/src/spec.ts';",
    'fireground imports its own',
  ],
  ['fireground/src/e.ts', "import '../../hydraulics/src/index.ts';", 'leaves the package'],
  ['fireground/src/f.ts', 'export const f = document.title;', 'global variable document'],
  ['fireground/src/g.test.ts', "import '@plugside/cli';", 'and no other package of ours'],
  ['cli/src/a.ts', "import '@plugside/hydraulics';", 'cli imports @plugside/fireground'],
  ['cli/src/b.ts', "import '@plugside/fireground/src/index.ts';", 'by its name alone'],
  ['cli/src/c.ts', "import 'zod';", "isn't specified in packages/cli/package.json"],
  ['server/src/a.ts', "import '@plugside/web';", 'server imports records and fireground alone'],
  ['paper/src/a.ts', "import '@plugside/server';", 'paper imports hydraulics, fireground'],
  ['paper/src/b.ts', "import '@plugside/records';", 'nothing of storage'],
  ['paper/src/c.ts', "import '../../fireground/src/index.ts';", 'leaves the package'],
  ['drill/src/e.ts', "import '@plugside/paper';", 'drill imports its own files'],
  ['records/src/c.ts', "import '@plugside/paper';", 'records imports fireground alone'],
  ['drill/src/a.ts', "import '@plugside/records';", 'drill imports its own files'],
  ['drill/src/b.ts', "import 'node:fs';", 'drill imports its own files'],
  ['drill/src/c.ts', 'export const c = performance.now();', 'global variable performance'],
  ['drill/src/d.test.ts', "import '@plugside/server';", 'hydraulics and fireground alone'],
  ['records/src/d.ts', "import '@plugside/drill';", 'records imports fireground alone'],
  ['web/src/e.ts', "import '@plugside/paper';", 'web imports @plugside/fireground'],
  ['records/src/a.ts', "import '@plugside/server';", 'records imports fireground alone'],
  ['records/src/b.ts', "import 'hono';", "isn't specified in packages/records/package.json"],
  ['records/src/model/c.ts', "import 'node:fs';", 'run in a browser too'],
  ['records/src/streets/d.ts', "import 'kysely';", 'run in a browser too'],
  ['web/src/a.ts', "import '@plugside/server';", 'web imports @plugside/fireground'],
  ['web/src/d.ts', "import '@plugside/records';", 'web imports @plugside/fireground'],
  ['web/src/b.ts', "import 'node:fs';", 'Node.js builtin module'],
  ['fireground/src/deep/h.ts', "import '../../../cli/src/index.ts';", 'leaves the package'],
  ['fireground/proof/a.ts', "import '../../cli/src/index.ts';", 'leaves the package'],
  ['web/src/c.ts', "import '../../fireground/dist/index.js';", 'leaves the package'],
  ['records/src/planning/a.ts', "import 'node:fs';", 'Planning runs in a browser too'],
  ['records/src/planning/b.ts', "import 'kysely';", 'Planning runs in a browser too'],
  ['records/src/streets/a.ts', "import '@plugside/fireground';", 'run in a browser too'],
  ['records/src/model/a.ts', "import 'node:fs';", 'run in a browser too'],
  ['records/src/import/a.ts', "import '@plugside/hydraulics';", 'records imports fireground alone'],
  ['records/src/demo/a.ts', "import '@plugside/server';", 'imports fireground, and hydraulics'],
];

const ALLOWED: [file: string, code: string][] = [
  ['hydraulics/src/network/y.ts', "import './z.ts';\nimport '../x.ts';"],
  ['hydraulics/src/network/z.ts', 'export const z = 1;'],
  ['hydraulics/src/x.ts', 'export const x = 1;'],
  ['hydraulics/src/y.test.ts', "import 'vitest';\nimport 'fast-check';\nimport 'node:fs';"],
  ['fireground/src/y.ts', "import '@plugside/hydraulics';\nimport 'yaml';\nimport 'zod';"],
  ['fireground/proof/y.ts', "import '../src/y.ts';"],
  ['cli/src/y.ts', "import '@plugside/fireground';\nimport 'commander';\nimport 'node:fs';"],
  ['server/src/y.ts', "import '@hono/node-server/serve-static';\nimport 'hono/etag';"],
  ['server/src/z.ts', "import '@plugside/records';\nimport '@plugside/paper';"],
  ['cli/src/z.ts', "import '@plugside/paper';"],
  ['paper/src/y.ts', "import '@plugside/fireground';\nimport '@plugside/records/model';"],
  ['paper/src/x.ts', "import '@plugside/drill';"],
  ['paper/src/z.ts', "import '@plugside/hydraulics';\nimport 'pdfkit';\nimport 'node:fs';"],
  ['records/src/y.ts', "import '@plugside/fireground';\nimport 'kysely';\nimport 'node:fs';"],
  ['web/src/z.ts', "import '@plugside/records/model';"],
  ['drill/src/y.ts', "import '@plugside/hydraulics';\nimport '@plugside/fireground';"],
  ['server/src/w.ts', "import '@plugside/drill';"],
  ['web/src/w.ts', "import '@plugside/drill';"],
  ['web/src/y.ts', "import '@plugside/fireground';\nimport 'react-dom/client';"],
  [
    'web/src/z.ts',
    "import '@plugside/records/model';\nimport '@plugside/records/planning';\nimport '@plugside/records/streets';",
  ],
  ['records/src/planning/y.ts', "import '@plugside/fireground';"],
  ['records/src/streets/y.ts', "import 'flatbush';\nimport 'flatqueue';"],
  ['records/src/demo/y.ts', "import '@plugside/fireground';\nimport '@plugside/hydraulics';"],
];

const CYCLE: [file: string, code: string][] = [
  ['hydraulics/src/ring-a.ts', "export { b } from './ring-b.ts';\nexport const a = 1;"],
  ['hydraulics/src/ring-b.ts', "export { a } from './ring-a.ts';\nexport const b = 1;"],
];

let folder: string;
/** What the lint said, by file. */
let said: Map<string, string>;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'plugside-directions-'));
  const keep = (file: string) => copyFileSync(join(root, file), join(folder, file));
  for (const name of [
    'hydraulics',
    'fireground',
    'drill',
    'records',
    'paper',
    'cli',
    'server',
    'web',
  ]) {
    mkdirSync(join(folder, 'packages', name), { recursive: true });
    keep(join('packages', name, 'package.json'));
  }
  keep('package.json');
  keep('biome.json');
  for (const [file, code] of [...REFUSED, ...ALLOWED, ...CYCLE]) {
    const path = join(folder, 'packages', file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, `${code}\n`);
  }
  said = lint();
});

afterAll(() => rmSync(folder, { recursive: true }));

function lint(): Map<string, string> {
  const args = ['lint', '--vcs-enabled=false', '--max-diagnostics=none', '--reporter=github', '.'];
  const { stdout, status } = spawnSync(process.execPath, [toolFile('biome'), ...args], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(status, stdout).toBe(1);
  const byFile = new Map<string, string>();
  for (const line of stdout.split('\n')) {
    const file = /^::error .*?file=[^,]*?packages\/([^,]+),/.exec(line)?.[1];
    if (file) byFile.set(file, `${byFile.get(file) ?? ''}${line}\n`);
  }
  return byFile;
}

describe('package directions, by the lint that npm test runs', () => {
  it.each(REFUSED)('%s may not %s', (file, _code, words) => {
    expect(said.get(file) ?? 'nothing').toContain(words);
  });

  it.each(ALLOWED)('%s may do what it needs', (file) => {
    expect(said.get(file)).toBeUndefined();
  });

  it.each(CYCLE)('%s may not import its own importer', (file) => {
    expect(said.get(file) ?? 'nothing').toContain('part of a cycle');
  });
});
