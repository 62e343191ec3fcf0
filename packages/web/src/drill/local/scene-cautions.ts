/** What has to stand beside a drill all the time, on whatever screen. */
import { type DrillScene, evolutionOf, largeHoseCautions } from '@plugside/drill';
import { deferral } from '@plugside/fireground';

/** Cautions of a scene's evolution, the deferral last; of a scene from a plan, what every evolution has. */
export function sceneCautions({ evolution }: Pick<DrillScene, 'evolution'>): readonly string[] {
  const known = evolution === undefined ? undefined : evolutionOf(evolution);
  return known?.cautions ?? [...largeHoseCautions, deferral];
}
