/** What holds of a drill's state whatever was done. */
import type { DrillScene, DrillState } from '@plugside/drill';
import { capabilityFor, piecesOf } from '@plugside/fireground';
import { PSI_PER_FT } from '@plugside/hydraulics';
import { expect } from 'vitest';

/** Every number of a state. */
function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(numbersOf);
}

/** Absolute vacuum [psi]. */
const VACUUM_PSI = -14.696;
/** A throttle may turn an engine at so much of full speed; pressure goes with its square (affinity laws). */
const MOST_SPEED = 1.1;

/** The most that any gauge can show: the highest water there is, and every pump on top of it [psi]. */
function mostPsi({ plan }: DrillScene): number {
  const heads = [
    ...plan.hydrants.map(({ staticPsi, elevationFt }) => staticPsi + PSI_PER_FT * elevationFt),
    ...plan.drafts.map(({ waterElevationFt }) => PSI_PER_FT * waterElevationFt),
    ...plan.rigs.map(({ elevationFt }) => PSI_PER_FT * elevationFt),
  ];
  const heightsFt = piecesOf(plan).map((piece) =>
    'waterElevationFt' in piece ? piece.waterElevationFt : piece.elevationFt,
  );
  const pumps = plan.rigs.reduce(
    (sum, rig) => sum + Math.max(...capabilityFor(rig).points.map(([, netPsi]) => netPsi)),
    0,
  );
  return Math.max(...heads) - PSI_PER_FT * Math.min(...heightsFt) + MOST_SPEED ** 2 * pumps;
}

/** Every pressure that a gauge could be put on [psi]. */
function gaugesOf(state: DrillState): number[] {
  return [
    ...state.pumps.flatMap((pump) => [
      pump.intakePsi,
      pump.dischargePsi,
      pump.intakeGaugePsi,
      pump.dischargeGaugePsi,
    ]),
    ...state.hydrants.flatMap(({ mainPsi, barrelPsi }) => [mainPsi, barrelPsi]),
    ...state.assistValves.flatMap(({ hydrantPsi, supplyPsi, suctionPsi, dischargePsi }) => [
      hydrantPsi,
      supplyPsi,
      suctionPsi,
      dischargePsi,
    ]),
    ...state.nozzles.map(({ pressurePsi }) => pressurePsi),
    ...state.hoses.flatMap(({ from, to }) => [from.psi, to.psi]),
  ];
}

/** Numbers that are numbers, pressures between vacuum and all there is, no more water than room for it. */
export function isSound(state: DrillState, scene: DrillScene): void {
  expect(numbersOf(state).every(Number.isFinite)).toBe(true);
  const gauges = gaugesOf(state);
  expect(Math.min(...gauges)).toBeGreaterThanOrEqual(VACUUM_PSI);
  expect(Math.max(...gauges)).toBeLessThanOrEqual(mostPsi(scene) + 0.01);
  for (const pump of state.pumps) expect(pump.flowGpm).toBeGreaterThanOrEqual(0);
  for (const valve of state.valves) {
    expect(valve.opening).toBeGreaterThanOrEqual(0);
    expect(valve.opening).toBeLessThanOrEqual(1);
  }
  state.hoses.forEach((hose, at) => {
    const water = hose.from.waterGal + hose.to.waterGal;
    expect(water).toBeGreaterThanOrEqual(0);
    expect(water).toBeLessThanOrEqual(scene.hoses[at]!.capacityGal + 1e-3);
    expect(hose.airPsi).toBeGreaterThanOrEqual(0);
    expect(hose.airPsi).toBeLessThan(1200);
  });
  state.tanks.forEach((tank, at) => {
    expect(tank.gal).toBeGreaterThanOrEqual(0);
    expect(tank.gal).toBeLessThanOrEqual(scene.tanks[at]!.capacityGal);
  });
}

/** Water in all hose and tanks [gal]. */
function heldGal(state: DrillState): number {
  const hose = state.hoses.reduce((sum, { from, to }) => sum + from.waterGal + to.waterGal, 0);
  return hose + state.tanks.reduce((sum, { gal }) => sum + gal, 0);
}

/** Every gallon since a state is in hose or tanks, went through nozzles, or is on the ground. */
export function isBooked(state: DrillState, since: DrillState): void {
  const { sourceGal, nozzleGal, wasteGal } = state.water;
  const gained = heldGal(state) - heldGal(since);
  const through = Math.abs(sourceGal) + Math.max(0, -gained) + 1;
  expect(Math.abs(sourceGal - gained - nozzleGal - wasteGal)).toBeLessThan(0.001 * through);
}
