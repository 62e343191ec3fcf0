import { type Plan, type PlanFormat, type UnitSystem, writePlan } from '@plugside/fireground';
import { exitCodes } from '../exit-codes.ts';
import type { Outcome } from '../outcome.ts';
import { writtenPlan } from '../output/envelope.ts';
import { aboutPlan } from '../report/heading.ts';
import { type OutputOptions, writeOutput } from './output-option.ts';
import { formatOf } from './write-option.ts';

/**
 * The outcome of a command whose answer is a plan: written to the file named, or shown.
 * @param toFile from `goesToFile`, asked before the work so that a bad place is refused first
 */
export function planOutcome(
  question: string,
  plan: Plan,
  toFile: boolean,
  options: OutputOptions & { to?: PlanFormat; units: UnitSystem },
  shownAs: PlanFormat,
): Outcome {
  const format = options.to ?? (toFile ? formatOf(options.output!) : shownAs);
  const text = writePlan(plan, format, options.units);
  const wrote = toFile ? writeOutput(options, text) : undefined;
  return {
    exitCode: exitCodes.answered,
    text: () => wrote ?? text,
    data: () => ({
      plan: aboutPlan(plan),
      answer: { question, plan: writtenPlan(plan), ...(wrote && { file: options.output }) },
    }),
  };
}
