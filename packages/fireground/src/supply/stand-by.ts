/** Tenders that a way does not need: they stand beside the attack engine and give it their tanks. */
import type { Duty } from './choice.ts';
import { type Crew, rigName } from './crew.ts';
import type { RespondingRig } from './situation.ts';

/** Under this a tank is not worth a line [gal]. */
const LEAST_TANK_GAL = 100;

/** @param atWork rigs that some part of the way needs */
export function standingBy(crew: Crew, atWork: readonly RespondingRig[]): Duty[] {
  return crew.all
    .filter((one) => one.kind === 'tender' && !atWork.includes(one))
    .filter(({ rig }) => (rig.tankGal ?? 0) >= LEAST_TANK_GAL)
    .map((one) => ({
      rigId: one.rig.id,
      rigName: rigName(one),
      duty: `stands by at the fire and gives its tank to ${rigName(crew.attack)} until the supply is there`,
    }));
}
