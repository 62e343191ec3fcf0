/** What a leg cannot bring, told without solving it. */
import { PSI_PER_FT, parallelCoefficient, supplyCurvePsi } from '@plugside/hydraulics';
import { defaultLimits } from '../catalogue/limits.ts';
import { capabilityAt } from '../catalogue/pumps.ts';
import type { DepartmentValues } from '../plan/plan.ts';
import { bearsPsi, coefficientOf } from './covers.ts';
import { groundOf, type Leg } from './leg.ts';
import type { Situation } from './situation.ts';

/** Room for rounding [psi]. */
const SLACK_PSI = 1e-6;

/**
 * Whether a leg may bring a flow to the attack engine: the main has it above its residual, and the
 * pressure that main, pump and hose allow at the lay's start covers friction, height and the intake's
 * least. Losses of outlets, valves and hookup are left out, and hose past the street's length, so that a leg that fails here fails
 * when it is solved; one that passes may still fail. Of a relay only the main is asked.
 * @param flowGpm [gpm, 0 or more]
 */
export function mayBring(
  leg: Leg,
  flowGpm: number,
  scene: Situation['scene'],
  department: DepartmentValues,
): boolean {
  const { source, pumps, stretches } = leg;
  const limits = { ...defaultLimits, ...department.limits };
  let startPsi = 0;
  if (source.kind === 'hydrant') {
    startPsi = supplyCurvePsi(source.at.hydrant, flowGpm);
    if (startPsi < limits.mainResidualPsi - SLACK_PSI) return false;
  }
  if (pumps.length > 1) return true;
  const { lines, change } = stretches[0]!;
  const [pump] = pumps;
  if (pump) startPsi += capabilityAt(pump.rig, flowGpm);
  startPsi = Math.min(startPsi, bearsPsi(lines, department));
  const { lengthFt, fromElevationFt, toElevationFt } = groundOf(source, scene);
  const coefficient = parallelCoefficient(lines.map((hose) => coefficientOf(hose, department)));
  const firstFt = change ? change.fromFt : lengthFt;
  const roughFt =
    coefficient * firstFt +
    (change ? coefficientOf(change.hose, department) * (lengthFt - firstFt) : 0);
  const frictionPsi = (roughFt * flowGpm ** 2) / 1e6;
  const leftPsi = startPsi - frictionPsi - PSI_PER_FT * (toElevationFt - fromElevationFt);
  return leftPsi >= limits.hoseFedIntakePsi - SLACK_PSI;
}
