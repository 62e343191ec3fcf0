import { randomBytes } from 'node:crypto';
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const PREFIX = 'plugside-work-';

/** A folder for files that last no longer than this process. */
export interface WorkFolder {
  /** A path in it that nothing has yet; the folder is made when this is first called. */
  newPath(ending?: string): string;
}

/**
 * Removed when the process ends; what a process that was killed left behind is removed when the
 * next one makes its own.
 */
export function workFolder(parent: string = tmpdir()): WorkFolder {
  let folder: string | undefined;
  return {
    newPath: (ending = '') => {
      folder ??= make(parent);
      return join(folder, randomBytes(12).toString('hex') + ending);
    },
  };
}

function make(parent: string): string {
  removeAbandoned(parent);
  const folder = join(parent, `${PREFIX}${process.pid}-${randomBytes(6).toString('hex')}`);
  mkdirSync(folder, { mode: 0o700 });
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

function removeAbandoned(parent: string): void {
  for (const name of readdirSync(parent)) {
    const pid = new RegExp(`^${PREFIX}(\\d+)-[0-9a-f]{12}$`).exec(name)?.[1];
    if (pid === undefined || isRunning(Number(pid))) continue;
    rmSync(join(parent, name), { recursive: true, force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Another account's process: it is there, and its folder is its own.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
