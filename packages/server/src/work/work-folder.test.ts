import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { workFolder } from './work-folder.ts';

const parent = mkdtempSync(join(tmpdir(), 'plugside-work-test-'));
afterAll(() => rmSync(parent, { recursive: true, force: true }));

it('removes what a process that has ended left, and nothing else', () => {
  const ended = spawnSync(process.execPath, ['-e', '0']);
  const left = join(parent, `plugside-work-${ended.pid}-0123456789ab`);
  const running = join(parent, `plugside-work-${process.pid}-0123456789ab`);
  const other = join(parent, 'plugside-work-of-somebody');
  for (const folder of [left, running, other]) mkdirSync(folder);
  writeFileSync(join(left, 'upload'), 'x');
  const path = workFolder(parent).newPath('.csv');
  expect([left, running, other, dirname(path)].map((one) => existsSync(one))).toEqual([
    false,
    true,
    true,
    true,
  ]);
  expect(path).toMatch(/\.csv$/);
});
