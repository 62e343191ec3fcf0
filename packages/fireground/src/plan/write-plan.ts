import { stringify } from 'yaml';
import type { Plan } from './plan.ts';
import { fromPlan } from './written/from-plan.ts';

export type PlanFormat = 'yaml' | 'json';

/**
 * Writes a plan so that `readPlan` gives the same plan back, to the last bit. YAML is for
 * people: every number has its unit beside it. JSON is for programs: bare numbers in the
 * inside units. Defaults are left out of both.
 */
export function writePlan(plan: Plan, format: PlanFormat = 'yaml'): string {
  const written = fromPlan(plan, { units: format === 'yaml' });
  if (format === 'json') return `${JSON.stringify(written, null, 2)}\n`;
  return stringify(written, { lineWidth: 100, aliasDuplicateObjects: false });
}
