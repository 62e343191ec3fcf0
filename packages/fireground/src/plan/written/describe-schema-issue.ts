import type * as z from 'zod';
import { issueAt, type PathStep, type PlanIssue, pathText, showValue } from '../issue.ts';
import { didYouMean } from '../nearest.ts';
import { writtenPlanSchema } from './schema.ts';
import { objectSchemaFor, schemaAt } from './walk.ts';

function valueAt(root: unknown, steps: readonly PathStep[]): unknown {
  let value = root;
  for (const step of steps) {
    if (value === null || typeof value !== 'object') return undefined;
    value = Object.hasOwn(value, step) ? (value as Record<PathStep, unknown>)[step] : undefined;
  }
  return value;
}

function keysAt(root: unknown, steps: readonly PathStep[]): string[] {
  let schema: unknown = writtenPlanSchema;
  let value = root;
  for (const step of steps) {
    schema = schemaAt(schema, value, step);
    value = valueAt(value, [step]);
  }
  return Object.keys(objectSchemaFor(schema, value)?.shape ?? {});
}

/** What the schema found, in the words of a `PlanIssue`; one for each unknown key. */
export function describeSchemaIssue(issue: z.core.$ZodIssue, root: unknown): PlanIssue[] {
  const steps = issue.path.filter((step): step is PathStep => typeof step !== 'symbol');
  const path = pathText(steps);
  const value = valueAt(root, steps);
  switch (issue.code) {
    case 'custom': {
      const { allowed, remedy } = issue.params as { allowed: string; remedy: string };
      return [issueAt(path, value, { fault: issue.message, allowed, remedy })];
    }
    case 'unrecognized_keys': {
      const known = keysAt(root, steps);
      return issue.keys.map((key) =>
        issueAt(pathText([...steps, key]), valueAt(value, [key]), {
          fault: `there is no key ${showValue(key)} here${didYouMean(key, known)}`,
          allowed: known.join(', '),
          remedy: 'Correct the key or take it out.',
        }),
      );
    }
    case 'invalid_union': {
      const kinds = ('options' in issue ? (issue.options as unknown[]) : []).map(String);
      const guess = typeof value === 'string' ? didYouMean(value, kinds) : '';
      const fault = value === undefined ? 'it is missing' : `there is no kind ${showValue(value)}`;
      return [
        issueAt(path, value, {
          fault: `${fault}${guess}`,
          allowed: kinds.join(', '),
          remedy: 'Choose one.',
        }),
      ];
    }
    case 'too_small':
    case 'too_big': {
      const small = issue.code === 'too_small';
      const bound = small ? issue.minimum : issue.maximum;
      return [
        issueAt(path, value, {
          fault: `it has ${(value as unknown[]).length} entries`,
          allowed: small ? `${bound} or more` : `${bound} at most`,
          remedy: small ? 'Add what is missing.' : 'Take some out.',
        }),
      ];
    }
    case 'invalid_type': {
      const form = issue.expected === 'array' ? 'a list' : 'a group of keys';
      const fault = value === undefined ? 'it is missing' : `${showValue(value)} is not ${form}`;
      return [
        issueAt(path, value, {
          fault,
          allowed: form,
          remedy: `Write ${form} or leave the key out.`,
        }),
      ];
    }
    default:
      return [
        issueAt(path, value, {
          fault: issue.message,
          allowed: 'see the plan schema',
          remedy: 'Correct the value.',
        }),
      ];
  }
}

/** Reads a written form: the parsed plan, or its issues. */
export function parseWritten(
  written: unknown,
): { ok: true; written: z.output<typeof writtenPlanSchema> } | { ok: false; issues: PlanIssue[] } {
  const result = writtenPlanSchema.safeParse(written);
  if (result.success) return { ok: true, written: result.data };
  return {
    ok: false,
    issues: result.error.issues.flatMap((issue) => describeSchemaIssue(issue, written)),
  };
}
