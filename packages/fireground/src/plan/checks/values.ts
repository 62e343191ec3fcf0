import { issueAt, type PlanIssue } from '../issue.ts';
import { didYouMean } from '../nearest.ts';
import type { GroupTest, Hydrant, Line, Nozzle, Plan, Rig } from '../plan.ts';

/** Values that are each possible but do not go together. */
export function valueIssues(plan: Plan): PlanIssue[] {
  return [
    ...plan.hydrants.flatMap((part, index) => hydrantIssues(part, `hydrants[${index}]`)),
    ...(plan.groupTests ?? []).flatMap((test, index) =>
      groupTestIssues(plan, test, `group-tests[${index}]`),
    ),
    ...plan.rigs.flatMap((part, index) => rigIssues(part, `rigs[${index}]`)),
    ...plan.lines.flatMap((part, index) => terrainIssues(part, `lines[${index}]`)),
    ...plan.nozzles.flatMap((part, index) => nozzleIssues(part, `nozzles[${index}]`)),
  ];
}

function groupTestIssues(plan: Plan, test: GroupTest, place: string): PlanIssue[] {
  const ids = plan.hydrants.map(({ id }) => id);
  const issues = hydrantIssues(test, place);
  test.hydrants.forEach((id, index) => {
    const path = `${place}.hydrants[${index}]`;
    if (!ids.includes(id)) {
      issues.push(
        issueAt(path, id, {
          fault: `there is no hydrant "${id}"${didYouMean(id, ids)}`,
          allowed: ids.join(', ') || 'a hydrant (the plan has none yet)',
          remedy: 'Name the hydrants of the plan that flowed.',
        }),
      );
    } else if (test.hydrants.indexOf(id) < index) {
      issues.push(
        issueAt(path, id, {
          fault: `"${id}" is named twice`,
          allowed: 'each hydrant once',
          remedy: 'Name two hydrants or more that flowed together.',
        }),
      );
    }
  });
  return issues;
}

function hydrantIssues(
  { staticPsi, residualPsi }: Pick<Hydrant, 'staticPsi' | 'residualPsi'>,
  place: string,
): PlanIssue[] {
  if (residualPsi < staticPsi) return [];
  return [
    issueAt(`${place}.residual`, residualPsi, {
      fault: `residual ${residualPsi} psi is not below static ${staticPsi} psi`,
      allowed: `below ${staticPsi} psi`,
      remedy:
        'Check the flow test: pressure must fall while water flows. A larger test flow helps.',
    }),
  ];
}

function rigIssues(rig: Rig, place: string): PlanIssue[] {
  const issues: PlanIssue[] = [];
  const points = rig.capability ?? [];
  points.forEach(([flowGpm, netPsi], index) => {
    const before = points[index - 1];
    const allowed = 'flows rising from 0, net pressure never rising';
    const path = `${place}.pump-test[${index}]`;
    const remedy = 'Put the points in order of flow, beginning at shut-off (0 gpm).';
    if (!before) {
      if (flowGpm === 0) return;
      const fault = `the first point is at ${flowGpm} gpm`;
      issues.push(issueAt(path, flowGpm, { fault, allowed, remedy }));
    } else if (flowGpm <= before[0]) {
      const fault = `flow ${flowGpm} gpm does not rise above ${before[0]} gpm`;
      issues.push(issueAt(path, flowGpm, { fault, allowed, remedy }));
    } else if (netPsi > before[1]) {
      const fault = `net pressure rises from ${before[1]} to ${netPsi} psi`;
      issues.push(issueAt(path, netPsi, { fault, allowed, remedy }));
    }
  });
  if (rig.tankValve === 'open' && rig.tankGal === undefined) {
    issues.push(
      issueAt(`${place}.tank-valve`, rig.tankValve, {
        fault: `the tank valve of ${rig.id} is open, but it has no tank`,
        allowed: 'shut, or a tank',
        remedy: 'Write tank with its gallons, or shut the valve.',
      }),
    );
  }
  return issues;
}

function terrainIssues(line: Line, place: string): PlanIssue[] {
  const issues: PlanIssue[] = [];
  let before = 0;
  (line.terrain ?? []).forEach(({ alongFt }, index) => {
    if (alongFt <= before || alongFt >= line.lengthFt) {
      issues.push(
        issueAt(`${place}.terrain[${index}].along`, alongFt, {
          fault: `${alongFt} ft is not between ${before} ft and the line's end`,
          allowed: `above ${before} and below ${line.lengthFt} ft`,
          remedy:
            'Put the points in order along the line; its ends have the heights of its pieces.',
        }),
      );
    }
    before = Math.max(before, alongFt);
  });
  return issues;
}

function nozzleIssues(nozzle: Nozzle, place: string): PlanIssue[] {
  if (nozzle.kind === 'automatic' && nozzle.leastGpm >= nozzle.greatestGpm) {
    return [
      issueAt(`${place}.greatest`, nozzle.greatestGpm, {
        fault: `greatest flow ${nozzle.greatestGpm} gpm is not above least ${nozzle.leastGpm} gpm`,
        allowed: `above ${nozzle.leastGpm} gpm`,
        remedy: "Take both from the nozzle's marking.",
      }),
    ];
  }
  if (nozzle.kind === 'selectable' && !nozzle.settingsGpm.includes(nozzle.selectedGpm)) {
    return [
      issueAt(`${place}.selected`, nozzle.selectedGpm, {
        fault: `${nozzle.selectedGpm} gpm is not one of its settings`,
        allowed: nozzle.settingsGpm.map((gpm) => `${gpm} gpm`).join(', '),
        remedy: 'Select one of them, or add the setting.',
      }),
    ];
  }
  return [];
}
