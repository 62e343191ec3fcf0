import { PSI_PER_FT } from '@plugside/hydraulics';
import { endElevations } from '../network/read-state.ts';
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
    const solved = state.lines.find(({ id }) => id === line.id);
    if (!solved || !line.terrain) return [];
    const { fromFt } = endElevations(plan, line);
    const lowest = Math.min(
      ...line.terrain.map(
        ({ alongFt, elevationFt }) =>
          solved.inletPsi -
          (solved.frictionPsi * alongFt) / line.lengthFt -
          PSI_PER_FT * (elevationFt - fromFt),
      ),
    );
    if (lowest >= SOFT_PSI) return [];
    return [
      {
        level: 'caution',
        piece: line.id,
        text: `${describeLine(plan, line)}: on the hill between, ${say.full(lowest, 'pressure')} are left. Soft hose lets less through than the figures here: put a pump before the hill, or set the one there higher.`,
      },
    ];
  });
}
