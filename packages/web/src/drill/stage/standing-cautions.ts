/** Cautions that the moment asks for, from what a role sees. */
import type { DrillScene, DrillView } from '@plugside/drill';
import { isLargeHose } from '../words.ts';

/** The caution that matters now; undefined where none does more than another. */
export function cautionNow(scene: DrillScene, view: DrillView): string | undefined {
  const burst = view.hoseEnds.find(({ looks }) => looks === 'burst');
  if (burst) return 'A hose has burst: stand clear, shut it down from where the water comes.';
  const large = (hose: string) => {
    const found = scene.hoses.find(({ id }) => id === hose);
    return found !== undefined && isLargeHose(found);
  };
  if (
    view.hoseEnds.some(
      ({ hose, port, looks }) => looks === 'filling' && port !== null && large(hose),
    )
  )
    return 'Large hose is filling: stand clear of it, twists out, couplings locked.';
  const shuts = view.valves.find(
    ({ kind, target, opening, id }) =>
      target < opening - 0.02 &&
      ['hydrant stem', 'hydrant gate', 'intake', 'discharge', 'assist handle'].includes(kind) &&
      view.hoseEnds.every(({ port, looks }) => port !== id || looks === 'hard'),
  );
  if (shuts) return 'Shut slowly: moving water that is stopped hits back (water hammer).';
  if (view.pumps.some(({ sounds }) => sounds === 'no water'))
    return 'The pump runs dry: take it out of gear or give it water.';
  return undefined;
}
