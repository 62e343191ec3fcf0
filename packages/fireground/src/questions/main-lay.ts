import type { Line, Plan } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';

/** The longest line into the scene rig: the lay, where one is meant. Undefined where nothing runs to it. */
export function mainLay(plan: Plan): Line | undefined {
  let found: Line | undefined;
  for (const line of plan.lines) {
    if (splitPortRef(line.to).pieceId !== plan.scene) continue;
    if (!found || line.lengthFt > found.lengthFt) found = line;
  }
  return found;
}

/** The plan with one line changed. */
export function withLine(plan: Plan, id: string, change: Partial<Line>): Plan {
  return {
    ...plan,
    lines: plan.lines.map((line) => (line.id === id ? { ...line, ...change } : line)),
  };
}
