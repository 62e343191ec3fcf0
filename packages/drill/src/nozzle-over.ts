/** A nozzle that stands well over the pressure that it is rated for. */
import { nameOf } from '@plugside/fireground';
import type { DrillEvent } from './event.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import { TICKS_PER_S } from './state.ts';

/** Over its rating by so much it is told [psi], and again once it has been back within the lesser; both ours. */
const OVER_PSI = 15;
const BACK_PSI = 10;
/** It has stood so for so long: what swings past is not meant [ticks]. Ours. */
const LASTS_TICKS = 3 * TICKS_PER_S;

/** One tick of the nozzles: tells of one that has stood well over its rated pressure. */
export function watchNozzles({ scene, state }: Drill): DrillEvent[] {
  if (!hasRules(scene, 3)) return [];
  return state.nozzles.flatMap((nozzle): DrillEvent[] => {
    const piece = scene.plan.nozzles.find(({ id }) => id === nozzle.id)!;
    const overPsi = nozzle.flowGpm > 1 ? nozzle.pressurePsi - piece.ratedPsi : 0;
    if (overPsi <= BACK_PSI) delete nozzle.overTicks;
    else if (overPsi > OVER_PSI || nozzle.overTicks !== undefined)
      nozzle.overTicks = Math.min(LASTS_TICKS + 1, (nozzle.overTicks ?? 0) + 1);
    if (nozzle.overTicks !== LASTS_TICKS) return [];
    const now = Math.round(nozzle.pressurePsi);
    return [
      {
        kind: 'nozzle over its pressure',
        level: 'caution',
        piece: nozzle.id,
        text: `${nameOf(piece)} stands at ${now} psi; it is rated for ${piece.ratedPsi} psi. It pushes back harder than its crew reckons with. Gate its line at the pump, or lower the pump.`,
      },
    ];
  });
}
