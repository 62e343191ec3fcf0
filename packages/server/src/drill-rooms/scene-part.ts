import type { DrillScene, Role } from '@plugside/drill';

/**
 * What of a scene a role may know: the instructor all of it; the others the arrangement as the order for it
 * would tell, and no fault that waits, not even one that the plan has. Of steps and messages who watches
 * knows all, a played role its own.
 */
export function scenePartFor(role: Role, scene: DrillScene): DrillScene {
  if (role === 'instructor') return scene;
  const isOwn = (one: { role: Role }) => role === 'observer' || one.role === role;
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
    steps: scene.steps.filter(isOwn),
    expectedMessages: scene.expectedMessages.filter(isOwn),
    faults: [],
  };
}
