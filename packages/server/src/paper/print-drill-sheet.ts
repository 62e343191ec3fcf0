import { type Plan, readPlan } from '@plugside/fireground';
import { drillSheetFor, renderDrillSheet } from '@plugside/paper';
import { ProblemError } from '../problem.ts';
import type { RecordsAtHand } from '../threads/records-at-hand.ts';
import type { DrillSheetBody } from './plan-requests.ts';
import { bytesOf, optionsFor } from './printed.ts';
import { solved } from './refused.ts';

/** A plan as a drill sheet. @throws ProblemError 422 */
export async function printDrillSheet(
  asked: DrillSheetBody,
  atHand: RecordsAtHand,
): Promise<Uint8Array> {
  const { units, benchmarks, place, duties } = asked;
  const plan = planIn(asked.plan);
  const drill = await solved(() =>
    drillSheetFor({
      plan,
      units,
      ...(benchmarks && { benchmarks }),
      ...(place && { place }),
      ...(duties && { duties }),
    }),
  );
  return bytesOf(renderDrillSheet(drill, await optionsFor(atHand, asked)));
}

/** @throws ProblemError 422 with every fault of the plan */
function planIn(text: string): Plan {
  const read = readPlan(text);
  if (read.ok) return read.plan;
  const issues = read.issues.slice(0, 50).map(({ path, value, line, ...told }) => ({
    path: path === '' ? 'plan' : `plan.${path}`,
    value: typeof value === 'object' ? undefined : value,
    line,
    ...told,
  }));
  throw new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: issues.map(({ message }) => message).join(' '),
    extra: { issues },
  });
}
