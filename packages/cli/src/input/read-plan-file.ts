import { type Plan, type ReadIssue, type ReadNotice, readPlan } from '@plugside/fireground';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { nameOfInput, readText } from './read-text.ts';

export interface PlanFile {
  plan: Plan;
  notices: ReadNotice[];
}

/**
 * Reads the plan in a file, or on standard input for `-`.
 * @throws CommandFailure with every fault, its line and its remedy
 */
export async function readPlanFile(path: string): Promise<PlanFile> {
  const name = nameOfInput(path);
  const read = readPlan(await readText(path), { fileName: name });
  if (!read.ok) {
    throw new CommandFailure(issueLines(name, read.issues), exitCodes.badInput, read.issues);
  }
  return read;
}

/** One line per fault, in the form that editors jump from: `file:line:column: message`. */
export function issueLines(
  name: string,
  issues: readonly Pick<ReadIssue, 'line' | 'column' | 'message'>[],
): string {
  return issues
    .map(({ line, column, message }) => `${name}:${line}:${column}: ${message}`)
    .join('\n');
}
