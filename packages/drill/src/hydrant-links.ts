import {
  addHydrant,
  addNode,
  addSharedMain,
  type Hydrant,
  type SharedMain,
} from '@plugside/fireground';
import { type Making, openLoss, valveOn } from './making.ts';

/** The hydrants of a drill, those that share a main behind what they share. */
export function addDrillHydrants(
  making: Making,
  hydrants: readonly Hydrant[],
  mains: readonly SharedMain[],
): void {
  const { draft, used } = making;
  for (const main of mains) addSharedMain(draft, main, used);
  for (const hydrant of hydrants) {
    if (!mains.some((main) => main.hydrants.includes(hydrant))) addHydrant(draft, hydrant, used);
    addStem(making, hydrant);
  }
}

/** A hydrant's outlets behind its stem, each side outlet behind its gate. */
function addStem(making: Making, { id, elevationFt, sideOutlets }: Hydrant): void {
  const { draft } = making;
  const barrel = addNode(draft, `${id}:barrel`, elevationFt);
  for (const link of draft.links) {
    const isOutlet = link.id === `${id}:steamer` || link.id.startsWith(`${id}:side`);
    if (isOutlet && link.kind === 'loss') link.from = barrel;
  }
  draft.links.push(openLoss(`${id}:stem`, `${id}:main`, barrel));
  valveOn(making, `${id}:stem`, `${id}.stem`);
  for (let side = 1; side <= sideOutlets; side++)
    valveOn(making, `${id}:side${side}`, `${id}.side${side}`);
}
