import { engineIsDead } from './fault.ts';
import { onFineGrid, onGrid } from './grid.ts';
import type { Drill } from './running-drill.ts';
import { TICKS_PER_S } from './state.ts';

/** Within this a ramp has arrived [psi, or share of speed]. */
const ARRIVED = 0.02;

/** One tick of hands on valves: each moves toward where it is wanted, no faster than its hand. */
export function moveHands(drill: Drill): void {
  for (const valve of drill.state.valves) {
    if (valve.opening === valve.target) continue;
    const step = valve.perS / TICKS_PER_S;
    const way = valve.target - valve.opening;
    valve.opening =
      Math.abs(way) <= step ? valve.target : onFineGrid(valve.opening + Math.sign(way) * step);
    if (valve.opening === 0) drill.stale = true;
  }
}

/** One tick of governors and throttles: each closes on its setting with a first-order lag. */
export function movePumps({ scene, state }: Drill): void {
  const share = 1 / TICKS_PER_S / scene.settings.governorLagS;
  for (const pump of state.pumps) {
    if (!pump.inGear || engineIsDead(state, pump.rigId)) {
      pump.pdpPsi = 0;
      pump.speed = 0.3;
      continue;
    }
    const psi = pump.targetPdpPsi - pump.pdpPsi;
    pump.pdpPsi = Math.abs(psi) <= ARRIVED ? pump.targetPdpPsi : onGrid(pump.pdpPsi + psi * share);
    const speed = pump.targetSpeed - pump.speed;
    pump.speed =
      Math.abs(speed) <= ARRIVED / 10 ? pump.targetSpeed : onFineGrid(pump.speed + speed * share);
  }
}

/** One tick of gauges: each lags behind what it shows. */
export function moveGauges({ scene, state }: Drill): void {
  const share = Math.min(1, 1 / TICKS_PER_S / scene.settings.gaugeLagS);
  for (const pump of state.pumps) {
    pump.intakeGaugePsi = onGrid(
      pump.intakeGaugePsi + (pump.intakePsi - pump.intakeGaugePsi) * share,
    );
    pump.dischargeGaugePsi = onGrid(
      pump.dischargeGaugePsi + (pump.dischargePsi - pump.dischargeGaugePsi) * share,
    );
  }
}
