/** Trying booster pressures on the assist valve: each one is the plan solved again. */
import { type AssistValve, type Now, type Plan, splitPortRef, whatNow } from '@plugside/fireground';
import { setHandle, setPump } from '../../plan-store/edits/settings.ts';

/** The rig whose discharge is hosed to the valve; undefined where none is. */
export function boosterOn(plan: Plan, valve: AssistValve): string | undefined {
  const line = plan.lines.find((one) => one.to === `${valve.id}.pump-discharge`);
  return line && splitPortRef(line.from).pieceId;
}

/** The plan as set, but with the handle at boost and the booster holding this pressure [psi]; 0: not pumping. */
export function tryPressure(plan: Plan, valveId: string, rigId: string, pdpPsi: number): Now {
  const open = setHandle(plan, valveId, 'boost');
  return whatNow(
    setPump(open, rigId, pdpPsi < 1 ? { mode: 'idle' } : { mode: 'governed', pdpPsi }),
  );
}

/**
 * What the valve does, in a sentence.
 * @param boosterNetPsi pressure that the booster adds [psi]
 */
export function valveSentence(
  valve: {
    clapper: string;
    clapperGpm: number;
    dischargeGpm: number;
    handle: string;
  },
  boosterNetPsi: number,
): string {
  const clapper = valve.clapperGpm > 0.5;
  const pumped = valve.dischargeGpm > 0.5;
  if (valve.clapper === 'stuck shut') {
    return 'The clapper is stuck shut: only what the booster pumps reaches the fire.';
  }
  if (valve.handle === 'hydrant') {
    return clapper
      ? 'The pump suction is shut. The hydrant feeds the line through the clapper.'
      : 'The pump suction is shut, and no water is moving.';
  }
  if (clapper && !pumped) {
    return 'The booster is not above hydrant pressure yet. The clapper is open and the hydrant feeds the line.';
  }
  if (clapper && pumped && boosterNetPsi < 0.5) {
    return 'The booster adds nothing yet. The hydrant feeds the line through the open clapper, and some of it round through the pump.';
  }
  if (clapper && pumped) {
    return 'Hydrant and booster feed the line together: the clapper is still open.';
  }
  if (pumped) {
    return 'The booster is above hydrant pressure. It has closed the clapper, and all the water goes through the pump.';
  }
  return 'No water is moving.';
}
