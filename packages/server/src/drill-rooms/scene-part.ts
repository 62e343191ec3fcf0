import type { DrillScene, Role } from '@plugside/drill';

/** Instructor and observer know and see everything. */
export function seesAll(role: Role): role is 'instructor' | 'observer' {
  return role === 'instructor' || role === 'observer';
}

/**
 * What of a scene a role may know: the arrangement as the order for it would tell, its own steps and
 * messages, and no fault that waits, not even one that the plan has.
 */
export function scenePartFor(role: Role, scene: DrillScene): DrillScene {
  if (seesAll(role)) return scene;
  return {
    ...scene,
    plan: {
      ...scene.plan,
      appliances: scene.plan.appliances.map((one) => {
        if (one.kind !== 'assist-valve' || !('clapperStuck' in one)) return one;
        const { clapperStuck: _, ...rest } = one;
        return rest;
      }),
    },
    steps: scene.steps.filter((one) => one.role === role),
    expectedMessages: scene.expectedMessages.filter((one) => one.role === role),
    faults: [],
  };
}
