import type { Line, Plan, PortRef } from '@plugside/fireground';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import { leastOpening, partOpenLossFactor } from './valve-loss.ts';

/**
 * What a drill has come to, as a plan: hose that is full and on its two ports, pumps and handles as they are
 * set, nozzles open or shut. For planning on from a drill, and for asking the solver about it. A discharge that
 * is part open is gated, another valve that is counts as open; hose that is dry, loose or behind a shut valve is left out.
 */
export function planNow(scene: DrillScene, state: DrillState): Plan {
  const { plan } = scene;
  const opening = (id: string) => state.valves.find((one) => one.id === id)?.opening;
  const passes = (port: PortRef) => (opening(port) ?? 1) >= leastOpening;
  const lines = plan.lines.flatMap((line) => {
    const hose = state.hoses.find((one) => one.id === line.id)!;
    const { from, to } = hose;
    if (hose.phase !== 'full' || from.port === null || to.port === null) return [];
    const stem = opening(`${from.port.slice(0, from.port.lastIndexOf('.'))}.stem`) ?? 1;
    if (stem < leastOpening || !passes(from.port) || !passes(to.port)) return [];
    const valve = gatedBy(scene, from.port, opening(from.port) ?? 1, Math.abs(hose.flowGpm));
    return [{ ...line, from: from.port, to: to.port, valve }];
  });
  return {
    ...plan,
    lines,
    rigs: plan.rigs.map((rig) => {
      const pump = state.pumps.find((one) => one.rigId === rig.id)!;
      const tank = state.tanks.find((one) => one.rigId === rig.id);
      const open = tank !== undefined && (opening(`${rig.id}.tankToPump`) ?? 0) >= leastOpening;
      return {
        ...rig,
        setting: !pump.inGear
          ? { mode: 'idle' as const }
          : pump.mode === 'governed'
            ? { mode: 'governed' as const, pdpPsi: pump.targetPdpPsi }
            : { mode: 'throttled' as const, speedFraction: pump.targetSpeed },
        tankValve: open ? ('open' as const) : ('shut' as const),
      };
    }),
    appliances: plan.appliances.map((one) =>
      one.kind === 'assist-valve'
        ? { ...one, handle: (opening(`${one.id}.handle`) ?? 0) >= 0.5 ? 'boost' : 'hydrant' }
        : one,
    ),
    nozzles: plan.nozzles.map((nozzle) => ({
      ...nozzle,
      open: (opening(`${nozzle.id}.bale`) ?? 0) >= leastOpening,
    })),
  };
}

/** What a discharge or a gate that is part open costs, told at what flows through it. */
function gatedBy(scene: DrillScene, port: PortRef, opening: number, gpm: number): Line['valve'] {
  const piece = scene.valves.find(({ id }) => id === port);
  if (!piece || opening > 0.99) return 'open';
  if (piece.kind !== 'discharge' && piece.kind !== 'appliance gate') return 'open';
  const atGpm = Math.max(100, Math.round(gpm));
  return { gated: { lossPsi: partOpenLossFactor(opening, piece.boreIn) * atGpm * atGpm, atGpm } };
}
