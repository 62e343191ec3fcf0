import { isHardSuction } from '../limits/check-limits.ts';
import type { Plan } from '../plan/plan.ts';
import { describeLine } from '../plan/ports.ts';
import type { Notice, SupplyState } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';

/** Less than this on a hilltop [psi] and supply hose goes soft; ours. */
const SOFT_PSI = 5;

/** A caution for each line that has next to no pressure on a hill between its ends. */
export function hilltopNotices(plan: Plan, state: SupplyState, units: UnitSystem): Notice[] {
  const say = sayIn(units);
  return plan.lines.flatMap((line): Notice[] => {
    const lowest = state.lines.find(({ id }) => id === line.id)?.hilltopPsi;
    if (lowest === undefined || lowest >= SOFT_PSI || isHardSuction(plan, line)) return [];
    return [
      {
        level: 'caution',
        piece: line.id,
        text: `${describeLine(plan, line)}: on the hill between, ${say.full(lowest, 'pressure')} are left. Soft hose lets less through than the figures here: put a pump before the hill, or set the one there higher.`,
      },
    ];
  });
}
