import { addHydrant, addNode } from '@plugside/fireground';
import { inEffect } from './fault.ts';
import { type Making, openLoss, valveOn } from './making.ts';

/** A hydrant: its main, its outlets behind the stem, each side outlet behind its gate. */
export function addDrillHydrant(making: Making, id: string): void {
  const { scene, state, draft, used } = making;
  const hydrant = scene.plan.hydrants.find((one) => one.id === id)!;
  const weak = state.faults.find(
    (fault) => fault.kind === 'hydrant weak' && fault.hydrant === id && inEffect(state, fault),
  );
  const share = weak?.kind === 'hydrant weak' ? weak.share : 1;
  const first = draft.links.length;
  addHydrant(draft, { ...hydrant, testGpm: hydrant.testGpm * share }, used);
  const barrel = addNode(draft, `${id}:barrel`, hydrant.elevationFt);
  for (const link of draft.links.slice(first)) {
    if (link.kind !== 'loss') continue;
    // Outlets stand behind the stem.
    link.from = barrel;
  }
  draft.links.push(openLoss(`${id}:stem`, `${id}:main`, barrel));
  valveOn(making, `${id}:stem`, `${id}.stem`);
  for (let side = 1; side <= hydrant.sideOutlets; side++)
    valveOn(making, `${id}:side${side}`, `${id}.side${side}`);
}
