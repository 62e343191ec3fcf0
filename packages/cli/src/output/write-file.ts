import {
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { CommandFailure } from '../failure.ts';

export interface WriteOptions {
  /** Write over a file that is there. */
  force?: boolean;
}

/** Refuses a place that cannot take the file, before any work is done for it. */
export function checkWritable(path: string, { force = false }: WriteOptions): void {
  if (path === '-') return;
  if (existsSync(path)) {
    if (statSync(path).isDirectory()) {
      throw new CommandFailure(`${path} is a folder. Name a file in it.`);
    }
    if (!force) {
      throw new CommandFailure(
        `${path} is already there. Choose another name, or write over it with --force.`,
      );
    }
    return;
  }
  const folder = dirname(path);
  if (!existsSync(folder)) {
    throw new CommandFailure(`There is no folder ${folder} to write ${basename(path)} in.`);
  }
  if (!statSync(folder).isDirectory()) {
    throw new CommandFailure(`${folder} is a file, not a folder to write ${basename(path)} in.`);
  }
}

/** Writes all of a file or none of it: into a new file beside it, which then takes its name. */
export function writeWhole(path: string, text: string): void {
  // A link keeps pointing where it did.
  const target = existsSync(path) ? realpathSync(path) : path;
  const beside = join(dirname(target), `.${basename(target)}.${process.pid}.part`);
  try {
    const mode = existsSync(target) ? statSync(target).mode & 0o777 : 0o666;
    const file = openSync(beside, 'wx', mode);
    try {
      const bytes = Buffer.from(text, 'utf8');
      for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, target);
  } catch (error) {
    rmSync(beside, { force: true });
    const why = error instanceof Error ? error.message : String(error);
    throw new CommandFailure(`${path} cannot be written: ${why}. Nothing was written.`);
  }
}
