/** Plan files: opening, saving, and the link that carries one. */
import { type Plan, readPlan, writePlan } from '@plugside/fireground';
import type { PlanMessage } from '../plan-store/plan-store.ts';
import { planFragment } from './link.ts';

export type Opened = { ok: true; plan: Plan } | { ok: false; message: PlanMessage };

/** Reads a plan's text; what is wrong with it comes back as a list with line and remedy. */
export function openText(text: string, fileName: string): Opened {
  const read = readPlan(text, { fileName });
  if (read.ok) return { ok: true, plan: read.plan };
  const count = read.issues.length === 1 ? 'One thing' : `${read.issues.length} things`;
  return {
    ok: false,
    message: {
      kind: 'problem',
      text: `${fileName} was not opened. ${count} to mend in it; the plan on the page is unchanged.`,
      details: read.issues.map((issue) => ({ where: `line ${issue.line}`, text: issue.message })),
    },
  };
}

/** A file name out of a plan's title: letters, digits and dashes. */
export function fileNameFor(plan: Plan, ending: 'yaml' | 'json'): string {
  const stem = plan.title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem === '' ? 'plan' : stem}.${ending}`;
}

/** Hands the plan to the browser as a file. */
export function savePlan(plan: Plan, ending: 'yaml' | 'json'): void {
  const type = ending === 'yaml' ? 'application/yaml' : 'application/json';
  const url = URL.createObjectURL(new Blob([writePlan(plan, ending)], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileNameFor(plan, ending);
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** The address of this page with the plan in it. */
export function linkTo(plan: Plan, page: string): string {
  return page.split('#')[0] + planFragment(writePlan(plan, 'yaml'));
}
