import type { Plan } from '@plugside/fireground';

/** The plan's title; made-up data says so beside it. */
export function heading(plan: Plan): string {
  return plan.invented ? `${plan.title} (made up for practice)` : plan.title;
}

/** What a JSON answer says of the plan that it is about. */
export function aboutPlan(plan: Plan) {
  return { title: plan.title, invented: plan.invented, scene: plan.scene };
}
