import { extname } from 'node:path';
import { type Plan, type PlanFormat, writePlan } from '@plugside/fireground';
import type { Command } from 'commander';
import { checkWritable, type WriteOptions, writeWhole } from '../output/write-file.ts';

export interface SettingsFileOptions extends WriteOptions {
  write?: string;
}

/** `--write FILE`: the plan with the answer's settings in it. */
export function withSettingsFile(command: Command): Command {
  return command
    .option('-w, --write <file>', 'write a plan with these settings in it')
    .option('--force', 'write over a file that is there');
}

/** Refuses a place that cannot take the file before anything is worked out. */
export function checkSettingsFile(options: SettingsFileOptions): void {
  if (options.write !== undefined) checkWritable(options.write, options);
}

/** Writes the plan where `--write` says; the sentence that says so, else nothing. */
export function writeSettings(options: SettingsFileOptions, plan: Plan): string {
  if (options.write === undefined) return '';
  writeWhole(options.write, writePlan(plan, formatOf(options.write)));
  return `Wrote ${options.write}.`;
}

/** JSON for names that end so, else YAML. */
export function formatOf(path: string): PlanFormat {
  return extname(path).toLowerCase() === '.json' ? 'json' : 'yaml';
}
