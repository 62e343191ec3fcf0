import { issueAt, type PlanIssue } from '../issue.ts';
import type { Plan } from '../plan.ts';
import { kindOf } from '../ports.ts';
import { sizeLimits } from '../written/ranges.ts';

/** Every part of a plan with its place in the written form, pieces before lines. */
function partsOf(plan: Plan) {
  const groups = {
    hydrants: plan.hydrants,
    drafts: plan.drafts,
    rigs: plan.rigs,
    appliances: plan.appliances,
    nozzles: plan.nozzles,
    lines: plan.lines,
  };
  return Object.entries(groups).flatMap(([group, parts]) =>
    parts.map((part, index) => ({ place: `${group}[${index}]`, id: part.id })),
  );
}

/** Ids are unique over all pieces and lines. */
export function idIssues(plan: Plan): PlanIssue[] {
  const first = new Map<string, string>();
  const issues: PlanIssue[] = [];
  for (const { place, id } of partsOf(plan)) {
    const before = first.get(id);
    if (before === undefined) {
      first.set(id, place);
      continue;
    }
    issues.push(
      issueAt(`${place}.id`, id, {
        fault: `"${id}" is taken by ${before}`,
        allowed: 'an id that no other piece or line has',
        remedy: 'Give one of them another id, and change the ports that name it.',
      }),
    );
  }
  return issues;
}

/** The scene is one of the rigs. */
export function sceneIssues(plan: Plan): PlanIssue[] {
  if (plan.rigs.some((rig) => rig.id === plan.scene)) return [];
  const other = [...plan.hydrants, ...plan.drafts, ...plan.appliances, ...plan.nozzles].find(
    (piece) => piece.id === plan.scene,
  );
  return [
    issueAt('scene', plan.scene, {
      fault: other
        ? `"${plan.scene}" is a ${kindOf(other)}, not a rig`
        : `there is no rig "${plan.scene}"`,
      allowed: plan.rigs.map((rig) => rig.id).join(', ') || 'a rig (the plan has none yet)',
      remedy: 'Name the rig that the water is for.',
    }),
  ];
}

/** A plan has no more parts than can be solved and drawn at once. */
export function sizeIssues(counts: { pieces: number; lines: number }): PlanIssue[] {
  const issues: PlanIssue[] = [];
  for (const what of ['pieces', 'lines'] as const) {
    if (counts[what] <= sizeLimits[what]) continue;
    issues.push(
      issueAt('', counts[what], {
        fault: `it has ${counts[what]} ${what}`,
        allowed: `${sizeLimits[what]} ${what} at most`,
        remedy: 'Split it into plans of their own.',
      }),
    );
  }
  return issues;
}
