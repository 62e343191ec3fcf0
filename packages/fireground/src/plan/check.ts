import { feedIssues, nozzleFeedIssues } from './checks/feeds.ts';
import { idIssues, sceneIssues, sizeIssues } from './checks/ids.ts';
import { lineEndIssues, portIssues } from './checks/ports.ts';
import { valueIssues } from './checks/values.ts';
import type { PlanIssue } from './issue.ts';
import type { Plan } from './plan.ts';
import { piecesOf } from './ports.ts';
import { parseWritten } from './written/describe-schema-issue.ts';
import { fromPlan } from './written/from-plan.ts';

/** What only shows when the parts are looked at together. */
export function crossIssues(plan: Plan): PlanIssue[] {
  const sizes = sizeIssues({ pieces: piecesOf(plan).length, lines: plan.lines.length });
  if (sizes.length > 0) return sizes;
  return [
    ...idIssues(plan),
    ...valueIssues(plan),
    ...lineEndIssues(plan),
    ...portIssues(plan),
    ...feedIssues(plan),
    ...nozzleFeedIssues(plan),
    ...sceneIssues(plan),
  ];
}

/**
 * Everything that is wrong with a plan held in memory; empty for a sound one. Paths are
 * those of the written form, so that one place has one name in file and editor alike.
 * Never throws for a value of the `Plan` type, whatever its numbers.
 */
export function checkPlan(plan: Plan): PlanIssue[] {
  const fields = parseWritten(fromPlan(plan, { units: 'bare' }));
  const cross = crossIssues(plan);
  if (fields.ok) return cross;
  const told = new Set(fields.issues.map((issue) => issue.path));
  return [...fields.issues, ...cross.filter((issue) => !told.has(issue.path))];
}
