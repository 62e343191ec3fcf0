import { nozzleRatedGpm } from '@plugside/fireground';
import { psiWanted } from './asked-pressure.ts';
import type { Condition } from './drill-step.ts';
import { areEqualPorts, valveStandingFor } from './equal-ports.ts';
import { wasFlushed } from './flushed.ts';
import { hasSaid, type RadioPresetKey } from './radio.ts';
import type { PlayedRole } from './role.ts';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';

/** Flow from which on a line counts as flowing [gpm]: under it a gate takes next to nothing off. Ours. */
const LINE_FLOWS_GPM = 50;

/** Whether a message was given once the step that it tells of was done. */
function saidSince(
  { tally }: DrillState,
  role: PlayedRole,
  preset: RadioPresetKey,
  since: string,
): boolean {
  const told = tally.stepTicks.find(({ step }) => step === since);
  if (!told) return false;
  const later = (tally.saidLast ?? []).filter(({ tick }) => tick >= told.tick);
  return hasSaid(later, role, preset);
}

/** Whether a condition holds of a state. One that names what is not there does not. */
export function holds(condition: Condition, scene: DrillScene, state: DrillState): boolean {
  switch (condition.is) {
    case 'coupled': {
      const hose = state.hoses.find((one) => one.id === condition.hose);
      if (!hose || !hasRules(scene, 2)) return hose?.[condition.end].port === condition.port;
      return [hose.from.port, hose.to.port].some(
        (port) => port !== null && areEqualPorts(port, condition.port),
      );
    }
    case 'valve at least': {
      const valve = state.valves.find(
        ({ id }) => id === valveStandingFor(scene, state, condition.valve),
      );
      return valve !== undefined && valve.opening >= condition.opening;
    }
    case 'valve at most': {
      const valve = state.valves.find(
        ({ id }) => id === valveStandingFor(scene, state, condition.valve),
      );
      return valve !== undefined && valve.opening <= condition.opening;
    }
    case 'hose full':
      return state.hoses.some((one) => one.id === condition.hose && one.phase === 'full');
    case 'line flows at': {
      const hose = state.hoses.find((one) => one.id === condition.hose);
      return (
        hose !== undefined &&
        Math.abs(hose.flowGpm) >= LINE_FLOWS_GPM &&
        // Either end may lie at the pump.
        Math.abs(Math.max(hose.from.psi, hose.to.psi) - condition.psi) <= condition.withinPsi
      );
    }
    case 'tank at least':
      return state.tanks.some((one) => one.rigId === condition.rig && one.gal >= condition.gal);
    case 'nozzle flows': {
      const nozzle = scene.plan.nozzles.find((one) => one.id === condition.nozzle);
      const now = state.nozzles.find((one) => one.id === condition.nozzle);
      return (
        nozzle !== undefined &&
        now !== undefined &&
        now.flowGpm >= condition.share * nozzleRatedGpm(nozzle)
      );
    }
    case 'flushed':
      return wasFlushed(state, condition.hydrant);
    case 'said':
      if (condition.since !== undefined && hasRules(scene, 3))
        return saidSince(state, condition.role, condition.preset, condition.since);
      return hasRules(scene, 2)
        ? hasSaid(state.said, condition.role, condition.preset)
        : state.said.some((one) => one.role === condition.role && one.preset === condition.preset);
    case 'all':
      return condition.of.every((one) => holds(one, scene, state));
  }
  const pump = state.pumps.find((one) => one.rigId === condition.rig);
  if (!pump) return false;
  switch (condition.is) {
    case 'in gear':
      return pump.inGear === condition.inGear;
    case 'discharge at least':
      return pump.dischargePsi >= psiWanted(condition, scene, state);
    case 'intake at least':
      return pump.intakePsi >= condition.psi;
    case 'governor set':
      return (
        pump.mode === 'governed' &&
        Math.abs(pump.targetPdpPsi - psiWanted(condition, scene, state)) <= 2
      );
  }
}
