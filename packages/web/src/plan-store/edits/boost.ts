/** Putting a booster to work, or leaving it out. */
import { type Plan, splitPortRef } from '@plugside/fireground';
import { setHandle, setPump } from './settings.ts';

/** A setting to start from [psi]: the answer finds the right one, and the operator sets his own. */
const FIRST_PDP_PSI = 120;

/** The assist valves that a rig's discharge is hosed to. */
function valvesOf(plan: Plan, rigId: string): string[] {
  return plan.lines
    .filter((line) => splitPortRef(line.from).pieceId === rigId)
    .map((line) => splitPortRef(line.to))
    .filter(({ port }) => port === 'pump-discharge')
    .map(({ pieceId }) => pieceId);
}

/** True while the booster pumps and its valve, where it has one, lets it draw. */
export function isBoosting(plan: Plan, rigId: string): boolean {
  const rig = plan.rigs.find((one) => one.id === rigId);
  const held = valvesOf(plan, rigId).some((id) =>
    plan.appliances.some(
      (one) => one.id === id && one.kind === 'assist-valve' && one.handle === 'hydrant',
    ),
  );
  return rig !== undefined && rig.setting.mode !== 'idle' && !held;
}

/** On: handle at boost, pump governed. Off: handle at hydrant, not pumping. */
export function setBoosting(plan: Plan, rigId: string, on: boolean): Plan {
  const rig = plan.rigs.find((one) => one.id === rigId);
  if (!rig) return plan;
  const handled = valvesOf(plan, rigId).reduce(
    (now, id) => setHandle(now, id, on ? 'boost' : 'hydrant'),
    plan,
  );
  if (!on) return setPump(handled, rigId, { mode: 'idle' });
  return rig.setting.mode === 'idle'
    ? setPump(handled, rigId, { mode: 'governed', pdpPsi: FIRST_PDP_PSI })
    : handled;
}
