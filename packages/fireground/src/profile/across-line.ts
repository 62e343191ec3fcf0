import { PSI_PER_FT } from '@plugside/hydraulics';
import type { Line } from '../plan/plan.ts';
import type { LineState } from '../questions/answers.ts';
import type { Place, Stretch } from './place.ts';
import type { ProfileSpan } from './profile.ts';

/** A valve that takes less than this [psi] is not drawn. */
const LEAST_VALVE_PSI = 0.05;

/**
 * What happens to pressure from a line's `from` to its `to`: a step at a gated valve, then hose
 * from one terrain point to the next. Friction is spread evenly over the length; height counts
 * where it is. `fromFt`: height of the `from` port [ft].
 */
export function acrossLine(line: Line, solved: LineState, fromFt: number): Stretch[] {
  const hose: ProfileSpan = { kind: 'hose', line: line.id, limitPsi: solved.limitPsi };
  const afterValvePsi = solved.inletPsi - solved.valveLossPsi;
  const at = (alongFt: number, elevationFt: number): Place => ({
    piece: line.id,
    kind: 'terrain',
    elevationFt,
    psi:
      afterValvePsi -
      solved.frictionPsi * (alongFt / line.lengthFt) -
      PSI_PER_FT * (elevationFt - fromFt),
  });
  const stretches: Stretch[] = [];
  if (Math.abs(solved.valveLossPsi) >= LEAST_VALVE_PSI) {
    stretches.push({
      span: { kind: 'piece', piece: line.id },
      lengthFt: 0,
      end: { piece: line.id, kind: 'appliance', elevationFt: fromFt, psi: afterValvePsi },
    });
  }
  let reachedFt = 0;
  for (const { alongFt, elevationFt } of line.terrain ?? []) {
    if (alongFt <= reachedFt || alongFt >= line.lengthFt) continue;
    stretches.push({
      span: hose,
      lengthFt: alongFt - reachedFt,
      end: at(alongFt, elevationFt),
    });
    reachedFt = alongFt;
  }
  stretches.push({ span: hose, lengthFt: line.lengthFt - reachedFt });
  return stretches;
}
