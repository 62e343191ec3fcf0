import { stringify } from 'yaml';
import type { UnitSystem } from '../units/quantities.ts';
import type { Plan } from './plan.ts';
import { fromPlan } from './written/from-plan.ts';

export type PlanFormat = 'yaml' | 'json';

/**
 * Writes a plan so that `readPlan` gives the same plan back: to the last bit, in SI units to twelve
 * digits. YAML is for
 * people: every number has its unit beside it. JSON is for programs: bare numbers in the
 * inside units. Defaults are left out of both.
 * @param system units of YAML
 */
export function writePlan(
  plan: Plan,
  format: PlanFormat = 'yaml',
  system: UnitSystem = 'us',
): string {
  const written = fromPlan(plan, { units: format === 'yaml' ? system : 'bare' });
  if (format === 'json') return `${JSON.stringify(written, null, 2)}\n`;
  return stringify(written, { lineWidth: 100, aliasDuplicateObjects: false });
}
