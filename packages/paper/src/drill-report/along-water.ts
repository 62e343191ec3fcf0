import { type DrillScene, postOf, rolesIn } from '@plugside/drill';

/**
 * A drill's pumps from the fire to the water: the attack engine, then those that it stands behind, the one at
 * the source last. By who stands at them, which goes by the hoses between.
 */
export function pumpsFromFire(scene: DrillScene): DrillScene['pumps'] {
  const order = rolesIn(scene)
    .filter((role) => role !== 'nozzle crew')
    .flatMap((role) => postOf(scene, role))
    .reverse();
  const rank = ({ rigId }: { rigId: string }) =>
    rigId === scene.plan.scene ? -1 : order.indexOf(rigId);
  return [...scene.pumps].sort((a, b) => rank(a) - rank(b));
}
